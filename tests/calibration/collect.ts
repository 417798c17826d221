import { type Random, shuffle } from '../../core/base/random.ts';
import type { CompiledCard } from '../../core/reading/compiled.ts';
import { type Deficits, emptyDeficits, fillDeficits } from '../../core/reading/deficits.ts';
import type { ReachModel } from '../../core/reading/reach-model.ts';
import { newReader, type Reader, reachOfDeficits } from '../../core/reading/reader.ts';
import { playExchange } from '../../core/table/exchange.ts';
import { playOut } from '../../core/table/play.ts';
import type { TableKind } from '../../core/table/kinds.ts';
import { POLICIES, type PolicyName } from '../../core/table/policies/names.ts';
import { PLAYERS_AT } from '../../core/table/simulate.ts';
import { Steadfast } from './steadfast.ts';
import { gameStreams } from '../../core/table/game.ts';
import { layTable, makeTable, playerAt, SEAT_COUNT, type Table } from '../../core/table/table.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { JOKER, KIND_COUNT, KINDS, supplyOf } from '../../core/tiles/kinds.ts';

/** A rack after the exchange, the way that its player then aimed at, and how that ended. */
export interface AimedRack {
  /** The way was the one of best reach, or one drawn from the best ways of the next nine lines. */
  readonly best: boolean;
  readonly concealed: boolean;
  /** What the way lacked. */
  readonly lacks: Deficits;
  readonly unseenJokers: number;
  /** The player won with this way. */
  readonly won: boolean;
  /** The player won, with this way or another. */
  readonly wonAny: boolean;
}

/** A rack after the exchange, played by a player of the table, who may change the aim at any time. */
export interface FreeRack {
  /** What the way of best reach lacked when play began. */
  readonly lacks: Deficits;
  readonly concealed: boolean;
  readonly unseenJokers: number;
  readonly wonAny: boolean;
}

export interface Collection {
  readonly aimed: AimedRack[];
  readonly free: FreeRack[];
}

export interface CollectTask {
  readonly compiled: CompiledCard;
  readonly seed: number;
  readonly deals: number;
  /** The number of the first deal; 0 unless given. A deal comes out the same whatever deals were played before it. */
  readonly first?: number;
  /** Tells which way is the best. */
  readonly model: ReachModel;
  /** One seat in so many aims at another of the ten best lines instead of the best; 0 for none. */
  readonly otherOneIn: number;
  /** The kind of table; quick unless given. */
  readonly kind?: TableKind;
  /** Whether each deal is played once with all four as they are, too; it is unless this says no. */
  readonly free?: boolean;
}

/** Readers are begun anew at this size, for memory's sake. */
const MOST_NODES = 40_000;
const LINES = 10;

/**
 * Deals, exchanges with four players of a kind of table, and then plays the same racks five times, each time
 * with the unseen wall in a new order: once with each seat in turn steadfast among three of them,
 * once with all four as they are.
 */
export function collect({
  compiled,
  seed,
  deals,
  first = 0,
  model,
  otherOneIn,
  kind = 'quick',
  free = true,
}: CollectTask): Collection {
  const card = makeTableCard(compiled);
  const player = POLICIES[PLAYERS_AT[kind][0] as PolicyName];
  const usual = [0, 1, 2, 3].map(() => player(card));
  const steadfast = new Steadfast(card, player(card));
  const table = makeTable(card, usual);
  const reader = new AimReader(compiled, model);
  const streams = gameStreams(seed, first);
  const collection: Collection = { aimed: [], free: [] };
  for (let deal = first; deal < first + deals; deal += 1) {
    const random = streams.next().value;
    layTable(table, random);
    steadfast.begin(random);
    playExchange(table);
    const racks = table.players.map(({ hand }) => Uint8Array.from(hand.counts));
    const best = racks.map((counts, seat) => reader.aimsOf(counts, playerAt(table, seat).given));
    for (let seat = 0; seat < SEAT_COUNT; seat += 1) {
      const ways = best[seat] as readonly number[];
      const other = otherOneIn > 0 && (deal + seat) % otherOneIn === otherOneIn - 1 && ways.length > 1;
      const place = other ? 1 + random.below(ways.length - 1) : 0;
      const way = ways[place];
      if (way === undefined) continue;
      relay(table, racks, random);
      playerAt(table, seat).policy = steadfast;
      steadfast.aimAt(way);
      const outcome = playOut(table);
      playerAt(table, seat).policy = usual[seat] as (typeof usual)[number];
      const lacks = reader.lacksOf(way, racks[seat] as Uint8Array, playerAt(table, seat).given);
      const won = outcome.winner === seat;
      collection.aimed.push({ ...lacks, best: place === 0, won: won && outcome.way === way, wonAny: won });
    }
    if (!free) continue;
    relay(table, racks, random);
    const outcome = playOut(table);
    for (const [seat, [way]] of best.entries()) {
      if (way === undefined) continue;
      const lacks = reader.lacksOf(way, racks[seat] as Uint8Array, playerAt(table, seat).given);
      collection.free.push({ ...lacks, wonAny: outcome.winner === seat });
    }
  }
  return collection;
}

/** Lays the table as it was when play began, the wall in a new order. */
function relay(table: Table, racks: readonly Uint8Array[], random: Random): void {
  table.next = table.wall.length - WALL;
  const wall = table.wall.slice(table.next);
  shuffle(wall, random);
  table.wall.splice(table.next, WALL, ...wall);
  table.gone.fill(0);
  for (const [seat, { hand }] of table.players.entries()) {
    hand.clear();
    for (const kind of KINDS) for (let copy = 0; copy < (racks[seat]?.[kind] as number); copy += 1) hand.add(kind);
  }
}
const WALL = 99;

/** Reads racks as the app does: tiles given away count as gone. */
class AimReader {
  readonly #compiled: CompiledCard;
  readonly #model: ReachModel;
  readonly #deficits = emptyDeficits();
  readonly #unseen = new Uint8Array(KIND_COUNT);
  #reader: Reader;

  constructor(compiled: CompiledCard, model: ReachModel) {
    this.#compiled = compiled;
    this.#model = model;
    this.#reader = newReader(model);
  }

  /** The best ways of the ten best lines, best first. */
  aimsOf(counts: Uint8Array, given: Uint8Array): number[] {
    const { compiled } = this.#prepare(counts, given);
    if (this.#reader.tree.size > MOST_NODES) this.#reader = newReader(this.#model);
    const bestOf = new Map<number, { readonly way: number; readonly reach: number }>();
    for (let way = 0; way < compiled.wayCount; way += 1) {
      fillDeficits(compiled, way, counts, this.#unseen, this.#deficits);
      const concealed = compiled.concealed[way] === 1;
      const jokers = this.#unseen[JOKER] as number;
      const reach = reachOfDeficits(this.#reader.reach, this.#deficits, jokers, concealed);
      const line = compiled.lineOf[way] as number;
      if (reach > (bestOf.get(line)?.reach ?? 0)) bestOf.set(line, { way, reach });
    }
    const ranked = [...bestOf.values()].sort((one, other) => other.reach - one.reach);
    return ranked.slice(0, LINES).map(({ way }) => way);
  }

  lacksOf(way: number, counts: Uint8Array, given: Uint8Array): Pick<AimedRack, 'lacks' | 'concealed' | 'unseenJokers'> {
    const { compiled } = this.#prepare(counts, given);
    const lacks = emptyDeficits();
    fillDeficits(compiled, way, counts, this.#unseen, lacks);
    return { lacks, concealed: compiled.concealed[way] === 1, unseenJokers: this.#unseen[JOKER] as number };
  }

  #prepare(counts: Uint8Array, given: Uint8Array): { readonly compiled: CompiledCard } {
    for (const kind of KINDS) {
      this.#unseen[kind] = Math.max(0, supplyOf(kind) - (counts[kind] as number) - (given[kind] as number));
    }
    return { compiled: this.#compiled };
  }
}
