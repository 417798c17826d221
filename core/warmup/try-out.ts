import { Z95 } from '../base/rate.ts';
import { type Random, randomFromSeed } from '../base/random.ts';
import type { Seat } from '../exchange/steps.ts';
import { Tiles } from '../tiles/tiles.ts';
import { type Engine, worthOf } from '../review/worth.ts';
import type { OwnMove } from './own-policy.ts';
import { PracticeTable } from './practice-table.ts';

/**
 * Two first passes tried out at the practice table on the same hidden tiles: by how much the hand
 * at the end of the exchange is worth more after one than after the other.
 */
export interface TryOut {
  readonly tries: number;
  readonly seed: number;
  /** Mean worth after the chosen pass, and after the best one. */
  readonly chosen: number;
  readonly best: number;
  /** Mean of best less chosen, and half of its 95% interval, from the paired differences. */
  readonly difference: number;
  readonly halfWidth: number;
}

/** Tries of each pass; fixed beforehand. */
export const TRIES = 60;

export interface TryOutWish {
  readonly rack: Tiles;
  readonly seat: Seat;
  readonly chosen: Tiles;
  readonly best: Tiles;
  readonly seed?: number;
  readonly tries?: number;
}

/** Plays the rest of the exchange after both passes; yields the part done, 0 to 1. */
export function* tryOutSteps(engine: Engine, wish: TryOutWish): Generator<number, TryOut> {
  const { rack, seat, seed = 1, tries = TRIES } = wish;
  const table = new PracticeTable(engine.compiled);
  const random: Random = randomFromSeed(seed);
  const differences: number[] = [];
  const sums = { chosen: 0, best: 0 };
  for (let turn = 0; turn < tries; turn += 1) {
    const deal = { rack, seat, seed: random.bits() };
    const chosen = worthAfter(engine, table, deal, wish.chosen);
    yield (turn + 0.5) / tries;
    const best = worthAfter(engine, table, deal, wish.best);
    sums.chosen += chosen;
    sums.best += best;
    differences.push(best - chosen);
    yield (turn + 1) / tries;
  }
  const difference = (sums.best - sums.chosen) / tries;
  const variance = differences.reduce((sum, each) => sum + (each - difference) ** 2, 0) / (tries - 1);
  return {
    tries,
    seed,
    chosen: sums.chosen / tries,
    best: sums.best / tries,
    difference,
    halfWidth: Z95 * Math.sqrt(variance / tries),
  };
}

function worthAfter(
  engine: Engine,
  table: PracticeTable,
  deal: { readonly rack: Tiles; readonly seat: Seat; readonly seed: number },
  pass: Tiles,
): number {
  const move: OwnMove = { type: 'give', step: 'right', tiles: pass.toKinds() };
  const after = table.rackAfter(deal, [move]);
  const hand = Tiles.fromCounts(after.rack);
  const gone = Tiles.fromCounts(after.given);
  return worthOf(engine, { hand, gone, unseen: Tiles.fullSet.minus(hand.plus(gone)), fixed: [] }).value;
}
