import type { ReachModel, ReachShape } from '../../core/reading/reach-model.ts';
import { newReader, reachOfDeficits } from '../../core/reading/reader.ts';
import { type Block, blocksOf, type Case, pooled } from './isotonic.ts';
import type { AimedRack } from './collect.ts';
import { chanceAt, fitLine, logOdds } from './log-odds.ts';

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
function casesOf(cards: readonly CardRacks[], shape: ReachShape): Case[] {
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

/** The mean log loss of the best curve 1 / (1 + exp(-a - b·logit(predicted))). */
function logLoss(cases: readonly Case[]): number {
  const points = cases.map(({ predicted, won }) => ({ x: logOdds(predicted), won }));
  const line = fitLine(points);
  const losses = points.map(({ x, won }) => -Math.log(won ? chanceAt(line, x) : 1 - chanceAt(line, x)));
  return losses.reduce((sum, loss) => sum + loss, 0) / points.length;
}

function rounded(value: number): number {
  return Math.round(value * 1e4) / 1e4;
}
