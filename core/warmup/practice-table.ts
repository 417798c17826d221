import { mayBePassed, type PassStep, type Seat, SEATS } from '../exchange/steps.ts';
import type { GameEvent } from '../game/events.ts';
import { playExchange } from '../table/exchange.ts';
import { POLICIES, type PolicyName } from '../table/policies/names.ts';
import type { Policy, SeatView } from '../table/policy.ts';
import type { TableCard } from '../table/table-card.ts';
import { makeTable, playerAt, SEAT_COUNT, type Table } from '../table/table.ts';
import type { TableEvent } from '../table/trace.ts';
import { type Kind, KIND_COUNT } from '../tiles/kinds.ts';
import { formatTileList, formatTiles } from '../tiles/text.ts';
import type { Tiles } from '../tiles/tiles.ts';
import { othersOf, streamBeside } from './deal-code.ts';

/** What the person at the practice table decided at one step. */
export type OwnMove =
  | {
      readonly type: 'give';
      readonly step: PassStep;
      readonly tiles: readonly Kind[];
      /** Tiles handed on unseen, first left and second right only. */
      readonly blind?: number;
    }
  /** What the person is ready to exchange in the courtesy, what should go first in front. */
  | { readonly type: 'courtesy'; readonly tiles: readonly Kind[] }
  /** The person stops before the second round. */
  | { readonly type: 'stop' };

/** Called with the seat's view before each step. */
export type PassLook = (view: SeatView, step: PassStep) => void;

/**
 * Plays a person's seat from the moves made so far; `rest` decides what comes after them. The
 * table's other seats see no difference, and what happens up to the last move is the same whatever
 * comes after. A person who has made the first left pass goes on unless there is a stop.
 */
function ownPolicy(moves: readonly OwnMove[], rest: Policy, look?: PassLook): Policy {
  return {
    ...bound(rest),
    pass(view, step, blind, out) {
      look?.(view, step);
      const move = moves.find((each) => each.type === 'give' && each.step === step);
      if (move?.type !== 'give') return rest.pass(view, step, blind, out);
      out.push(...move.tiles);
      return move.tiles.length;
    },
    goesOn(view) {
      if (moves.some(({ type }) => type === 'stop')) return false;
      return moves.some((each) => each.type === 'give' && each.step === 'left') || rest.goesOn(view);
    },
    courtesy(view, out) {
      look?.(view, 'courtesy');
      const move = moves.find(({ type }) => type === 'courtesy');
      if (move?.type !== 'courtesy') return rest.courtesy(view, out);
      const tiles = move.tiles.filter(mayBePassed);
      out.push(...tiles);
      return tiles.length;
    },
  };
}

/** A policy's methods as fields, since policies are objects of classes. */
function bound(policy: Policy): Policy {
  return {
    pass: (...given) => policy.pass(...given),
    goesOn: (...given) => policy.goesOn(...given),
    courtesy: (...given) => policy.courtesy(...given),
    discard: (...given) => policy.discard(...given),
    call: (...given) => policy.call(...given),
    swap: (...given) => policy.swap(...given),
  };
}

/** A practice deal with its other three seats. */
export interface PracticeDeal {
  readonly rack: Tiles;
  readonly seat: Seat;
  /** Decides the others' racks, the wall and the likings of the seats. */
  readonly seed: number;
}

/** The player that plays the other seats by default. */
const PARTNERS: PolicyName = 'soft';

/** A table of practice: three seats played by a policy, one by the person. */
export class PracticeTable {
  readonly #card: TableCard;
  readonly #partners: PolicyName;

  constructor(card: TableCard, partners: PolicyName = PARTNERS) {
    this.#card = card;
    this.#partners = partners;
  }

  /**
   * The exchange as the person's seat sees it, in events of a game: the deal, then every step that
   * the moves decide, with what came in. Moves beyond a stop are passed over.
   */
  exchange(deal: PracticeDeal, moves: readonly OwnMove[]): GameEvent[] {
    const seat = SEATS.indexOf(deal.seat);
    return eventsOfSeat(this.#play(deal, moves), seat, deal, moves);
  }

  /** The person's rack just before a step when all four seats are played by the policy; null when it never comes. */
  momentBefore(deal: PracticeDeal, step: PassStep): { readonly rack: Uint8Array; readonly given: Uint8Array } | null {
    const seat = SEATS.indexOf(deal.seat);
    let moment: { readonly rack: Uint8Array; readonly given: Uint8Array } | null = null;
    const look = (view: SeatView, at: PassStep): void => {
      if (at !== step || view.seat !== seat || moment !== null) return;
      moment = { rack: Uint8Array.from(view.hand.counts), given: Uint8Array.from(view.given) };
    };
    this.#play(deal, [], look);
    return moment;
  }

  /** Plays the exchange; returns all that happened at the table. */
  #play(deal: PracticeDeal, moves: readonly OwnMove[], look?: PassLook): readonly TableEvent[] {
    const policy: Policy = POLICIES[this.#partners](this.#card);
    const seat = SEATS.indexOf(deal.seat);
    const seats = SEATS.map((_, each) => (each === seat ? ownPolicy(moves, policy, look) : policy));
    const table = makeTable(this.#card, seats);
    layDeal(table, deal);
    const trace: TableEvent[] = [];
    table.trace = trace;
    playExchange(table);
    return trace;
  }
}

/** Deals a known rack to one seat and the others from a seed: East has 14 tiles. */
function layDeal(table: Table, { rack, seat, seed }: PracticeDeal): void {
  const others = othersOf(rack, seed);
  const likings = streamBeside(seed).jumped();
  for (let place = 0; place < SEAT_COUNT; place += 1) {
    const player = playerAt(table, place);
    for (let kind = 0; kind < KIND_COUNT; kind += 1) player.likings[kind] = likings.fraction();
    const tiles = SEATS[place] === seat ? rack.toKinds() : others.splice(0, place === 0 ? 14 : 13);
    for (const kind of tiles) player.hand.add(kind);
  }
}

function eventsOfSeat(
  trace: readonly TableEvent[],
  seat: number,
  deal: PracticeDeal,
  moves: readonly OwnMove[],
): GameEvent[] {
  const events: GameEvent[] = [{ type: 'dealt', seat: deal.seat, tiles: formatTiles(deal.rack) }];
  const decided = new Set(
    moves.flatMap((move) => (move.type === 'give' ? [move.step] : move.type === 'courtesy' ? ['courtesy'] : [])),
  );
  for (const event of trace) {
    // A stop is shown once the last pass before it is decided.
    if (event.type === 'stopped' && decided.has('left')) events.push({ type: 'stopped', before: 'left2' });
    if (event.type === 'gave' && event.seat === seat && decided.has(event.step)) events.push(gaveEvent(event));
    if (event.type === 'received' && event.seat === seat && decided.has(event.step) && event.tiles.length > 0) {
      events.push({ type: 'received', step: event.step, tiles: formatTileList(event.tiles) });
    }
  }
  return events;
}

function gaveEvent({ step, tiles, blind, asked, offered }: TableEvent & { type: 'gave' }): GameEvent {
  return {
    type: 'gave',
    step,
    tiles: formatTileList(tiles),
    ...(blind > 0 ? { blind } : {}),
    ...(asked === undefined ? {} : { asked }),
    ...(offered === undefined ? {} : { offered }),
  };
}
