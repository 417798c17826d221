/** A raw chance, and the reach that it stands for. */
export interface CalibrationKnot {
  readonly raw: number;
  readonly reach: number;
}

/** What is the same for every card and every stage of play. */
export interface ReachShape {
  /** An unseen copy comes by own draw: this share of own draws over hidden tiles. */
  readonly own: number;
  /** It is discarded when it can be called for a group: this share of the others' draws over hidden tiles. */
  readonly called: number;
  /** It is discarded when it is the last tile wanted: likewise. */
  readonly last: number;
  /** An unseen joker comes: this share of own draws over hidden tiles. */
  readonly joker: number;
  readonly calibration: readonly CalibrationKnot[];
}
