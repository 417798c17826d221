import type { PassStep, Seat } from '../exchange/steps.ts';

/**
 * A game is a list of events, oldest first; all else is computed from them (state.ts) and nothing
 * derived is stored. Tiles are in the text form of `core/tiles/text.ts`. Seats are the four
 * winds; `seat` of the user is told in `dealt`.
 */
export type GameEvent =
  /** The user's own deal: 14 tiles for East, 13 for the others. */
  | { readonly type: 'dealt'; readonly seat: Seat; readonly tiles: string }
  /**
   * The user's own pass. `blind`: so many of the three are handed on unseen from those just coming
   * in (first left and second right only); `tiles` holds the others. In the courtesy, `tiles` are
   * those really given, `asked` what the user asked for and `offered` what the player across asked for.
   */
  | { readonly type: 'gave'; readonly step: PassStep; readonly tiles: string; readonly blind?: number; readonly asked?: number; readonly offered?: number }
  /** Tiles that came in at a step; may be entered one at a time, so several events make up a step. */
  | { readonly type: 'received'; readonly step: PassStep; readonly tiles: string }
  /** The second round or the courtesy does not happen, by anybody's wish. */
  | { readonly type: 'stopped'; readonly before: 'left2' | 'courtesy' }
  /** The user drew a tile from the wall. */
  | { readonly type: 'drew'; readonly tile: string }
  /** Somebody discarded a tile; the user's own discards leave the rack. */
  | { readonly type: 'discarded'; readonly seat: Seat; readonly tile: string }
  /** Somebody called the discard `tile` and exposed the group `group` (the called tile among it). */
  | { readonly type: 'called'; readonly seat: Seat; readonly tile: string; readonly group: string; readonly from?: Seat }
  /** Somebody put `tile` into an exposure of `owner` and took its joker. */
  | { readonly type: 'swapped'; readonly seat: Seat; readonly owner: Seat; readonly tile: string }
  /** The result. */
  | {
      readonly type: 'ended';
      readonly result: 'won' | 'wall' | 'abandoned';
      readonly winner?: Seat;
      readonly by?: 'draw' | 'discard';
      readonly from?: Seat;
      readonly lineId?: string;
      readonly jokerless?: boolean;
    }
  /** Free words; `about` is the place of the event that they speak of. */
  | { readonly type: 'noted'; readonly text: string; readonly about?: number };

/** An event with the time at which it was entered (UTC, ISO 8601 with Z). */
export type TimedEvent = GameEvent & { readonly at: string };
