import type { Kind } from '../tiles/kinds.ts';

/** A group laid down on the table: `jokers` of its `size` tiles are jokers. */
export interface Exposure {
  readonly kind: Kind;
  readonly size: number;
  readonly jokers: number;
}

/** What may be read of a hand by its own player. Arrays are live: don't keep them. */
export interface HandView {
  /** The rack's 36 counts, without exposures. */
  readonly counts: ArrayLike<number>;
  /** Tiles in the rack. */
  readonly size: number;
  readonly exposures: readonly Exposure[];
  /** Tiles of each kind in own exposures, jokers counted as what they stand for. */
  readonly exposed: ArrayLike<number>;
  /** For each kind the groups exposed, as the sum of their `groupCode`. */
  readonly exposedGroups: ArrayLike<number>;
  /** For each way: what is lacking in groups of one and two. */
  readonly plainShort: ArrayLike<number>;
  /** For each way: what is lacking in groups of three and more that are not exposed, before jokers. */
  readonly wildShort: ArrayLike<number>;
  /** For each way: 0, or `BARRED` if the exposures don't fit it. */
  readonly barred: ArrayLike<number>;
  /** Tiles lacking for a way, jokers used; not `isOpen` if the exposures don't fit it. */
  awayOf(way: number): number;
  /** Whether a group of `size` tiles of `kind` may be laid down: some open way holds it beside all exposures (T14, T15). */
  mayExpose(kind: Kind, size: number): boolean;
  /** The smallest away over all ways; not `isOpen` on a card without ways. */
  least(): number;
}
