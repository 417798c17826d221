import { JOKER, type Kind, KINDS } from '../tiles/kinds.ts';
import { emptyDeficits, fillDeficits } from './deficits.ts';
import { leanOf } from './lean.ts';
import { reachOfDeficits, readerOf } from './reader.ts';
import type { Reading } from './reading.ts';

/**
 * All reaches after the rack loses (`by` -1) or gains (`by` 1) one tile of a kind that is not a
 * joker; a tile gained is one of the unseen. Only the ways that hold the kind are looked at
 * again. The array is new.
 */
export function reachesAfter(reading: Reading, kind: Kind, by: 1 | -1): Float64Array {
  const { compiled, known, model } = reading;
  const { reach } = readerOf(model);
  const counts = known.rack.toCounts();
  const unseen = known.unseen.toCounts();
  counts[kind] = (counts[kind] as number) + by;
  if (by === 1) unseen[kind] = (unseen[kind] as number) - 1;
  const reaches = reading.reaches.slice();
  const deficits = emptyDeficits();
  for (let place = compiled.userStarts[kind] as number; place < (compiled.userStarts[kind + 1] as number); place += 1) {
    const way = compiled.users[place] as number;
    fillDeficits(compiled, way, counts, unseen, deficits);
    reaches[way] = reachOfDeficits(reach, deficits, unseen[JOKER] as number, compiled.concealed[way] === 1);
  }
  return reaches;
}

export function largest(values: Float64Array): number {
  return values.reduce((most, next) => Math.max(most, next), 0);
}

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
