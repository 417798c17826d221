import { JOKER, KIND_COUNT, KINDS, supplyOf } from '../tiles/kinds.ts';
import type { Way } from './way.ts';

/** Jokers that a way can't do without, because the set has too few of its tiles. */
export function jokersForced(way: Way): number {
  const counts = new Uint8Array(KIND_COUNT);
  for (const { kind, size } of way.groups) counts[kind] = (counts[kind] as number) + size;
  return KINDS.reduce(
    (sum, kind) => sum + (kind === JOKER ? 0 : Math.max(0, (counts[kind] as number) - supplyOf(kind))),
    0,
  );
}
