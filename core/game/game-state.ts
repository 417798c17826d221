import type { ExposedGroup } from '../card/way.ts';
import type { ExchangeState } from '../exchange/state.ts';
import type { Seat } from '../exchange/steps.ts';
import type { Kind } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import type { EndedEvent, NotedEvent } from './events.ts';

/** A tile thrown on the table. */
export interface Discard {
  readonly seat: Seat;
  readonly kind: Kind;
}

/** A group that a seat has laid open. */
export interface Exposure extends ExposedGroup {
  readonly seat: Seat;
}

/** Everything that follows from a game's events. */
export interface GameState {
  /** Events applied so far. */
  readonly length: number;
  /** The user's seat; null before the deal. */
  readonly seat: Seat | null;
  /** The user's concealed tiles. */
  readonly rack: Tiles;
  /** The same tiles in the order in which they came. */
  readonly arrival: readonly Kind[];
  /** The exchange as logged; null before the deal. Its own `rack` is the rack at its end. */
  readonly exchange: ExchangeState | null;
  /** True once a draw, a discard, a call or a swap is logged: the passes are then behind. */
  readonly playing: boolean;
  /** Discards that lie on the table, oldest first, called ones not among them. */
  readonly discards: readonly Discard[];
  /** Groups laid open, oldest first, each with the jokers that it still holds. */
  readonly exposures: readonly Exposure[];
  /** Jokers that other players took out of exposures: in their racks, so not in the wall. */
  readonly jokersTaken: number;
  /** Who has called and not discarded since; null for nobody. */
  readonly caller: Seat | null;
  /** The last thing that happened at the table, for calls. */
  readonly lastDiscard: Discard | null;
  readonly result: EndedEvent | null;
  readonly notes: readonly NotedEvent[];
}

export const NEW_GAME: GameState = {
  length: 0,
  seat: null,
  rack: Tiles.none,
  arrival: [],
  exchange: null,
  playing: false,
  discards: [],
  exposures: [],
  jokersTaken: 0,
  caller: null,
  lastDiscard: null,
  result: null,
  notes: [],
};
