import type { PolicyMaker } from '../policy.ts';
import { ByWeight } from './by-weight.ts';

/** What one more missing tile leaves of a hand's weight. */
const WILD_FACTOR = 1 / 3;
/** The same for a tile of a single or a pair, which no joker and no call helps. */
const PLAIN_FACTOR = 1 / 4;

/** Weighs every near hand softly and gives away the tile whose loss costs the least weight in all. */
export const soft: PolicyMaker = (card) =>
  new ByWeight(card, { weigh: softWeight, margin: 2, targetBonus: 0, idleShare: 0.1, stopShare: 0.4 });

const PLAIN_POWERS = powersOf(PLAIN_FACTOR);
const WILD_POWERS = powersOf(WILD_FACTOR);

/** The soft weight of a way that lacks so many tiles of each sort: 1 for a whole hand. */
export function softWeight(_way: number, plainShort: number, wildShort: number): number {
  return (PLAIN_POWERS[plainShort] as number) * (WILD_POWERS[wildShort] as number);
}

function powersOf(factor: number): Float64Array {
  return Float64Array.from({ length: 32 }, (_, power) => factor ** power);
}
