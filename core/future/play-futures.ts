import { type Random, randomFromSeed, shuffle } from '../base/random.ts';
import { layMoment, type SeatMoment } from '../chance/lay.ts';
import { playOut, type PlayStart, type PlayWatcher } from '../table/play.ts';
import type { PlayOption } from '../table/play-option.ts';
import { PlayRanking } from '../table/play-ranking.ts';
import { POLICIES } from '../table/policies/names.ts';
import type { Offer, Policy, SeatHand, SeatView } from '../table/policy.ts';
import { PLAYERS_AT } from '../table/simulate.ts';
import { beginGame, makeTable, playerAt, SEAT_COUNT, type Table, wallLeft } from '../table/table.ts';
import type { TableCard } from '../table/table-card.ts';
import type { TableKind } from '../table/kinds.ts';
import { JOKER, type Kind, KIND_COUNT, KINDS, SET_SIZE, supplyOf } from '../tiles/kinds.ts';
import type { RackAways } from '../others/rack-aways.ts';
import { shapeRack } from './hidden-racks.ts';
import { Follower } from './seats.ts';

/** A moment of play as a seat knows it: it has a tile to discard or, with `discarded`, another's discard to claim. */
export interface PlayPosition {
  readonly moment: SeatMoment;
  readonly discarded: { readonly seat: number; readonly kind: Kind } | null;
  /** Whether the house allows a joker to be swapped for in the turn that is tried; it does unless given. */
  readonly maySwap?: boolean;
}

/** Tiles of a seat between turns, in the rack and in exposed groups. */
const TILES_OF_SEAT = 13;
/** Games of one seed at most. */
const GAMES_OF_SEED = 1e6;

/**
 * Whole games from a moment of play: the other racks are laid out as such seats have them (`shapeRack`), the wall is the
 * rest; the seat does one thing and what is best after it in the same turn, then all four play on as the steady players
 * of the table do. The games of one stream differ in that one thing alone.
 */
export class PlayFutures {
  readonly #position: PlayPosition;
  readonly #table: Table;
  readonly #aways: RackAways;
  readonly #own: TrialSeat;
  readonly #hidden: readonly Kind[];
  readonly #watcher: PlayWatcher;
  readonly #deal: Deal = { seed: -1, racks: [], wall: [], likings: new Float64Array(SEAT_COUNT * KIND_COUNT) };

  constructor(card: TableCard, kind: TableKind, aways: RackAways, position: PlayPosition) {
    const { seat } = position.moment;
    this.#position = position;
    this.#aways = aways;
    const policies = PLAYERS_AT[kind].map((name) => POLICIES[name](card));
    this.#own = new TrialSeat(policies[seat] as Policy, new PlayRanking(card), position.maySwap);
    policies[seat] = this.#own;
    this.#table = makeTable(card, policies);
    this.#hidden = hiddenTiles(position.moment);
    this.#watcher = {
      beforeDraw: () => this.#own.end(),
      beforeDiscard: (_, other) => {
        if (other !== seat) this.#own.end();
      },
    };
  }

  /** Whether the seat wins game number `game` of a seed after a choice, or by the steady player's own where that is null. */
  wins(choice: PlayOption | null, seed: number, game: number): boolean {
    if (choice?.action === 'win') return true;
    const { moment, discarded } = this.#position;
    this.#lay(GAMES_OF_SEED * seed + game);
    this.#own.start(choice ?? undefined);
    const start: PlayStart =
      discarded === null ? { seat: moment.seat, discarded: null } : { seat: discarded.seat, discarded: discarded.kind };
    return playOut(this.#table, this.#watcher, start).winner === moment.seat;
  }

  /** Lays the table for a game; the same for the same seed. */
  #lay(seed: number): void {
    const deal = this.#deal;
    const table = this.#table;
    const { moment } = this.#position;
    layMoment(table, moment);
    if (deal.seed !== seed) this.#shape(seed);
    else {
      for (const [seat, rack] of deal.racks.entries()) {
        const { hand } = playerAt(table, seat);
        for (const kind of rack) hand.add(kind);
      }
    }
    table.next = SET_SIZE - deal.wall.length;
    for (let place = 0; place < deal.wall.length; place += 1) table.wall[table.next + place] = deal.wall[place] as Kind;
    for (let seat = 0; seat < SEAT_COUNT; seat += 1) {
      const { likings } = playerAt(table, seat);
      for (let kind = 0; kind < KIND_COUNT; kind += 1) likings[kind] = deal.likings[seat * KIND_COUNT + kind] as number;
    }
    beginGame(table, randomFromSeed(seed));
  }

  /** Makes the racks and the wall of a deal; the table holds what the seat knows. */
  #shape(seed: number): void {
    const table = this.#table;
    const { moment } = this.#position;
    const deal = this.#deal;
    const random = randomFromSeed(seed);
    for (let place = 0; place < deal.likings.length; place += 1) deal.likings[place] = random.fraction();
    const others = seatsFrom(random.below(SEAT_COUNT)).filter((seat) => seat !== moment.seat);
    const hidden = this.#hidden.filter((kind) => kind !== JOKER);
    const inWall = this.#layJokers(others, this.#hidden.length - hidden.length, random);
    const racks: Kind[][] = [[], [], [], []];
    for (const seat of others) {
      const { hand } = playerAt(table, seat);
      const size = Math.min(sizeOf(hand), hand.size + hidden.length);
      const jokers = hand.counts[JOKER] as number;
      const away = this.#aways.draw(moment.drawn, hand.exposures.length, jokers, random);
      shapeRack(table, seat, size, hidden, away, random);
      for (const kind of KINDS)
        for (let copy = hand.counts[kind] as number; copy > 0; copy -= 1) racks[seat]?.push(kind);
    }
    for (let joker = 0; joker < inWall; joker += 1) hidden.push(JOKER);
    shuffle(hidden, random);
    // Where not every tile was logged, the wall is as long as the tiles reach.
    deal.wall = hidden.slice(0, wallLeft(table));
    deal.racks = racks;
    deal.seed = seed;
  }

  /**
   * Deals the hidden jokers, which nobody gives away, to the tiles that each seat was dealt or drew and to those of the
   * wall, all alike; returns how many lie in the wall.
   */
  #layJokers(others: readonly number[], jokers: number, random: Random): number {
    const table = this.#table;
    const had = TILES_OF_SEAT + this.#position.moment.drawn / SEAT_COUNT;
    let inWall = 0;
    for (let joker = 0; joker < jokers; joker += 1) {
      const place = Math.floor((random.fraction() * (others.length * had + wallLeft(table))) / had);
      const seat = others[place];
      const hand = seat === undefined ? undefined : playerAt(table, seat).hand;
      if (hand === undefined || hand.size >= sizeOf(hand)) inWall += 1;
      else hand.add(JOKER);
    }
    return inWall;
  }
}

function seatsFrom(first: number): number[] {
  return Array.from({ length: SEAT_COUNT }, (_, step) => (first + step) % SEAT_COUNT);
}

/** How many tiles a seat's rack holds between turns. */
function sizeOf({ exposures }: SeatHand): number {
  return Math.max(0, TILES_OF_SEAT - exposures.reduce((sum, { size }) => sum + size, 0));
}

interface Deal {
  seed: number;
  racks: readonly (readonly Kind[])[];
  wall: readonly Kind[];
  readonly likings: Float64Array;
}

/** What lies in the other racks and in the wall. */
function hiddenTiles({ rack, shown }: SeatMoment): Kind[] {
  return KINDS.flatMap((kind) => {
    const count = supplyOf(kind) - (rack[kind] as number) - (shown[kind] as number);
    return Array<Kind>(Math.max(0, count)).fill(kind);
  });
}

/** Does one thing, then what stands first in the list of advice until its turn ends, and from then on what its policy says. */
class TrialSeat extends Follower {
  readonly #ranking: PlayRanking;
  readonly #maySwap: boolean;
  /** The thing on trial, while it has not been done. */
  #choice: PlayOption | undefined;
  /** Whether the turn in which it was done still goes on. */
  #goesOn = false;

  constructor(policy: Policy, ranking: PlayRanking, maySwap = true) {
    super(policy);
    this.#ranking = ranking;
    this.#maySwap = maySwap;
  }

  /** The next game; `choice`: what is to be done first. */
  start(choice: PlayOption | undefined): void {
    this.#choice = choice;
    this.#goesOn = false;
  }

  /** The moment of the choice has passed. */
  end(): void {
    this.#choice = undefined;
    this.#goesOn = false;
  }

  override seesWin(): boolean {
    if (this.#goesOn) return true;
    return this.#choice === undefined && super.seesWin();
  }

  override discard(view: SeatView): Kind {
    const choice = this.#choice;
    const isTrial = this.#goesOn || choice !== undefined;
    this.end();
    if (choice?.action === 'discard' && choice.kind !== null) return choice.kind;
    return isTrial ? (this.#ranking.discards(view)[0]?.kind as Kind) : super.discard(view);
  }

  override callsWrongly(view: SeatView, kind: Kind, offer: Offer): boolean {
    return this.#choice === undefined && super.callsWrongly(view, kind, offer);
  }

  override call(view: SeatView, kind: Kind, offer: Offer): boolean {
    const choice = this.#choice;
    if (choice === undefined) return super.call(view, kind, offer);
    this.#choice = undefined;
    if (choice.group === null) return false;
    offer.size = choice.group.size;
    offer.jokers = choice.group.jokers;
    this.#goesOn = true;
    return true;
  }

  override swap(view: SeatView, kind: Kind): boolean {
    const choice = this.#choice;
    if (this.#goesOn) {
      if (!this.#maySwap) return false;
      const best = this.#ranking.onTurn(view)[0];
      return best?.action === 'swap' && best.kind === kind;
    }
    if (choice === undefined) return super.swap(view, kind);
    if (choice.action !== 'swap' || choice.kind !== kind) return false;
    this.#choice = undefined;
    this.#goesOn = true;
    return true;
  }
}
