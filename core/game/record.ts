import type { ValueOf } from '../base/schema.ts';
import type { TimedEvent } from './events.ts';
import type { GAME_RECORD, PLAYERS } from './file/record-fields.ts';

/** One game as kept on disk; its fields stand in `file/record-fields.ts`. */
export type GameRecord = ValueOf<typeof GAME_RECORD>;

/** Names of players by seat. */
export type Players = ValueOf<typeof PLAYERS>;

/** When an event was last entered or corrected; '' when there is none. */
export function lastEnteredAt(events: readonly TimedEvent[]): string {
  return events.reduce((last, { at }) => (isLater(at, last) ? at : last), '');
}

/** Whether a UTC time is later than another; '' is earlier than all. */
export function isLater(time: string, than: string): boolean {
  return time.length === than.length ? time > than : instant(time) > instant(than);
}

/** A UTC time in a form in which text order is time order: fractions of a second filled up. */
export function instant(time: string): string {
  const [seconds = '', fraction = ''] = time.replace('Z', '').split('.');
  return `${seconds}.${fraction.padEnd(9, '0')}`;
}

export const GAME_FILE_KIND: GameRecord['kind'] = 'windrow.game';
export const GAME_SCHEMA_VERSION: GameRecord['schemaVersion'] = 1;
