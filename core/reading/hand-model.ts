import { keepRecent } from '../base/recent.ts';
import { BASE_MODELS, baseStageAt } from './base-model.ts';
import { HAND_CURVES } from './hand-curves.ts';
import { calibrated } from './reach.ts';
import type { CalibrationKnot, ReachModel } from './reach-model.ts';

/** A straight line over log odds. */
export interface OddsLine {
  readonly intercept: number;
  /** Positive. */
  readonly slope: number;
}

/** What becomes of the reach that the base model says, shifted to the level of the card (MODEL.md, MD-C12). */
export interface HandCurves {
  /** For ways that are missing tiles of singles and pairs. */
  readonly plain: OddsLine;
  /** For ways that are missing tiles of larger groups alone. */
  readonly wild: OddsLine;
}

/** Models kept at once: those of every stage of play for three cards. */
const MOST_MODELS = 30;

/** Models by stage and level, the one used last at the end. */
const MODELS = new Map<string, ReachModel>();

/**
 * The model by which the reach of a hand is shown: the base model of the stage at the level of the card (`levelOf`). The
 * same stage and level give the same object, since what a reading remembers hangs on the model itself (reader.ts).
 *
 * @param drawn tiles drawn from the wall by all seats
 */
export function handModel(drawn: number, level: number): ReachModel {
  const stage = baseStageAt(drawn);
  const key = `${stage} ${level}`;
  const model = MODELS.get(key) ?? handModelOf(BASE_MODELS[stage] as ReachModel, level, HAND_CURVES);
  return keepRecent(MODELS, key, model, MOST_MODELS);
}

/** A base model at the level of a card, by any curves. */
export function handModelOf(base: ReachModel, level: number, { plain, wild }: HandCurves): ReachModel {
  const raws = rawsOf(base.calibration);
  const plainKnots = knotsBy(raws, (raw) => onLine(plain, logit(calibrated(base.calibration, raw)) + level));
  const wildKnots = plainKnots.map(({ raw, reach }, place) => {
    if (place === 0 || place === plainKnots.length - 1) return { raw, reach };
    const own = onLine(wild, logit(calibrated(base.calibration, raw)) + level);
    return { raw, reach: Math.max(reach, own) };
  });
  const source = 'one model for all cards, at the level of the card';
  return { source, moments: base.moments, calibration: plainKnots, wildCalibration: wildKnots };
}

/**
 * The level of a card: how much larger the odds to win with any hand are than those that the best reach says, as the base
 * model reads it when play begins; 0 where nothing can be said.
 */
export function levelOf(won: number, bestReach: number): number {
  return won > 0 && won < 1 && bestReach > 0 && bestReach < 1 ? logit(won) - logit(bestReach) : 0;
}

/** The parts into which the first step between knots is cut, where log odds change most, and the others. */
const FIRST_PARTS = 6;
const PARTS = 2;

/** Places for knots, from 0 to 1. */
function rawsOf(knots: readonly CalibrationKnot[]): number[] {
  const raws = [0];
  for (const [place, { raw }] of knots.entries()) {
    if (place === 0) continue;
    const last = (knots[place - 1] as CalibrationKnot).raw;
    const parts = place === 1 ? FIRST_PARTS : PARTS;
    for (let part = 1; part <= parts; part += 1) raws.push(last + ((raw - last) * part) / parts);
  }
  return raws;
}

/** Knots at the places given; nothing and certainty stay what they are. */
function knotsBy(raws: readonly number[], reachOf: (raw: number) => number): CalibrationKnot[] {
  return raws.map((raw, place) => ({ raw, reach: place === 0 ? 0 : place === raws.length - 1 ? 1 : reachOf(raw) }));
}

function onLine({ intercept, slope }: OddsLine, x: number): number {
  return 1 / (1 + Math.exp(-intercept - slope * x));
}

function logit(share: number): number {
  return Math.log(share / (1 - share));
}
