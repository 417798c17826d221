/**
 * The parameters of reach, the estimated chance to win with a way at a real table. MODEL.md says
 * in numbered sentences what they mean; fitting a model to a simulated table only changes numbers
 * here, never the code.
 */
export interface ReachModel {
  /** A few words on where the numbers come from, shown beside a reach. */
  readonly source: string;
  /** Moments at which the game may end for the player; weights are positive and sum to one. */
  readonly moments: readonly ReachMoment[];
  /** Rising knots from (0, 0) to (1, 1); between knots the raw chance is mapped along straight lines. */
  readonly calibration: readonly CalibrationKnot[];
}

/** What has come to a player by one moment. All are chances of a single unseen copy, from 0 to 1. */
export interface ReachMoment {
  /** The chance that the game is decided at this moment. */
  readonly weight: number;
  /** An unseen copy has come by own draw. */
  readonly drawn: number;
  /** A copy that has not come by own draw was discarded when it could be called for a group of three or more. */
  readonly called: number;
  /** A copy that has not come by own draw was discarded when it was the last tile wanted. */
  readonly last: number;
  /** An unseen joker has come, by own draw or by a swap. */
  readonly joker: number;
}

export interface CalibrationKnot {
  readonly raw: number;
  readonly reach: number;
}

/**
 * A first model, reasoned and not yet fitted. After the deal the wall has 99 tiles, so that a
 * player draws at most 24 or 25 of 139 unseen ones; games end after about 6, 10, 14, 18 or 24 own
 * draws. Others discard three tiles for each own draw. About half of these are discarded when a
 * group is ready for them, and a third when the hand waits for its last tile. Jokers come a little
 * more often than by draws, through swaps.
 */
export const FIRST_REACH_MODEL: ReachModel = {
  source: 'reasoned from the wall, not yet fitted to a simulated table',
  moments: [6, 10, 14, 18, 24].map((draws, place) => ({
    weight: [0.1, 0.2, 0.25, 0.2, 0.25][place] as number,
    drawn: draws / 139,
    called: (3 * draws) / 139 / 2,
    last: (3 * draws) / 139 / 3,
    joker: (1.1 * draws) / 139,
  })),
  calibration: [
    { raw: 0, reach: 0 },
    { raw: 1, reach: 1 },
  ],
};
