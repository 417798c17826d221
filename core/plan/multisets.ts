import type { CompiledCard } from '../reading/compiled.ts';
import { KIND_COUNT } from '../tiles/kinds.ts';

/**
 * Multisets of up to three kinds have places 0 to 8,435 in one table: {i, j, k} with i ≤ j ≤ k is
 * at C(k + 2, 3) + C(j + 1, 2) + i, and 0 (the joker, which is never passed) stands for "no tile".
 * The place of a smaller multiset is that of the larger one with zeros in front.
 */
export const MULTISETS = (KIND_COUNT * (KIND_COUNT + 1) * (KIND_COUNT + 2)) / 6;

/** Multisets of up to three of 14 kinds: no way needs more kinds. */
export const SMALL_MULTISETS = (15 * 16 * 17) / 6;

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

/**
 * The useful tiles that passes remove from one way. Passes that remove the same ones leave the way
 * the same values, so that these are computed once for all of them.
 */
export class RemovedSets {
  readonly #compiled: CompiledCard;
  readonly #counts: Uint8Array;
  /** By kind, 0 if the way does not use it, otherwise 1, 2, … with kinds rising. */
  readonly #slots = new Uint8Array(KIND_COUNT);
  /** By kind, copies in the rack that the way does not use. */
  readonly #over = new Uint8Array(KIND_COUNT);

  /** `counts`: the rack's 36 counts. */
  constructor(compiled: CompiledCard, counts: Uint8Array) {
    this.#compiled = compiled;
    this.#counts = counts;
  }

  setWay(way: number): void {
    const { starts, needKind, needPlain, needWild } = this.#compiled;
    this.#slots.fill(0);
    let slot = 0;
    for (let place = starts[way] as number; place < (starts[way + 1] as number); place += 1) {
      const kind = needKind[place] as number;
      const held = this.#counts[kind] as number;
      if (held === 0) continue;
      slot += 1;
      this.#slots[kind] = slot;
      this.#over[kind] = Math.max(0, held - (needPlain[place] as number) - (needWild[place] as number));
    }
  }

  /** A number below `SMALL_MULTISETS` for what the pass at `start` of `passes` (three kinds rising, zeros in front) removes; 0 for nothing. */
  numberOf(passes: Uint8Array, start: number): number {
    let low = 0;
    let middle = 0;
    let high = 0;
    let same = 0;
    for (let place = start; place < start + 3; place += 1) {
      const kind = passes[place] as number;
      same = place > start && kind === passes[place - 1] ? same + 1 : 1;
      const slot = this.#slots[kind] as number;
      if (slot === 0 || same <= (this.#over[kind] as number)) continue;
      low = middle;
      middle = high;
      high = slot;
    }
    return placeOf(low, middle, high);
  }
}
