import type { Random } from '../base/random.ts';
import { shuffle } from '../base/random.ts';
import { JOKER, type Kind, KIND_COUNT, SET_SIZE, SUPPLY } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import { Hand } from './hand.ts';
import type { ShownGroup, Policy, SeatView } from './policy.ts';
import { StillPossible } from './still-possible.ts';
import type { TableCard } from './table-card.ts';
import type { TableEvent } from './trace.ts';

export const SEAT_COUNT = 4;
const FULL_SET: readonly Kind[] = Tiles.fullSet.toKinds();

/** A player: a seat's own memory of the game, and the policy that plays it. */
export interface Player {
  readonly hand: Hand;
  readonly given: Uint8Array;
  /** Discards, oldest first. */
  readonly thrown: Kind[];
  /** For each seat the tiles that came from it in passes. */
  readonly received: readonly Kind[][];
  readonly likings: Float64Array;
  readonly view: SeatView;
  policy: Policy;
}

/**
 * The table of one running game: four players, the wall and what lies face up. Made once for a
 * card and laid anew for each game, so that no game allocates what the last one had.
 */
export interface Table {
  readonly card: TableCard;
  readonly players: readonly Player[];
  /** All 152 tiles; those before `next` have been dealt or drawn. */
  readonly wall: Kind[];
  next: number;
  /** 36 counts of what lies face up: discards and exposures, jokers counted as jokers. */
  readonly gone: Uint8Array;
  /** Where the events of the game are written, if anybody wants them. */
  trace: TableEvent[] | undefined;
}

export function makeTable(card: TableCard, policies: readonly Policy[]): Table {
  const players: Player[] = [];
  const table: Table = {
    card,
    players,
    wall: [...FULL_SET],
    next: 0,
    gone: new Uint8Array(KIND_COUNT),
    trace: undefined,
  };
  const stillPossible = new StillPossible(card);
  for (let seat = 0; seat < SEAT_COUNT; seat += 1) players.push(makePlayer(table, seat, policies, stillPossible));
  return table;
}

/** Shuffles and deals (TB-1, TB-2) and draws every seat's likings (TB-23). */
export function layTable(table: Table, random: Random): void {
  for (let place = 0; place < SET_SIZE; place += 1) table.wall[place] = FULL_SET[place] as Kind;
  shuffle(table.wall, random);
  table.next = 0;
  table.gone.fill(0);
  for (let seat = 0; seat < SEAT_COUNT; seat += 1) {
    const { hand, given, likings } = playerAt(table, seat);
    hand.clear();
    given.fill(0);
    forget(table, seat);
    for (let kind = 0; kind < KIND_COUNT; kind += 1) likings[kind] = random.fraction();
    const from = table.next;
    for (let count = seat === 0 ? 14 : 13; count > 0; count -= 1) hand.add(drawTile(table));
    table.trace?.push({ type: 'dealt', seat, tiles: table.wall.slice(from, table.next) });
  }
  beginGame(table, random);
}

/** Nobody has discarded or been passed anything, as far as a seat goes. */
export function forget(table: Table, seat: number): void {
  const { thrown, received } = playerAt(table, seat);
  thrown.length = 0;
  for (const tiles of received) tiles.length = 0;
}

/** Lets each player take of the game's chance what it needs, once all else is drawn (TB-25). */
export function beginGame({ players }: Table, random: Random): void {
  for (const { policy } of players) policy.begin?.(random);
}

export function playerAt(table: Table, seat: number): Player {
  return table.players[seat % SEAT_COUNT] as Player;
}

/** Takes the next tile of the wall, which must not be empty. */
export function drawTile(table: Table): Kind {
  const kind = table.wall[table.next] as Kind;
  table.next += 1;
  return kind;
}

export function wallLeft(table: Table): number {
  return SET_SIZE - table.next;
}

/** Moves a tile from sight to the open table. */
export function showTile(table: Table, kind: number, count: number): void {
  table.gone[kind] = (table.gone[kind] as number) + count;
}

function makePlayer(table: Table, seat: number, policies: readonly Policy[], stillPossible: StillPossible): Player {
  const hand = new Hand(table.card);
  const given = new Uint8Array(KIND_COUNT);
  const thrown: Kind[] = [];
  const received: Kind[][] = Array.from({ length: SEAT_COUNT }, () => []);
  const likings = new Float64Array(KIND_COUNT);
  const view: SeatView = {
    card: table.card,
    seat,
    hand,
    exposuresOf: (other: number): readonly ShownGroup[] => playerAt(table, other).hand.exposures,
    thrownBy: (other: number): readonly Kind[] => playerAt(table, other).thrown,
    passedBy: (other: number): readonly Kind[] => received[other] as Kind[],
    gone: table.gone,
    stillPossible,
    given,
    unseen: (kind: number): number =>
      (SUPPLY[kind] as number) - (hand.counts[kind] as number) - (table.gone[kind] as number),
    get wallLeft() {
      return wallLeft(table);
    },
    likings,
  };
  return { hand, given, thrown, received, likings, view, policy: policies[seat] as Policy };
}

/** Lays down a called group of a player and shows its own tiles and jokers (TB-11, TB-19). */
export function layExposure(table: Table, seat: number, kind: Kind, size: number, jokers: number): void {
  playerAt(table, seat).hand.expose(kind, size, jokers);
  showTile(table, kind, size - 1 - jokers);
  showTile(table, JOKER, jokers);
}
