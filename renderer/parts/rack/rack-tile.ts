import type { Kind } from '../../../core/tiles/kinds.ts';
import type { TileMark } from '../tile/wr-tile.ts';

/** A tile with an identity, so that two equal tiles can be told apart while they are moved. */
export interface RackTile {
  readonly id: string;
  readonly kind: Kind;
  readonly mark?: TileMark;
  /** Why it is marked so; spoken after its name. */
  readonly why?: string;
}
