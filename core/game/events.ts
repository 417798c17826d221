import * as v from 'valibot';
import { count, fields, flag, oneOf, text, time, type ValueOf, within } from '../base/schema.ts';
import { PASS_STEPS, SEATS, STOPS } from '../exchange/steps.ts';

const seat = oneOf(SEATS);
const step = oneOf(PASS_STEPS);
/** In the text form of `core/tiles/text.ts`; what they mean is seen when the event is applied. */
const tiles = text(100);
const amount = within(0, 1_000_000, 'must be a number from 0 to 1,000,000');
/** The longest note kept, in letters. */
const LONGEST_NOTE = 10_000;

/**
 * A game is a list of events, oldest first; all else is computed from them (state.ts) and nothing
 * derived is stored. These are the fields of each type of event, from which the types and the
 * check of a file follow. Seats are the four winds; which one is the user's stands in `dealt`.
 */
export const EVENT_FIELDS = {
  /** The user's own deal: 14 tiles for East, 13 for the others. */
  dealt: fields({ seat, tiles }),
  /**
   * The user's own pass. `blind`: how many of the three are handed on unseen from those just coming
   * in (first left and second right only); `tiles` holds the others, and as many then come in as
   * `tiles` holds. In the courtesy, `tiles` are those really given, `asked` what the user asked for
   * and `offered` what the player across asked for.
   */
  gave: fields({
    step,
    tiles,
    blind: v.exactOptional(count),
    asked: v.exactOptional(count),
    offered: v.exactOptional(count),
  }),
  /** Tiles that came in at a step; may be entered one at a time, so several events make up a step. */
  received: fields({ step, tiles }),
  /** The second round or the courtesy does not happen, because somebody stopped it. `seat`: who, where that was logged. */
  stopped: fields({ before: oneOf(STOPS), seat: v.exactOptional(seat) }),
  /** The user drew a tile from the wall. */
  drew: fields({ tile: tiles }),
  /**
   * Somebody discarded a tile; the user's own discards leave the rack. With 13 tiles in hand, a tile
   * that is not in the rack counts as drawn and discarded at once.
   */
  discarded: fields({ seat, tile: tiles }),
  /**
   * Somebody called the discard `tile` and exposed `group` (the called tile among it). A call right
   * after the logged discard of that tile takes that tile; otherwise the discard was not logged.
   */
  called: fields({ seat, tile: tiles, group: tiles, from: v.exactOptional(seat) }),
  /** Somebody put `tile` into an exposure of `owner` and took its joker. */
  swapped: fields({ seat, owner: seat, tile: tiles }),
  /** The result. */
  ended: fields({
    result: oneOf(['won', 'wall', 'abandoned']),
    winner: v.exactOptional(seat),
    by: v.exactOptional(oneOf(['draw', 'discard'])),
    /** Who discarded the winning tile. */
    from: v.exactOptional(seat),
    lineId: v.exactOptional(text(100)),
    jokerless: v.exactOptional(flag),
    /** The winning tile, if it is known. */
    tile: v.exactOptional(tiles),
    /** The hand's points as announced at the table, when its line isn't known. */
    points: v.exactOptional(amount),
    /** The user's seat, in a game whose deal was not logged. */
    seat: v.exactOptional(seat),
  }),
  /** Free words; `about` is the place of the event that they speak of. */
  noted: fields({ text: text(LONGEST_NOTE), about: v.exactOptional(count) }),
};

/** The time at which an event was entered, or last corrected. */
export const EVENT_TIME = fields({ at: time });

export type GameEventType = keyof typeof EVENT_FIELDS;
type EventOf<Type extends GameEventType> = { readonly type: Type } & ValueOf<(typeof EVENT_FIELDS)[Type]>;

export type DealtEvent = EventOf<'dealt'>;
export type GaveEvent = EventOf<'gave'>;
export type ReceivedEvent = EventOf<'received'>;
export type StoppedEvent = EventOf<'stopped'>;
export type DrewEvent = EventOf<'drew'>;
export type DiscardedEvent = EventOf<'discarded'>;
export type CalledEvent = EventOf<'called'>;
export type SwappedEvent = EventOf<'swapped'>;
export type EndedEvent = EventOf<'ended'>;
export type NotedEvent = EventOf<'noted'>;

export type GameEvent = { [Type in GameEventType]: EventOf<Type> }[GameEventType];

/** An event with the time at which it was entered. */
export type TimedEvent = GameEvent & ValueOf<typeof EVENT_TIME>;
