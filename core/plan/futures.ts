/**
 * What one way is worth when more tiles come in, under one kind of value (tiles it has, or reach):
 * for every multiset of up to so many incoming tiles that all help it, one value. A value never
 * falls when a tile comes in, and never rises when one is given away; the exact means rest on that.
 */
export interface Futures {
  /** Entries that the last `look` listed. */
  readonly length: number;
  /** The places of their multisets (multisets.ts). */
  readonly places: Uint16Array;
  readonly values: Uint8Array | Float64Array;
  /** Lists the futures of a way with these 36 counts kept; those that are not over the floor may be left out. */
  look(way: number, counts: Uint8Array, floor: number): void;
  /** The value of a way with these 36 counts and nothing more. */
  now(way: number, counts: Uint8Array): number;
  /** At least the value of every future, at far less cost than `look`. */
  bound(way: number, counts: Uint8Array): number;
}

/** No way wants more than 14 kinds, and 14 kinds have 680 multisets of up to three. */
export const MOST_CHOICES = 680;
