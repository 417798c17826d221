import type { Kind } from '../tiles/kinds.ts';
import type { Target } from './targets.ts';

/** What one tile of the rack is to the reading. */
export interface TileVerdict {
  readonly kind: Kind;
  /** The first, second, … copy of its kind in the rack, counted from 1. */
  readonly copy: number;
  /** Copies of the kind in the rack. */
  readonly copies: number;
  readonly verdict: 'keep' | 'spare';
  /** The targets that want this copy, best first. */
  readonly wantedBy: readonly Target[];
  /** The part of the reach over all lines whose best way uses this copy, 0 to 1. */
  readonly worth: number;
  /** How much the best reach falls when one tile of the kind goes. */
  readonly loss: number;
  /** Rack neighbours in number that the best target wanting this copy uses as well. */
  readonly runsWith: readonly Kind[];
  /** Two targets that want this copy although their tiles can't all be kept when three are given. */
  readonly strain: readonly [Target, Target] | null;
  /** The verdict and why, for a player. */
  readonly sentence: string;
}
