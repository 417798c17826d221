import type { Seat } from '../exchange/steps.ts';
import type { TimedEvent } from './events.ts';
import type { PointRules } from './point-rules.ts';

export const GAME_FILE_KIND = 'windrow.game';
export const GAME_SCHEMA_VERSION = 1;

/**
 * One game as kept on disk, one file each. The card is kept with the game as it was, so that the
 * journal stays true when a card is edited later. Fields that this version does not know are kept.
 */
export interface GameRecord {
  readonly kind: typeof GAME_FILE_KIND;
  readonly schemaVersion: typeof GAME_SCHEMA_VERSION;
  readonly appVersion: string;
  /** Letters, digits and dashes; unique; sorts by time of creation. */
  readonly id: string;
  /** UTC, ISO 8601 with Z. */
  readonly startedAt: string;
  /** UTC, ISO 8601 with Z: the last change by a person; when left out, the last event's time counts. */
  readonly editedAt?: string;
  /** The IANA time zone in which it was played. */
  readonly zone: string;
  readonly place: string;
  readonly tags: readonly string[];
  /** True for invented games of the demonstration. */
  readonly demo: boolean;
  /**
   * How the user laid the rack out: tiles in order, `|` for a gap, `/` before the second tier, `>`
   * before the tiles set aside to be given. Before the deal is complete: the tiles entered so far.
   */
  readonly arrangement?: string;
  /** The card file's content (a `windrow.card` document), whole. */
  readonly card: unknown;
  readonly events: readonly TimedEvent[];
  /** The id of the game of which this is an older version, kept by a merge. */
  readonly copyOf?: string;
  /** Games with the same word here belong to one evening, in order of `startedAt`. */
  readonly evening?: string;
  /** Names of the players by seat, if somebody cared to write them. */
  readonly players?: Readonly<Partial<Record<Seat, string>>>;
  /** The table's rules of payment in this game; the default ones when left out. */
  readonly payment?: PointRules;
}
