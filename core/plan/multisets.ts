import { KIND_COUNT } from '../tiles/kinds.ts';

/**
 * Multisets of up to three kinds have places 0 to 8,435 in one table: {i, j, k} with i ≤ j ≤ k is
 * at C(k + 2, 3) + C(j + 1, 2) + i, and 0 (the joker, which is never passed) stands for "no tile".
 * The place of a smaller multiset is that of the larger one with zeros in front.
 */
export const MULTISETS = (KIND_COUNT * (KIND_COUNT + 1) * (KIND_COUNT + 2)) / 6;

const TRIPLES = Uint16Array.from({ length: KIND_COUNT }, (_, kind) => (kind * (kind + 1) * (kind + 2)) / 6);
const PAIRS = Uint16Array.from({ length: KIND_COUNT }, (_, kind) => (kind * (kind + 1)) / 2);

/** The place of three kinds in rising order. */
export function placeOf(low: number, middle: number, high: number): number {
  return (TRIPLES[high] as number) + (PAIRS[middle] as number) + low;
}

/** The place of three kinds in any order. */
export function placeOfAny(one: number, two: number, three: number): number {
  const low = one < two ? one : two;
  const high = one < two ? two : one;
  if (three >= high) return placeOf(low, high, three);
  return three < low ? placeOf(three, low, high) : placeOf(low, three, high);
}
