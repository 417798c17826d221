import { REACH_SHAPE } from './reach-shape.ts';
import type { CalibrationKnot, ReachShape } from './shape-form.ts';

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

/** What a model for a card and a stage of play is made from. */
export interface ReachTerms {
  /**
   * When the game ends for the player unless she wins herself: equally likely numbers of tiles that
   * all four seats still draw.
   */
  readonly ends: readonly number[];
  /** Tiles left in the wall now. */
  readonly wallLeft: number;
  readonly source: string;
}

/** Tiles in the other three racks: hidden, but not in the wall. */
const OTHER_RACKS = 39;
/** However many tiles are still drawn, nothing is certain to come. */
const MOST = 0.98;

/** The model of a card at a stage of play; the shape holds for every card (MODEL.md, C5 and C6). */
export function reachModelFor({ ends, wallLeft, source }: ReachTerms, shape: ReachShape = REACH_SHAPE): ReachModel {
  const { own, called, last, joker, calibration } = shape;
  const hidden = wallLeft + OTHER_RACKS;
  const chance = (share: number, tiles: number): number => Math.min(MOST, (share * tiles) / hidden);
  const moments = ends.map((draws) => ({
    weight: 1 / ends.length,
    drawn: chance(own, draws / 4),
    called: chance(called, (3 * draws) / 4),
    last: chance(last, (3 * draws) / 4),
    joker: chance(joker, draws / 4),
  }));
  return { source, moments, calibration };
}

/**
 * The stated first answer for any card, until games with that card have been simulated: others win
 * as soon as they do with the demo card (core/table/reach-fit.ts on that card).
 */
export const FIRST_TERMS: ReachTerms = {
  ends: [32.9, 51.3, 63.6, 75.6, 94.1],
  wallLeft: 99,
  source: 'how soon others win: as with the demo card',
};
export const FIRST_REACH_MODEL: ReachModel = reachModelFor(FIRST_TERMS);

/** Whether terms say what the first model says, so that nothing has to be read anew. */
export function areFirstTerms({ ends, wallLeft }: ReachTerms): boolean {
  return wallLeft === FIRST_TERMS.wallLeft && ends.join() === FIRST_TERMS.ends.join();
}
