import { JOKER, type Kind, KINDS } from '../tiles/kinds.ts';
import { leanOf } from './lean.ts';
import type { Reading } from './reading.ts';
import { largest, reachesAfter } from './one-tile.ts';

/** What one more tile of a kind would change. */
export interface TurningTile {
  readonly kind: Kind;
  /** Copies unseen. */
  readonly unseen: number;
  /** How much the best reach would rise. */
  readonly gain: number;
  /** How much of the lean would move to other sections, 0 to 1. */
  readonly shift: number;
}

/**
 * For every unseen kind but the joker, what one tile of it would change: most gain first, then
 * most shift, then canonical order.
 */
export function turningTiles(reading: Reading): TurningTile[] {
  const best = largest(reading.reaches);
  const shares = new Map(reading.lean.map(({ section, share }) => [section, share]));
  return KINDS.filter((kind) => kind !== JOKER && reading.known.unseen.count(kind) > 0)
    .map((kind) => {
      const reaches = reachesAfter(reading, kind, 1);
      const moved = leanOf(reading.compiled, reaches).reduce(
        (sum, { section, share }) => sum + Math.abs(share - (shares.get(section) as number)) / 2,
        0,
      );
      return { kind, unseen: reading.known.unseen.count(kind), gain: largest(reaches) - best, shift: moved };
    })
    .sort((one, other) => other.gain - one.gain || other.shift - one.shift || one.kind - other.kind);
}
