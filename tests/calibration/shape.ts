import type { ReachModel } from '../../core/reading/reach-model.ts';
import { newReader, reachOfDeficits } from '../../core/reading/reader.ts';
import type { ReachShape } from '../../core/reading/shape-form.ts';
import { type Block, blocksOf, type Case, pooled } from './isotonic.ts';
import type { AimedRack } from './collect.ts';

/** The racks of one card, and a model for it whatever the shape. */
export interface CardRacks {
  readonly racks: readonly AimedRack[];
  readonly modelOf: (shape: ReachShape) => ReachModel;
}

const STRAIGHT: ReachShape['calibration'] = [
  { raw: 0, reach: 0 },
  { raw: 1, reach: 1 },
];
const RATES = ['own', 'called', 'last', 'joker'] as const;
const STRIDES = [1.3, 1.15, 1.07, 1.03];
/** A rate is not moved for less: beyond the most that a chance may be, nothing changes any more. */
const LEAST_GAIN = 1e-9;
const KNOTS = 12;

/**
 * The shape that makes the racks of all cards most likely. The four rates: least log loss of one
 * logistic curve over the raw chance, one rate after another in ever smaller strides. Then the
 * calibration: the monotone fit of blocks with equal sums of raw chance, its blocks as knots.
 */
export function fitShape(cards: readonly CardRacks[], start: ReachShape): ReachShape {
  let shape: ReachShape = { ...start, calibration: STRAIGHT };
  let loss = logLoss(casesOf(cards, shape));
  for (const stride of STRIDES) {
    for (const rate of RATES) {
      for (const by of [stride, 1 / stride]) {
        for (;;) {
          const tried = { ...shape, [rate]: shape[rate] * by };
          const triedLoss = logLoss(casesOf(cards, tried));
          // Written so that a loss that is no number ends it, too.
          if (!(triedLoss < loss - LEAST_GAIN)) break;
          shape = tried;
          loss = triedLoss;
        }
      }
    }
  }
  return { ...shape, calibration: knotsOf(casesOf(cards, shape)) };
}

/** What a model says of each rack, and what came of it. */
export function casesOf(cards: readonly CardRacks[], shape: ReachShape): Case[] {
  return cards.flatMap(({ racks, modelOf }) => casesUnder(modelOf(shape), racks));
}

export function casesUnder(model: ReachModel, racks: readonly AimedRack[]): Case[] {
  const { reach } = newReader(model);
  return racks.map(({ lacks, unseenJokers, concealed, won }) => ({
    predicted: reachOfDeficits(reach, lacks, unseenJokers, concealed),
    won,
  }));
}

/** Knots from (0, 0) to (1, 1) that rise strictly, so that no two raw chances become equal. */
function knotsOf(cases: readonly Case[]): ReachShape['calibration'] {
  const blocks: Block[] = pooled(blocksOf(cases, KNOTS, ({ predicted }) => predicted));
  const inner = blocks.map(({ predicted, share }) => ({ raw: rounded(predicted), reach: rounded(share) }));
  return [{ raw: 0, reach: 0 }, ...inner, { raw: 1, reach: 1 }];
}

/** The mean log loss of the best curve 1 / (1 + exp(-a - b·logit(predicted))), by Newton's method. */
function logLoss(cases: readonly Case[]): number {
  const logits = Float64Array.from(cases, ({ predicted }) => logit(predicted));
  let a = 0;
  let b = 1;
  for (let step = 0; step < NEWTON_STEPS; step += 1) {
    let [g0, g1, h00, h01, h11] = [0, 0, 0, 0, 0];
    for (const [place, { won }] of cases.entries()) {
      const x = logits[place] as number;
      const chance = logistic(a + b * x);
      const weight = chance * (1 - chance);
      const error = (won ? 1 : 0) - chance;
      g0 += error;
      g1 += error * x;
      h00 += weight;
      h01 += weight * x;
      h11 += weight * x * x;
    }
    const determinant = h00 * h11 - h01 * h01;
    a += (h11 * g0 - h01 * g1) / determinant;
    b += (h00 * g1 - h01 * g0) / determinant;
  }
  let loss = 0;
  for (const [place, { won }] of cases.entries()) {
    const chance = logistic(a + b * (logits[place] as number));
    loss -= Math.log(won ? chance : 1 - chance);
  }
  return loss / cases.length;
}
const NEWTON_STEPS = 8;
const LEAST = 1e-5;

function logit(chance: number): number {
  const within = Math.min(1 - LEAST, Math.max(LEAST, chance));
  return Math.log(within / (1 - within));
}

function logistic(x: number): number {
  return 1 / (1 + Math.exp(-x));
}

function rounded(value: number): number {
  return Math.round(value * 1e4) / 1e4;
}
