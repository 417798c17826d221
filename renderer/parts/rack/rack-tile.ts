import type { Kind } from '../../../core/tiles/kinds.ts';
import type { TileMark } from '../tile/wr-tile.ts';

/** What lies before a tile: nothing, a gap made by hand, or the start of the second tier. */
export type TileSpace = 'none' | 'gap' | 'tier';

/** A tile with an identity, so that two equal tiles can be distinguished while they are moved. */
export interface RackTile {
  readonly id: string;
  readonly kind: Kind;
  /** What lies before it; `none` when left out. */
  readonly space?: TileSpace;
  readonly mark?: TileMark;
  /** It came in since the last act. */
  readonly fresh?: boolean;
  /** Why it is marked so, in a few words; spoken after its name. */
  readonly why?: string;
}

/** A tile's new place: its order is its place in the list. */
export interface PlacedTile {
  readonly id: string;
  readonly space: TileSpace;
}
