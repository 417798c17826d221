import type { Stop } from '../exchange/state.ts';
import type { PassStep, Seat } from '../exchange/steps.ts';

/**
 * A game is a list of events, oldest first; all else is computed from them (state.ts) and nothing
 * derived is stored. Tiles are in the text form of `core/tiles/text.ts`. Seats are the four
 * winds; `seat` of the user is told in `dealt`.
 */
export type GameEvent =
  | DealtEvent
  | GaveEvent
  | ReceivedEvent
  | StoppedEvent
  | DrewEvent
  | DiscardedEvent
  | CalledEvent
  | SwappedEvent
  | EndedEvent
  | NotedEvent;

/** The user's own deal: 14 tiles for East, 13 for the others. */
export interface DealtEvent {
  readonly type: 'dealt';
  readonly seat: Seat;
  readonly tiles: string;
}

/**
 * The user's own pass. `blind`: so many of the three are handed on unseen from those just coming
 * in (first left and second right only); `tiles` holds the others, and as many then come in as
 * `tiles` holds. In the courtesy, `tiles` are those really given, `asked` what the user asked for
 * and `offered` what the player across asked for.
 */
export interface GaveEvent {
  readonly type: 'gave';
  readonly step: PassStep;
  readonly tiles: string;
  readonly blind?: number;
  readonly asked?: number;
  readonly offered?: number;
}

/** Tiles that came in at a step; may be entered one at a time, so several events make up a step. */
export interface ReceivedEvent {
  readonly type: 'received';
  readonly step: PassStep;
  readonly tiles: string;
}

/** The second round or the courtesy does not happen, by anybody's wish. `seat`: whose, where that was logged. */
export interface StoppedEvent {
  readonly type: 'stopped';
  readonly before: Stop;
  readonly seat?: Seat;
}

/** The user drew a tile from the wall. */
export interface DrewEvent {
  readonly type: 'drew';
  readonly tile: string;
}

/**
 * Somebody discarded a tile; the user's own discards leave the rack. With 13 tiles in hand, a tile
 * that is not in the rack counts as drawn and discarded at once.
 */
export interface DiscardedEvent {
  readonly type: 'discarded';
  readonly seat: Seat;
  readonly tile: string;
}

/**
 * Somebody called the discard `tile` and exposed `group` (the called tile among it). A call right
 * after the logged discard of that tile takes that tile; otherwise the discard was not logged.
 */
export interface CalledEvent {
  readonly type: 'called';
  readonly seat: Seat;
  readonly tile: string;
  readonly group: string;
  readonly from?: Seat;
}

/** Somebody put `tile` into an exposure of `owner` and took its joker. */
export interface SwappedEvent {
  readonly type: 'swapped';
  readonly seat: Seat;
  readonly owner: Seat;
  readonly tile: string;
}

/** The result. */
export interface EndedEvent {
  readonly type: 'ended';
  readonly result: 'won' | 'wall' | 'abandoned';
  readonly winner?: Seat;
  readonly by?: 'draw' | 'discard';
  /** Who discarded the winning tile. */
  readonly from?: Seat;
  readonly lineId?: string;
  readonly jokerless?: boolean;
  /** The winning tile, if it is known. */
  readonly tile?: string;
  /** The hand's points as told at the table, when its line isn't known. */
  readonly points?: number;
  /** The user's seat, in a game whose deal was not logged. */
  readonly seat?: Seat;
}

/** Free words; `about` is the place of the event that they speak of. */
export interface NotedEvent {
  readonly type: 'noted';
  readonly text: string;
  readonly about?: number;
}

export type GameEventType = GameEvent['type'];

/** An event with the time at which it was entered (UTC, ISO 8601 with Z). */
export type TimedEvent = GameEvent & { readonly at: string };
