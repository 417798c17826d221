import { givable } from '../exchange/moves.ts';
import { blindLimit, type ExchangeState, outOfReach, stopDue } from '../exchange/state.ts';
import {
  mayBePassed,
  ownSizes,
  PASS_SIZE,
  type PassSize,
  type PassStep,
  type Seat,
  SEATS,
  type Stop,
} from '../exchange/steps.ts';
import { type Kind, KINDS, supplyOf } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import type { GameState } from './game-state.ts';
import { goneTiles, handSize } from './hand-view.ts';

/** The pass now due. */
export interface GiveDue {
  readonly step: PassStep;
  /** Own tiles to give: exactly three, less the blind ones; none to three in the courtesy. */
  readonly least: number;
  readonly most: number;
  /** How many of the three may be handed on unseen. */
  readonly blindUpTo: number;
  /** What may lie in the tray. */
  readonly givable: Tiles;
}

/** A joker that the user can take now. */
interface OwnSwap {
  readonly owner: Seat;
  readonly kind: Kind;
}

/** What may happen next, as data, so that a window knows its legal drops. Notes are always welcome. */
export interface LegalEvents {
  readonly deal: boolean;
  readonly give: GiveDue | null;
  readonly receive: { readonly step: PassStep; readonly toCome: number } | null;
  readonly stop: Stop | null;
  readonly draw: boolean;
  /** Seats whose discard may be entered; own discards among them. */
  readonly discard: readonly Seat[];
  /** Seats whose call may be entered. */
  readonly call: readonly Seat[];
  readonly ownSwaps: readonly OwnSwap[];
  readonly end: boolean;
  /** What can still turn up, by the set's own count: the upper limit for any tile entered now. */
  readonly canCome: Tiles;
}

export function legalEvents(state: GameState): LegalEvents {
  const over = state.result !== null;
  const exchange = over || state.playing ? null : state.exchange;
  const seats = over ? [] : playableSeats(state);
  const full = handSize(state) === 14;
  const own = (seat: Seat): boolean => seat === state.seat;
  return {
    deal: !over && state.seat === null,
    give: exchange === null ? null : giveDue(exchange),
    receive: exchange === null ? null : receiveDue(exchange),
    stop: exchange === null ? null : stopDue(exchange),
    draw: seats.length > 0 && !full,
    discard: seats,
    call: seats.filter((seat) => !own(seat) || !full),
    ownSwaps: seats.length > 0 ? ownSwaps(state) : [],
    end: !over,
    canCome: canCome(state),
  };
}

function giveDue(exchange: ExchangeState): GiveDue | null {
  if (exchange.phase !== 'giving' || exchange.step === null) return null;
  const blindUpTo = blindLimit(exchange);
  const least = ownSizes(exchange.step).at(-1) as PassSize;
  return { step: exchange.step, least, most: PASS_SIZE, blindUpTo, givable: givable(exchange) };
}

function receiveDue({ phase, step, toCome }: ExchangeState): LegalEvents['receive'] {
  return phase === 'receiving' && step !== null ? { step, toCome } : null;
}

function playableSeats({ exchange }: GameState): readonly Seat[] {
  return exchange === null || exchange.phase === 'receiving' ? [] : SEATS;
}

function ownSwaps({ rack, exposures }: GameState): OwnSwap[] {
  return exposures
    .filter(({ kind, jokers }) => jokers > 0 && rack.count(kind) > 0)
    .map(({ seat, kind }) => ({ owner: seat, kind }));
}

function canCome(state: GameState): Tiles {
  const { exchange } = state;
  const receiving = exchange !== null && exchange.phase === 'receiving';
  const givenNow = exchange === null ? Tiles.none : outOfReach(exchange);
  const accounted = state.rack.plus(givenNow).plus(goneTiles(state));
  const left = (kind: Kind): number => Math.max(0, supplyOf(kind) - accounted.count(kind));
  return Tiles.fromCounts(KINDS.map((kind) => (receiving && !mayBePassed(kind) ? 0 : left(kind))));
}
