import type { Hand } from '../table/hand.ts';
import { POLICIES } from '../table/policies/names.ts';
import type { ShownGroup } from '../table/policy.ts';
import type { TableKind } from '../table/kinds.ts';
import { PLAYERS_AT } from '../table/simulate.ts';
import { forget, makeTable, playerAt, SEAT_COUNT, type Table } from '../table/table.ts';
import type { TableCard } from '../table/table-card.ts';
import { WALL_AT_START } from '../tiles/deal.ts';
import { JOKER, type Kind, KINDS, SET_SIZE } from '../tiles/kinds.ts';

/** What a seat knows at a moment. Counts are those of the 36 kinds. */
export interface SeatMoment {
  /** 0 to 3 for East, South, West, North. */
  readonly seat: number;
  /** Concealed tiles. */
  readonly rack: ArrayLike<number>;
  /** Own exposed groups. */
  readonly groups: readonly ShownGroup[];
  /** Tiles passed on. */
  readonly given: ArrayLike<number>;
  /** What lies face up or is otherwise known to be out of reach: discards and all exposures, jokers as jokers. */
  readonly shown: ArrayLike<number>;
  /** The exposures of each seat, in the order of play; the own place is not looked at. */
  readonly exposures: readonly (readonly ShownGroup[])[];
  /** What each seat has discarded, oldest first, and what this seat got from each in passes; nothing known unless given. */
  readonly thrown?: readonly (readonly Kind[])[];
  readonly passed?: readonly (readonly Kind[])[];
  /** Tiles drawn from the wall by all seats. */
  readonly drawn: number;
}

const TABLES = new WeakMap<TableCard, Map<TableKind, Table>>();

/**
 * A table at which moments can be laid: the steady players of a kind of table in every chair. Made once for a card and a
 * kind, since it is asked at every move: whoever uses it lays a moment first and reads it at once.
 */
export function steadyTable(card: TableCard, kind: TableKind): Table {
  const tables = TABLES.get(card) ?? new Map<TableKind, Table>();
  TABLES.set(card, tables);
  const table = tables.get(kind) ?? newTable(card, kind);
  tables.set(kind, table);
  return table;
}

function newTable(card: TableCard, kind: TableKind): Table {
  return makeTable(
    card,
    PLAYERS_AT[kind].map((name) => POLICIES[name](card)),
  );
}

/** Lays what a seat knows at a moment; the other racks and the wall stay as they were, and must not be looked at. */
export function layMoment(table: Table, moment: SeatMoment): void {
  const { seat, rack, groups, given, shown, exposures, thrown, passed, drawn } = moment;
  table.next = SET_SIZE - WALL_AT_START + drawn;
  for (let other = 0; other < SEAT_COUNT; other += 1) {
    const { hand, given: gave, likings } = playerAt(table, other);
    layHand(hand, other === seat ? rack : [], other === seat ? groups : (exposures[other] ?? []));
    gave.fill(0);
    // The rule that decides between equals has no liking here, so that the same moment has the same value.
    likings.fill(0.5);
    forget(table, other);
    playerAt(table, other).thrown.push(...(thrown?.[other] ?? []));
  }
  const { given: gave, received } = playerAt(table, seat);
  for (const [other, tiles] of (passed ?? []).entries()) received[other]?.push(...tiles);
  for (const kind of KINDS) {
    gave[kind] = given[kind] as number;
    table.gone[kind] = shown[kind] as number;
  }
}

/** Gives a hand exactly these concealed tiles (36 counts, or none) and exposed groups. */
export function layHand(hand: Hand, rack: ArrayLike<number>, groups: readonly ShownGroup[]): void {
  hand.clear();
  for (const { kind, size, jokers } of groups) {
    // The called tile does not come from the rack; in a group of jokers it is one of their places.
    const fromRack = Math.min(jokers, size - 1);
    for (let copy = 0; copy < size - 1 - fromRack; copy += 1) hand.add(kind);
    for (let copy = 0; copy < fromRack; copy += 1) hand.add(JOKER);
    hand.expose(kind, size, fromRack);
  }
  for (const kind of KINDS) for (let copy = rack[kind] ?? 0; copy > 0; copy -= 1) hand.add(kind);
}
