import { keepRecent } from '../base/recent.ts';
import { REACH_SHAPE } from './reach-shape.ts';

/** A raw chance, and the reach that it stands for. */
export interface CalibrationKnot {
  readonly raw: number;
  readonly reach: number;
}

/** What is the same for every card and every stage of play. */
export interface ReachShape {
  /** An unseen copy comes by own draw: own draws over hidden tiles, times this. */
  readonly own: number;
  /** It is discarded when it can be called for a group: the others' draws over hidden tiles, times this; it may be over 1. */
  readonly called: number;
  /** It is discarded when it is the last tile wanted: likewise. */
  readonly last: number;
  /** An unseen joker comes: own draws over hidden tiles, times this. */
  readonly joker: number;
  readonly calibration: readonly CalibrationKnot[];
}

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
  /**
   * The same for ways that are missing no tile of a single or pair, which calls and jokers alone can complete; nowhere
   * under the other knots, which count for all ways where it is left out.
   */
  readonly wildCalibration?: readonly CalibrationKnot[];
}

/** The knots of a model for a way. */
export function knotsOf(model: ReachModel, isPlainMissing: boolean): readonly CalibrationKnot[] {
  return isPlainMissing ? model.calibration : (model.wildCalibration ?? model.calibration);
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
   * When the game ends for the player unless the player wins first: equally likely numbers of tiles that
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

/** Models kept at once: those of every stage of play for three cards. */
const MOST_MODELS = 30;

/** Models by their terms, the one used last at the end. */
const MODELS = new Map<string, ReachModel>();

/**
 * The model for terms of the usual shape. The same terms give the same object, since what a reading
 * remembers hangs on the model itself (reader.ts).
 */
export function reachModelOf(terms: ReachTerms): ReachModel {
  const key = JSON.stringify([terms.ends, terms.wallLeft, terms.source]);
  const model = MODELS.get(key) ?? reachModelFor(terms);
  return keepRecent(MODELS, key, model, MOST_MODELS);
}

/** The model of a card at a stage of play; the shape holds for every card (MODEL.md, MD-C5 and MD-C6). */
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
export const FIRST_REACH_MODEL: ReachModel = reachModelOf(FIRST_TERMS);

/** Tiles by which ends may differ and still say the same: the games of a fit tell them to about one tile. */
const SAME_ENDS = 0.15;

/** Whether terms say what the first model says, so that nothing has to be read anew. */
export function areFirstTerms({ ends, wallLeft }: ReachTerms): boolean {
  const first = FIRST_TERMS.ends;
  if (wallLeft !== FIRST_TERMS.wallLeft || ends.length !== first.length) return false;
  return ends.every((end, place) => Math.abs(end - (first[place] as number)) < SAME_ENDS);
}

/** For each ten tiles drawn from the wall the terms of the model that holds from then on. */
export type StageTerms = readonly ReachTerms[];

/** Tiles drawn in a stage of play. */
export const STAGE = 10;

/** The terms that hold once `drawn` tiles have been drawn from the wall by all seats. */
export function termsAt(stages: StageTerms, drawn: number): ReachTerms {
  return stages[Math.min(stages.length - 1, Math.floor(drawn / STAGE))] as ReachTerms;
}
