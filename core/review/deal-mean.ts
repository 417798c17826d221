import { randomFromSeed } from '../base/random.ts';
import { shuffledSet } from '../tiles/deal.ts';
import { Tiles } from '../tiles/tiles.ts';
import { type Engine, worthOf } from './worth.ts';

/** The mean worth of a deal, from seeded deals. */
export interface DealMean {
  readonly mean: number;
  /** The standard error of that mean. */
  readonly error: number;
  readonly deals: number;
  readonly seed: number;
}

/** Deals looked at: fixed beforehand. */
export const MEAN_DEALS = 400;

/** The mean worth of a deal of 13 or 14 tiles; yields after each deal, so that a worker may stop between them. */
export function* dealMeanSteps(
  engine: Engine,
  tiles: 13 | 14,
  seed = 1,
  deals = MEAN_DEALS,
): Generator<number, DealMean> {
  const random = randomFromSeed(seed);
  let sum = 0;
  let squares = 0;
  for (let deal = 0; deal < deals; deal += 1) {
    const hand = Tiles.of(shuffledSet(random).slice(0, tiles));
    const { value } = worthOf(engine, { hand, gone: Tiles.none, unseen: Tiles.fullSet.minus(hand), fixed: [] });
    sum += value;
    squares += value * value;
    yield deal + 1;
  }
  const mean = sum / deals;
  const variance = Math.max(0, squares / deals - mean * mean) * (deals / (deals - 1));
  return { mean, error: Math.sqrt(variance / deals), deals, seed };
}
