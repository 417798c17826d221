import type { TimedEvent } from '../../core/game/events.ts';
import { withoutNames } from '../../core/game/names.ts';
import type { GameRecord } from '../../core/game/record.ts';
import type { GameChange } from './desk.ts';
import { type Kept, parseObject } from './preferences.ts';

/**
 * The log of a running game, one JSON document a line: first the game as it stood when the log
 * was begun, then one line for each thing that happened since. The log alone is enough to make
 * the whole game, so that folding it into the game's file may be repeated after any crash.
 */
export const LOG_KIND = 'windrow.game-log';
export const LOG_VERSION = 1;

export type LogStep =
  | { readonly add: TimedEvent; readonly place: number }
  | { readonly drop: number }
  | { readonly change: KeptChange };

/** A change as it is kept. */
export type KeptChange = GameChange & Pick<GameRecord, 'editedAt'>;

/** A log's first line. `base` is the checksum of the game's file from which it was begun. */
export function logStart(base: string, game: string): string {
  const record: unknown = JSON.parse(game);
  return `${JSON.stringify({ kind: LOG_KIND, schemaVersion: LOG_VERSION, base, record })}\n`;
}

export function logLine(step: LogStep): string {
  return `${JSON.stringify(step)}\n`;
}

export interface LogText {
  readonly base: string;
  /** The first line's game, as text of a game file, not checked yet. */
  readonly game: string;
  readonly steps: readonly Kept[];
  /** False when a line that is not the last could not be read: what follows it is lost. */
  readonly whole: boolean;
}

/**
 * Takes a log's text apart. A torn last line, which a crash leaves, is dropped. Undefined when the
 * first line is no start of a log.
 */
export function readLog(text: string): LogText | undefined {
  const lines = text.split('\n');
  lines.pop();
  const start = parseObject(lines[0] ?? '');
  if (start?.['kind'] !== LOG_KIND || start['schemaVersion'] !== LOG_VERSION) return undefined;
  const steps = lines.slice(1).map(parseObject);
  const bad = steps.indexOf(undefined);
  const good = bad < 0 ? steps : steps.slice(0, bad);
  return {
    base: String(start['base']),
    game: JSON.stringify(start['record'] ?? null),
    steps: good.filter((step) => step !== undefined),
    whole: bad < 0 || bad === steps.length - 1,
  };
}

/** The game after a step; the step is known to be legal. */
export function afterStep(record: GameRecord, step: LogStep): GameRecord {
  if ('add' in step) return { ...record, events: [...record.events.slice(0, step.place), step.add] };
  if ('drop' in step) return { ...record, events: record.events.slice(0, step.drop) };
  const changed = { ...record, ...step.change };
  return Object.keys(changed.players ?? {}).length === 0 ? withoutNames(changed) : changed;
}
