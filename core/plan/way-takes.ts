import type { CompiledCard } from '../reading/compiled.ts';
import { KIND_COUNT } from '../tiles/kinds.ts';
import { placeOf } from './multisets.ts';

/**
 * What passes take from one way. Passes that take the same useful tiles from a way leave it the
 * same future, so that it is looked at once for all of them.
 */
export class WayTakes {
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

  /** A number under `TAKES` for what the pass at `start` of `passes` (three kinds rising, zeros in front) takes; 0 for nothing. */
  takeOf(passes: Uint8Array, start: number): number {
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

/** Takes are numbered below this: multisets of up to three of 14 kinds. */
export const TAKES = 680;
