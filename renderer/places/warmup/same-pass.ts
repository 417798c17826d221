import type { Kind } from '../../../core/tiles/kinds.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';

/** Whether two lists hold the same tiles, in whatever order. */
export function isSamePass(one: readonly Kind[], other: readonly Kind[]): boolean {
  return Tiles.of(one).equals(Tiles.of(other));
}
