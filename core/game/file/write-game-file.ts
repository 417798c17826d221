import type { GameRecord } from '../record.ts';
import { isFields } from './plain-json.ts';

/** The text of a game file: fields sorted, two blanks a level, LF, a last LF. Equal games give equal bytes. */
export function writeGameFile(record: GameRecord): string {
  return `${JSON.stringify(sorted(record), null, 2)}\n`;
}

/** One event as a single line without line ends, for a log that grows event by event. */
export function writeLine(value: object): string {
  return JSON.stringify(sorted(value));
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (!isFields(value)) return value;
  const names = Object.keys(value).sort();
  return Object.fromEntries(names.map((name) => [name, sorted(value[name])]));
}
