import { JOKER, type Kind } from '../tiles/kinds.ts';
import { emptyDeficits, fillDeficits } from './deficits.ts';
import { readerOf, reachOfDeficits } from './reader.ts';
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
