import type { PassSize } from '../exchange/steps.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import { type Deficits, emptyDeficits, fillDeficits } from '../reading/deficits.ts';
import { placeOf, SMALL_MULTISETS } from './multisets.ts';

/**
 * What one way is worth when more tiles come in, under one kind of value (tiles it has, or reach):
 * for every multiset of up to three incoming tiles that all help it, one value. A value never
 * falls when a tile comes in, and never rises when one is given away; the exact means depend on that.
 */
export interface WayValues {
  /** Entries that the last `list` made. */
  readonly length: number;
  /** The places of their multisets (multisets.ts). */
  readonly places: Uint16Array;
  readonly values: Uint8Array | Float64Array;
  /** Lists the values of a way with these 36 counts kept, one for each multiset of incoming tiles that all help it; those not over the floor may be left out. */
  list(way: number, counts: Uint8Array, floor: number): void;
  /** The value of a way with these 36 counts and nothing more. */
  now(way: number, counts: Uint8Array): number;
  /** At least every value that `list` gives, at far less cost than `list`. */
  bound(way: number, counts: Uint8Array): number;
}

/**
 * How many of its 14 tiles one way has (14 less away) when tiles come in; see `WayValues`. Every
 * useful tile counts one, larger groups only up to their shortage after the rack's jokers.
 */
export class HeldValues implements WayValues {
  length = 0;
  readonly places = new Uint16Array(SMALL_MULTISETS);
  readonly values = new Uint8Array(SMALL_MULTISETS);

  readonly #compiled: CompiledCard;
  readonly #unseen: Uint8Array;
  readonly #size: PassSize;
  readonly #deficits: Deficits = emptyDeficits();

  /** `unseen`: 36 counts; `size`: tiles that come in at most. */
  constructor(compiled: CompiledCard, unseen: Uint8Array, size: PassSize) {
    this.#compiled = compiled;
    this.#unseen = unseen;
    this.#size = size;
  }

  /** Lists the largest values first. */
  list(way: number, counts: Uint8Array): void {
    const has = this.now(way, counts);
    const { shortage } = this.#deficits;
    this.length = 0;
    for (let size: number = this.#size; size > 0; size -= 1) this.#receive(0, size, 0, 0, 0, shortage, has + size);
  }

  now(way: number, counts: Uint8Array): number {
    fillDeficits(this.#compiled, way, counts, this.#unseen, this.#deficits);
    return 14 - this.#deficits.away;
  }

  bound(way: number, counts: Uint8Array): number {
    return Math.min(14, this.now(way, counts) + this.#size);
  }

  /** All multisets of `left` more useful tiles, of the kinds from list place `from` on. */
  #receive(from: number, left: number, one: number, two: number, three: number, shortage: number, value: number): void {
    if (left === 0) {
      this.places[this.length] = placeOf(one, two, three);
      this.values[this.length] = value;
      this.length += 1;
      return;
    }
    const { length, kind, plain, wild, unseen } = this.#deficits;
    for (let place = from; place < length; place += 1) {
      if (unseen[place] === 0) continue;
      const list = plain[place] === 0 ? wild : plain;
      const forLarger = list === wild;
      if (list[place] === 0 || (forLarger && shortage === 0)) continue;
      list[place] = (list[place] as number) - 1;
      unseen[place] = (unseen[place] as number) - 1;
      this.#receive(place, left - 1, two, three, kind[place] as number, forLarger ? shortage - 1 : shortage, value);
      list[place] = (list[place] as number) + 1;
      unseen[place] = (unseen[place] as number) + 1;
    }
  }
}
