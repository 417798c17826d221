import * as v from 'valibot';
import { type Result, success } from '../../core/base/result.ts';
import { replaced } from '../../core/game/correct.ts';
import type { TimedEvent } from '../../core/game/events.ts';
import { withoutNames } from '../../core/game/evening.ts';
import { type OpenedGame, readEvent, readGameFile } from '../../core/game/file/read-game-file.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { applyEvent, replay } from '../../core/game/state.ts';
import { type KeptChange, keptChange, laidOut } from './checks.ts';
import { type Kept, parseObject } from './context.ts';

/**
 * The log of a running game, one JSON document a line: first the game as it stood when the log
 * was begun, then one line for each thing that happened since. The log alone is enough to make
 * the whole game, so that folding it into the game's file may be repeated after any crash.
 */
const LOG_KIND = 'windrow.game-log';
const LOG_VERSION = 1;

export type LogStep = AddStep | CorrectStep | DropStep | { readonly change: KeptChange };

/** An event added at the end, which is `place`, and how the rack then lies, if not as before. */
export interface AddStep {
  readonly add: TimedEvent;
  readonly place: number;
  readonly arrangement?: string | undefined;
}

/** An event in the place of the one that was there. */
interface CorrectStep {
  readonly correct: TimedEvent;
  readonly place: number;
  readonly arrangement?: string | undefined;
}

/** The last event dropped, which is at this place. */
export interface DropStep {
  readonly drop: number;
  readonly arrangement?: string | undefined;
}

/** A game, and the state after its events. */
export type KeptGame = Pick<OpenedGame, 'record' | 'state'>;

/** A log's first line. `base` is the checksum of the game's file from which it was begun. */
export function logStart(base: string, game: string): string {
  const record: unknown = JSON.parse(game);
  return `${JSON.stringify({ kind: LOG_KIND, schemaVersion: LOG_VERSION, base, record })}\n`;
}

export function logLine(step: LogStep): string {
  return `${JSON.stringify(step)}\n`;
}

interface LogText {
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
function readLog(text: string): LogText | undefined {
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

/** A game as its log has it, at the last step that makes sense. */
export interface LoggedGame {
  readonly game: KeptGame;
  readonly base: string;
  /** False when a step could not be read or is illegal: it and what follows it are left out. */
  readonly whole: boolean;
}

/** The game that a log's text holds; undefined when it is no log, or its game can't be read. */
export function gameOfLog(text: string): LoggedGame | undefined {
  const log = readLog(text);
  const start = log === undefined ? undefined : readGameFile(log.game);
  if (log === undefined || start?.ok !== true) return undefined;
  const { game, whole } = replaySteps(start.value, log.steps);
  return { game, base: log.base, whole: whole && log.whole };
}

/** The game after all steps that make sense; `whole` is false when one did not, and what follows it is left out. */
function replaySteps(start: KeptGame, steps: readonly Kept[]): { game: KeptGame; whole: boolean } {
  let game = start;
  for (const kept of steps) {
    const step = readStep(game.record, kept);
    const next = step === undefined ? undefined : afterStep(game, step);
    if (next?.ok !== true) return { game, whole: false };
    game = next.value;
  }
  return { game, whole: true };
}

/** A line of a log as the step that may come next; undefined when it is none. */
function readStep({ events }: GameRecord, kept: Kept): LogStep | undefined {
  if (v.is(keptChange, kept['change'])) return { change: kept['change'] };
  const { arrangement } = kept;
  if (!v.is(laidOut, arrangement)) return undefined;
  if (kept['drop'] === events.length - 1) return { drop: kept['drop'], arrangement };
  const place = events.findIndex((_, each) => each === kept['place']);
  if (place >= 0) {
    const corrected = readEvent(kept['correct']);
    return corrected.ok ? { correct: corrected.value, place, arrangement } : undefined;
  }
  if (kept['place'] !== events.length) return undefined;
  const event = readEvent(kept['add']);
  return event.ok ? { add: event.value, place: kept['place'], arrangement } : undefined;
}

/** The game after a step, or why the step is illegal. */
export function afterStep({ record, state }: KeptGame, step: LogStep): Result<KeptGame> {
  if ('change' in step) return success({ record: changed(record, step.change), state });
  const { events } = record;
  if ('drop' in step) {
    const left = events.slice(0, step.drop);
    return success({ record: withArrangement({ ...record, events: left }, step), state: replay(left).state });
  }
  if ('correct' in step) {
    const corrected = replaced(events, step.place, step.correct);
    if (!corrected.ok) return corrected;
    return success({
      record: withArrangement({ ...record, events: corrected.value.events }, step),
      state: corrected.value.state,
    });
  }
  const next = applyEvent(state, step.add);
  if (!next.ok) return next;
  return success({ record: withArrangement({ ...record, events: [...events, step.add] }, step), state: next.value });
}

function changed(record: GameRecord, change: KeptChange): GameRecord {
  const next = { ...record, ...change };
  return Object.keys(next.players ?? {}).length === 0 ? withoutNames(next) : next;
}

function withArrangement(record: GameRecord, { arrangement }: AddStep | CorrectStep | DropStep): GameRecord {
  return arrangement === undefined ? record : { ...record, arrangement };
}
