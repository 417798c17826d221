import type { Random } from '../base/random.ts';
import { SEAT_COUNT, playerAt, type Table } from '../table/table.ts';
import { simulateGames, PLAYERS_AT } from '../table/simulate.ts';
import { finish } from '../base/steps.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import type { TableKind } from '../table/kinds.ts';
import type { TableCard } from '../table/table-card.ts';
import { JOKER } from '../tiles/kinds.ts';
import { WALL_AT_START } from '../tiles/deal.ts';

/** Tens of tiles drawn that are told apart. */
const TENS = 10;
const TEN = WALL_AT_START / TENS;
/** Exposed groups and jokers in the rack that are told apart; more count as so many. */
const MOST_GROUPS = 3;
const MOST_JOKERS = 3;
/** How far away a rack may be. */
const AWAYS = 15;
/** Seats from which shares are taken at least, where there are so many. */
const FEWEST_SEATS = 400;
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

  /** Counts the seats that wait while `seat` is on turn; a dead hand is no distance away. */
  note(table: Table, seat: number, drawn: number): void {
    for (let step = 1; step < SEAT_COUNT; step += 1) {
      const { hand } = playerAt(table, seat + step);
      if (hand.isDead) continue;
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

  /**
   * How far away seats with so many exposed groups are, whatever jokers they hold: shares of 1, entry a for a tiles. Where
   * few games got so far, those of the tens beside it count, too.
   */
  shares(drawn: number, groups: number): Float64Array {
    const shares = new Float64Array(AWAYS);
    const middle = drawn / TEN - 0.5;
    let all = 0;
    for (let apart = 1; all < FEWEST_SEATS && apart <= TENS; apart += 1) {
      shares.fill(0);
      all = 0;
      for (let ten = 0; ten < TENS; ten += 1) {
        const near = Math.max(0, 1 - Math.abs(ten - Math.min(TENS - 1, Math.max(0, middle))) / apart);
        if (near === 0) continue;
        for (let jokers = 0; jokers <= MOST_JOKERS; jokers += 1) {
          const row = rowOf(ten, groups, jokers);
          for (let away = 0; away < AWAYS; away += 1) {
            const count = this.#seats[row + away] as number;
            shares[away] = (shares[away] as number) + near * count;
            all += count;
          }
        }
      }
    }
    const sum = shares.reduce((total, share) => total + share, 0);
    return sum === 0 ? shares : shares.map((share) => share / sum);
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
