import { binomial } from '../reading/binomials.ts';
import { KIND_COUNT } from '../tiles/kinds.ts';
import type { PassSize } from '../exchange/steps.ts';
import { MULTISETS, placeOf } from './multisets.ts';

/**
 * What may come in at a step: `size` tiles drawn without replacement from the unseen ones that
 * are not jokers. `counts` holds at the place of each multiset of that size how many draws give
 * it (a whole number, exact), and 0 elsewhere; `all` is their sum. With weights by kind each draw
 * counts with the product of its tiles' weights.
 */
export interface Incoming {
  readonly size: PassSize;
  readonly counts: Float64Array;
  readonly all: number;
}

/** `unseen`: 36 counts; `weights`: 36 numbers over 0, all alike if left out. */
export function incomingOf(unseen: Uint8Array, size: PassSize, weights?: ArrayLike<number>): Incoming {
  const counts = new Float64Array(MULTISETS);
  let all = 0;
  eachMultiset(size, (low, middle, high) => {
    const ways =
      waysToDraw(unseen, low, middle, high) * (weights === undefined ? 1 : product(weights, low, middle, high));
    counts[placeOf(low, middle, high)] = ways;
    all += ways;
  });
  return { size, counts, all };
}

/** All multisets of exactly `size` kinds that are not jokers, as three rising kinds with zeros in front. */
function eachMultiset(size: PassSize, visit: (low: number, middle: number, high: number) => void): void {
  if (size === 0) return visit(0, 0, 0);
  for (let high = 1; high < KIND_COUNT; high += 1) {
    if (size === 1) visit(0, 0, high);
    for (let middle = 1; size > 1 && middle <= high; middle += 1) {
      if (size === 2) visit(0, middle, high);
      for (let low = 1; size > 2 && low <= middle; low += 1) visit(low, middle, high);
    }
  }
}

/** Kinds rising; zeros stand for no tile. */
function waysToDraw(unseen: Uint8Array, low: number, middle: number, high: number): number {
  const copies = (kind: number, wanted: number): number => (kind === 0 ? 1 : binomial(unseen[kind] as number, wanted));
  if (low === high) return copies(low, 3);
  if (middle === high) return copies(low, 1) * copies(high, 2);
  if (low === middle) return copies(low, 2) * copies(high, 1);
  return copies(low, 1) * copies(middle, 1) * copies(high, 1);
}

/** Zeros stand for no tile. */
function product(weights: ArrayLike<number>, low: number, middle: number, high: number): number {
  const weightOf = (kind: number): number => (kind === 0 ? 1 : (weights[kind] as number));
  return weightOf(low) * weightOf(middle) * weightOf(high);
}

/**
 * The mean, over what comes in, of the best value that any part of it gives, by each of one or two laws for as many
 * tiles: `own` holds at the place of a multiset the best value that exactly these tiles give (0 if none is known) and is
 * spread from each multiset to all larger ones (`own` is changed); `own[0]`, no tile at all, is the floor.
 * Right because a value never falls when more tiles come in.
 */
export function meansOfBest(own: Float64Array, laws: readonly [Incoming, Incoming?]): number[] {
  const [{ size, counts, all }, second] = laws;
  // The sums of both laws are made side by side, which takes hardly longer than one.
  const others = second?.counts ?? counts;
  const floor = own[0] as number;
  let sum = (counts[0] as number) * floor;
  let other = (others[0] as number) * floor;
  for (let high = 1; high < KIND_COUNT; high += 1) {
    const place = placeOf(0, 0, high);
    const best = raise(own, place, floor);
    sum += (counts[place] as number) * best;
    other += (others[place] as number) * best;
  }
  if (size > 1) {
    spreadPairs(own, counts, others);
    sum += SUMS[0] as number;
    other += SUMS[1] as number;
  }
  if (size > 2) {
    spreadTriples(own, counts, others);
    sum += SUMS[0] as number;
    other += SUMS[1] as number;
  }
  return second === undefined ? [sum / all] : [sum / all, other / second.all];
}

/** Work space: the two sums of what was spread last. */
const SUMS = new Float64Array(2);

function spreadPairs(own: Float64Array, counts: Float64Array, others: Float64Array): void {
  let sum = 0;
  let other = 0;
  for (let high = 1; high < KIND_COUNT; high += 1) {
    const highAlone = own[placeOf(0, 0, high)] as number;
    for (let middle = 1; middle <= high; middle += 1) {
      const place = placeOf(0, middle, high);
      const best = raise(own, place, Math.max(highAlone, own[placeOf(0, 0, middle)] as number));
      PAIR_VALUES[high * KIND_COUNT + middle] = best;
      sum += (counts[place] as number) * best;
      other += (others[place] as number) * best;
    }
  }
  SUMS[0] = sum;
  SUMS[1] = other;
}

/** Triples spread to nothing larger, so that their values need not be kept. */
function spreadTriples(own: Float64Array, counts: Float64Array, others: Float64Array): void {
  const pairs = PAIR_VALUES;
  let sum = 0;
  let other = 0;
  let place = 0;
  for (let high = 1; high < KIND_COUNT; high += 1) {
    place += 1;
    const withHigh = high * KIND_COUNT;
    for (let middle = 1; middle <= high; middle += 1) {
      place += 1;
      const withMiddle = middle * KIND_COUNT;
      const without = pairs[withHigh + middle] as number;
      let row = 0;
      let otherRow = 0;
      for (let low = 1; low <= middle; low += 1) {
        place += 1;
        const value = own[place] as number;
        const one = pairs[withMiddle + low] as number;
        const two = pairs[withHigh + low] as number;
        // Twice the larger of a and b is a + b + |a - b|. No branch is to be guessed: three times as fast here.
        const larger = value + without + Math.abs(value - without);
        const largerPair = one + two + Math.abs(one - two);
        const best = larger + largerPair + Math.abs(larger - largerPair);
        row += (counts[place] as number) * best;
        otherRow += (others[place] as number) * best;
      }
      sum += row;
      other += otherRow;
    }
  }
  SUMS[0] = sum / 4;
  SUMS[1] = other / 4;
}

/** Work space of `meansOfBest`, filled anew at each call: the values of pairs, lower kind at the lower place. */
const PAIR_VALUES = new Float64Array(KIND_COUNT * KIND_COUNT);

function raise(own: Float64Array, place: number, floor: number): number {
  const value = Math.max(own[place] as number, floor);
  own[place] = value;
  return value;
}
