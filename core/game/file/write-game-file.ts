import type { GameRecord } from '../record.ts';
import { sortedFields } from '../../base/json.ts';

/** The text of a game file: fields sorted, two blanks a level, LF, a last LF. Equal games give equal bytes. */
export function writeGameFile(record: GameRecord): string {
  return `${JSON.stringify(sortedFields(record), null, 2)}\n`;
}

/** One event as a single line without line ends, for a log that grows event by event. */
export function writeLine(value: object): string {
  return JSON.stringify(sortedFields(value));
}
