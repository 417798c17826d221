/** A rack from which tiles may be taken for trial; 36 counts each. */
export interface TrialRack {
  readonly counts: Uint8Array;
  /** Tiles of own exposures, jokers counted as what they stand for. */
  readonly exposed: Uint8Array;
  readonly unseen: Uint8Array;
}

/**
 * The weight of a way for a trial rack, which lacks `plainShort` tiles of its singles and pairs and,
 * after all jokers, `wildShort` of its larger groups. Must not be negative, and not grow with less.
 */
export type Weigher = (way: number, plainShort: number, wildShort: number, rack: TrialRack) => number;
