import * as v from 'valibot';
import { isFields } from '../../base/json.ts';
import { fields, flag, id, list, oneOf, text, time, within } from '../../base/schema.ts';
import { TABLE_KINDS } from '../../table/kinds.ts';
import { ADVICE_TIMES } from '../advice.ts';
import type { TimedEvent } from '../events.ts';

/** More events than any game can have. */
const MOST_EVENTS = 5_000;
const MOST_TAGS = 50;
const TAGS = `must be a list of at most ${MOST_TAGS} short words`;

const amount = within(0, 1_000_000, 'must be a number from 0 to 1,000,000');

/**
 * How a table pays, every rule of it a setting. The default is `DEFAULT_POINT_RULES`: common
 * practice, from memory, no source; tables vary.
 */
export const POINT_RULES = fields({
  /** `hand`: the winning hand's printed points; `fixed`: the same stake for every win; `none`: no payment. */
  scheme: oneOf(['hand', 'fixed', 'none']),
  /** The stake of a win in the `fixed` scheme. */
  stake: amount,
  /** What the discarder of the winning tile pays, in multiples of the hand's points. */
  discarderPays: amount,
  /** What the two others pay when the win is by discard. */
  othersPay: amount,
  /** What each of the three pays when the win is by own draw. */
  drawPays: amount,
  /** What a hand without jokers multiplies; 1 for no bonus. */
  jokerlessTimes: amount,
  /** True if a hand of only singles and pairs, which can hold no joker, earns that bonus too. */
  jokerlessAlsoPairs: flag,
  /** The most that one player pays for one game; null for no limit. */
  limit: v.nullable(amount),
});

const playerName = v.exactOptional(text(60));
/** Names of the players by seat, as far as somebody wrote them. */
export const PLAYERS = fields({ East: playerName, South: playerName, West: playerName, North: playerName });

function strayIn(names: object): string | undefined {
  return Object.keys(names).find((name) => !Object.hasOwn(PLAYERS.entries, name));
}

/** Of the fields of a game, those that a person may change while the events stay as they are. */
export const CHANGEABLE = {
  place: text(200),
  tags: list(text(60, TAGS), MOST_TAGS, TAGS),
  /**
   * How the user laid the rack out: tiles in order, `|` for a gap, `/` before the second tier, `>`
   * before the tiles put out to be given. Before the deal is complete: the tiles entered so far.
   */
  arrangement: v.exactOptional(text(200)),
  /** Games with the same word here belong to one evening, in order of `startedAt`. */
  evening: v.exactOptional(text(64)),
  players: v.exactOptional(
    v.pipe(
      v.custom<object>(isFields, 'must name players by seat'),
      v.check(
        (names) => strayIn(names) === undefined,
        ({ input }) => `has "${strayIn(input)}", which is no seat`,
      ),
      PLAYERS,
    ),
  ),
  /** The table's rules of payment in this game; the default ones when left out. */
  payment: v.exactOptional(v.pipe(v.custom<object>(isFields, 'must be rules of payment'), POINT_RULES)),
  /** Whether the house allows a joker to be swapped for between a call and the discard after it; it does when left out (LG-3). */
  swapAfterCall: v.exactOptional(flag),
  /** The kind of table that it was played at, which its chances hold for; the usual one when left out. */
  table: v.exactOptional(oneOf(TABLE_KINDS)),
  /** The most aid that the game was played with; not known when left out. */
  advice: v.exactOptional(oneOf(ADVICE_TIMES)),
  /** When advice is shown in this game from now on; as `advice` says when left out. */
  adviceNow: v.exactOptional(oneOf(ADVICE_TIMES)),
};

/**
 * One game as kept on disk, one file each. The card is kept with the game as it was, so that the
 * journal stays true when a card is edited later. Fields that this version does not know are kept.
 */
export const GAME_RECORD = fields({
  kind: v.literal('windrow.game'),
  schemaVersion: v.literal(1),
  appVersion: text(40),
  /** Unique; sorts by time of creation. */
  id,
  startedAt: time,
  /** The last change by a person; when left out, the last event's time counts. */
  editedAt: v.exactOptional(time),
  /** The IANA time zone in which it was played. */
  zone: text(60),
  ...CHANGEABLE,
  /** True for invented games of the demonstration. */
  demo: flag,
  /** The card file's content (a `windrow.card` document), whole. */
  card: v.custom<unknown>(isFields, 'must be a card'),
  /** Each is read by itself, so that a damaged one leaves those before it. */
  events: v.custom<readonly TimedEvent[]>(
    (value) => Array.isArray(value) && value.length <= MOST_EVENTS,
    `must be a list of at most ${MOST_EVENTS} events`,
  ),
  /** The id of the game of which this is an older version, kept by a merge. */
  copyOf: v.exactOptional(id),
});
