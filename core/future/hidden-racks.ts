import type { Random } from '../base/random.ts';
import { SEAT_COUNT, playerAt, type Table } from '../table/table.ts';
import { simulateGames, PLAYERS_AT } from '../table/simulate.ts';
import { finish } from '../base/steps.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import type { TableKind } from '../table/kinds.ts';
import type { TableCard } from '../table/table-card.ts';
import { JOKER, type Kind } from '../tiles/kinds.ts';
import { WALL_AT_START } from '../tiles/deal.ts';

/** Tens of tiles drawn that are told apart. */
const TENS = 10;
const TEN = WALL_AT_START / TENS;
/** Exposed groups and jokers in the rack that are told apart; more count as so many. */
const MOST_GROUPS = 3;
const MOST_JOKERS = 3;
/** How far away a rack may be. */
const AWAYS = 15;
/** Games that a card's racks are learned from; and their seed. */
const GAMES = 200;
const SEED = 29;

/**
 * How many tiles away the seats of a card's games are in the course of play, by tens of tiles drawn, groups exposed and
 * jokers in the rack: what hidden racks are made like. Tiles are counted while another seat holds one too many.
 */
export class RackAways {
  /** By ten, groups, jokers and away. */
  readonly #seats = new Uint32Array(TENS * (MOST_GROUPS + 1) * (MOST_JOKERS + 1) * AWAYS);

  /** By some games of the steady players of a kind of table, which are played once. */
  static of({ compiled }: TableCard, kind: TableKind): RackAways {
    const kept = KEPT.get(compiled) ?? new Map<TableKind, RackAways>();
    KEPT.set(compiled, kept);
    const aways = kept.get(kind) ?? RackAways.#learned(compiled, kind);
    kept.set(kind, aways);
    return aways;
  }

  static #learned(compiled: CompiledCard, kind: TableKind): RackAways {
    const aways = new RackAways();
    const beforeDiscard = (table: Table, seat: number, drawn: number): void => aways.note(table, seat, drawn);
    finish(simulateGames({ compiled, seed: SEED, games: GAMES, policies: PLAYERS_AT[kind] }, { beforeDiscard }));
    return aways;
  }

  /** Counts the seats that wait while `seat` is on turn. */
  note(table: Table, seat: number, drawn: number): void {
    for (let step = 1; step < SEAT_COUNT; step += 1) {
      const { hand } = playerAt(table, seat + step);
      const row = rowOf(tenOf(drawn / TEN), hand.exposures.length, hand.counts[JOKER] as number);
      const place = row + Math.min(AWAYS - 1, hand.least());
      this.#seats[place] = (this.#seats[place] as number) + 1;
    }
  }

  /** How far away a seat with so many exposed groups and jokers is, by chance. */
  draw(drawn: number, groups: number, jokers: number, random: Random): number {
    // Between the middles of two tens, of one or the other.
    const ten = tenOf(drawn / TEN - 0.5 + random.fraction());
    const share = random.fraction();
    for (let apart = 0; apart < TENS; apart += 1) {
      for (const near of apart === 0 ? [ten] : [ten + apart, ten - apart]) {
        const away = near < 0 || near >= TENS ? -1 : this.#awayAt(rowOf(near, groups, jokers), share);
        if (away >= 0) return away;
      }
    }
    return 1;
  }

  #awayAt(row: number, share: number): number {
    const seats = this.#seats.subarray(row, row + AWAYS);
    const all = seats.reduce((sum, count) => sum + count, 0);
    if (all === 0) return -1;
    let left = share * all;
    return seats.findIndex((count) => (left -= count) < 0);
  }
}

const KEPT = new WeakMap<CompiledCard, Map<TableKind, RackAways>>();

function tenOf(tens: number): number {
  return Math.max(0, Math.min(TENS - 1, Math.floor(tens)));
}

function rowOf(ten: number, groups: number, jokers: number): number {
  const row = ten * (MOST_GROUPS + 1) + Math.min(MOST_GROUPS, groups);
  return (row * (MOST_JOKERS + 1) + Math.min(MOST_JOKERS, jokers)) * AWAYS;
}

/** Draws after which a rack that has not come near is taken as it is. */
const MOST_DRAWS = 60;

/**
 * Fills a seat's rack, which may hold jokers, out of the hidden tiles that are none, as such a seat would have it: from
 * random tiles it draws and throws back by its own policy until it is as near to a hand as wanted. Racks of random tiles
 * would be rubbish that nobody holds late in a game.
 */
export function shapeRack(
  table: Table,
  seat: number,
  size: number,
  hidden: Kind[],
  away: number,
  random: Random,
): void {
  const { hand, policy, view } = playerAt(table, seat);
  const steady = policy.unfailing ?? policy;
  for (let count = hand.size; count < size; count += 1) hand.add(takeAny(hidden, random));
  for (let draws = 0; hand.least() > away && draws < MOST_DRAWS; draws += 1) {
    const place = random.below(hidden.length);
    hand.add(hidden[place] as Kind);
    const thrown = steady.discard(view);
    hand.remove(thrown);
    hidden[place] = thrown;
  }
}

function takeAny(tiles: Kind[], random: Random): Kind {
  const place = random.below(tiles.length);
  const taken = tiles[place] as Kind;
  tiles[place] = tiles.at(-1) as Kind;
  tiles.pop();
  return taken;
}
