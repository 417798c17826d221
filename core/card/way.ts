import { JOKER, type Kind, KIND_COUNT, KINDS, supplyOf } from '../tiles/kinds.ts';

/** One group of a way: `size` times the same tile. */
export interface WayGroup {
  readonly kind: Kind;
  /** 1 to 6; three and more may hold jokers. */
  readonly size: number;
}

/** A group laid open on the table: three to six tiles, all of one kind but for jokers. */
export interface ExposedGroup extends WayGroup {
  readonly jokers: number;
}

/** The smallest group in which a joker may stand. */
export const SMALLEST_JOKER_GROUP = 3;

/**
 * One way to make a line: 14 tiles in groups, every number, suit, wind and dragon chosen. Two ways
 * are the same when they hold the same groups; groups are kept in canonical order (kind, then
 * size), and in the order of the printed pattern in `asPrinted`.
 */
export interface Way {
  /** Distinct for distinct ways of one line, for instance `1:2 12:4 14:4 16:4`. */
  readonly key: string;
  readonly groups: readonly WayGroup[];
  /** The same groups in the order in which the pattern names them. */
  readonly asPrinted: readonly WayGroup[];
}

/** The fewest jokers that a way needs because the set has too few of its tiles. */
export function jokersForced(way: Way): number {
  const counts = new Uint8Array(KIND_COUNT);
  for (const { kind, size } of way.groups) counts[kind] = (counts[kind] as number) + size;
  return KINDS.reduce(
    (sum, kind) => sum + (kind === JOKER ? 0 : Math.max(0, (counts[kind] as number) - supplyOf(kind))),
    0,
  );
}
