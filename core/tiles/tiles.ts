import { codeOf, KIND_COUNT, type Kind, KINDS, supplyOf } from './kinds.ts';

/**
 * An immutable multiset of tiles: how many of each kind, with the algebra of multisets. Racks,
 * passes, walls and hands are all of this type; the order of a rack is kept elsewhere. Nothing
 * here limits a kind to what the set holds; reading a text does (text.ts).
 */
export class Tiles {
  /** Tiles in all. */
  readonly size: number;
  readonly #counts: Uint8Array;

  private constructor(counts: Uint8Array) {
    this.#counts = counts;
    this.size = counts.reduce((sum, count) => sum + count, 0);
  }

  static readonly none = new Tiles(new Uint8Array(KIND_COUNT));

  /** The full set of 152. */
  static readonly fullSet = new Tiles(Uint8Array.from(KINDS, supplyOf));

  static of(kinds: Iterable<Kind>): Tiles {
    const counts = new Uint8Array(KIND_COUNT);
    for (const kind of kinds) counts[kind] = (counts[kind] as number) + 1;
    return new Tiles(counts);
  }

  /** From 36 counts in canonical order; the array is copied. */
  static fromCounts(counts: ArrayLike<number>): Tiles {
    return new Tiles(Uint8Array.from(counts));
  }

  count(kind: Kind): number {
    return this.#counts[kind] as number;
  }

  plus(other: Tiles): Tiles {
    return new Tiles(this.#counts.map((count, kind) => count + (other.#counts[kind] as number)));
  }

  /** What is left after taking `other` away; kinds not there are passed over. */
  minus(other: Tiles): Tiles {
    return new Tiles(this.#counts.map((count, kind) => Math.max(0, count - (other.#counts[kind] as number))));
  }

  with(kind: Kind): Tiles {
    return this.plus(Tiles.of([kind]));
  }

  without(kind: Kind): Tiles {
    return this.minus(Tiles.of([kind]));
  }

  contains(other: Tiles): boolean {
    return other.#counts.every((count, kind) => count <= (this.#counts[kind] as number));
  }

  equals(other: Tiles): boolean {
    return this.#counts.every((count, kind) => count === other.#counts[kind]);
  }

  /** Every tile in canonical order, repeated kinds side by side. */
  toKinds(): Kind[] {
    return KINDS.flatMap((kind) => Array<Kind>(this.count(kind)).fill(kind));
  }

  /** The kinds that are there at least once, in canonical order. */
  distinct(): Kind[] {
    return KINDS.filter((kind) => this.count(kind) > 0);
  }

  /** 36 counts in canonical order, as a fresh array for hot loops. */
  toCounts(): Uint8Array {
    return this.#counts.slice();
  }

  toString(): string {
    return this.toKinds().map(codeOf).join(' ');
  }
}
