import { check } from '../../base/schema.ts';
import { type Fields, isFields, type JsonLimits, type JsonTrouble, nestingTrouble, readJson } from '../../base/json.ts';
import { failure, type Problem, type Result, success } from '../../base/result.ts';
import { CARD_FILE_LIMITS } from '../../card/read-document.ts';
import { EVENT_FIELDS, EVENT_TIME, type GameEventType, type TimedEvent } from '../events.ts';
import { type GameState, NEW_GAME } from '../game-state.ts';
import { GAME_FILE_KIND, GAME_SCHEMA_VERSION, type GameRecord } from '../record.ts';
import { applyEvent } from '../state.ts';
import { GAME_MIGRATIONS, migrate } from './migrate.ts';
import { GAME_RECORD } from './record-fields.ts';

/** Why a game file can't be opened. It is never changed then. */
type GameFileCode = 'too-large' | 'unreadable' | 'too-deep' | 'foreign' | 'newer-version' | 'bad-field';
export type GameFileProblem = Problem<GameFileCode>;

/** Beyond that a text is not looked at: a real game has some 20,000 letters. Its card nests one deeper than in a file of its own. */
export const GAME_FILE_LIMITS = {
  letters: 2 * CARD_FILE_LIMITS.letters,
  depth: CARD_FILE_LIMITS.depth + 1,
  forbidden: '__proto__',
} as const satisfies JsonLimits;

/** A game as opened. */
export interface OpenedGame {
  /** With the events up to the first bad one. */
  readonly record: GameRecord;
  readonly state: GameState;
  /** Null when the file is whole. Otherwise what is wrong with event `at`; the file must then not be written over. */
  readonly damage: Problem | null;
}

/** Reads a game file. Never throws, never guesses: a file is opened, opened in part with a reason, or refused. */
export function readGameFile(text: string): Result<OpenedGame, GameFileProblem> {
  const fields = readGameFields(text);
  if (!fields.ok) return fields;
  const refused = kindRefused(fields.value);
  if (refused) return refused;
  return openGame(migrate(fields.value, GAME_MIGRATIONS, GAME_SCHEMA_VERSION));
}

/** The same for a document already taken apart, from another process for instance. */
export function openGame(document: Fields): Result<OpenedGame, GameFileProblem> {
  const refused = kindRefused(document);
  if (refused) return refused;
  const record = check(GAME_RECORD, document);
  if (!record.ok) return failure('bad-field', `This game file can't be read: ${record.problem}.`);
  const { events, state, damage } = readEvents(record.value.events);
  return success({ record: { ...record.value, events }, state, damage });
}

/** An event of unknown make, from a file or another process, as an event. Fields not known are kept. */
export function readEvent(value: unknown): Result<TimedEvent, GameFileProblem> {
  if (!isFields(value)) return failure('bad-field', 'this is not an event.');
  const type = value['type'];
  if (!isEventType(type)) {
    return failure('bad-field', `"type" must be one of ${Object.keys(EVENT_FIELDS).join(', ')}.`);
  }
  const fields = check(EVENT_FIELDS[type], value);
  const time = fields.ok ? check(EVENT_TIME, value) : fields;
  // Its type and every field of that type have been checked.
  return time.ok ? success(value as unknown as TimedEvent) : failure('bad-field', `${time.problem}.`);
}

function isEventType(value: unknown): value is GameEventType {
  return typeof value === 'string' && Object.hasOwn(EVENT_FIELDS, value);
}

/** Reads a text as a JSON object of bounded size and depth, without a field that could reach into the language. */
export function readGameFields(text: string, limits: JsonLimits = GAME_FILE_LIMITS): Result<Fields, GameFileProblem> {
  const read = readJson(text, limits);
  return read.ok ? read : unreadable(text, read.problem);
}

/** Why a value can't be a game's file, by its nesting and the names of its fields alone: look before it is written. */
export function refusedAsGame(value: unknown): Result<never, GameFileProblem> | undefined {
  const trouble = nestingTrouble(value, GAME_FILE_LIMITS.depth, GAME_FILE_LIMITS.forbidden);
  return trouble === undefined ? undefined : unreadable('', trouble);
}

function unreadable(text: string, trouble: JsonTrouble): Result<never, GameFileProblem> {
  switch (trouble) {
    case 'too-large':
      return failure('too-large', 'This file is far larger than any game: it was left alone.');
    case 'too-deep':
      return failure('too-deep', 'This file is nested deeper than any game: it was left alone.');
    case 'forbidden-field':
      return failure('foreign', 'This file has a field that no game has (__proto__): it was left alone.');
    case 'no-object':
    case 'damaged':
      return undecipherable(text);
  }
}

function undecipherable(text: string): Result<never, GameFileProblem> {
  if (text.trim() === '') return failure('unreadable', 'This file is empty: choose another one, or a backup of it.');
  if (!text.trimStart().startsWith('{')) {
    return failure('foreign', 'This is not a game file of Windrow: choose another one.');
  }
  return failure('unreadable', 'This file is cut short or damaged: choose a backup of it.', text.length);
}

function kindRefused(fields: Fields): Result<never, GameFileProblem> | undefined {
  if (fields['kind'] !== GAME_FILE_KIND) {
    return failure('foreign', 'This is not a game file of Windrow: choose another one.');
  }
  const version = fields['schemaVersion'];
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return failure('foreign', 'This game file does not say which version it is: choose a backup of it.');
  }
  if (version <= GAME_SCHEMA_VERSION) return undefined;
  return failure('newer-version', 'This game was written by a newer Windrow: install the newest one to open it.');
}

function readEvents(listed: readonly unknown[]): { events: TimedEvent[]; state: GameState; damage: Problem | null } {
  const events: TimedEvent[] = [];
  let state = NEW_GAME;
  for (const [place, value] of listed.entries()) {
    const event = readEvent(value);
    const next = event.ok ? applyEvent(state, event.value) : event;
    if (!event.ok) return { events, state, damage: damaged(event.problem, place) };
    if (!next.ok) return { events, state, damage: damaged(next.problem, place) };
    events.push(event.value);
    state = next.value;
  }
  return { events, state, damage: null };
}

function damaged({ code, message }: Problem, place: number): Problem {
  const opened = place === 0 ? 'Nothing of this game could be opened' : `This game is open up to event ${place}`;
  return {
    code,
    message: `${opened}. Event ${place + 1} is not possible: ${message} The file is unchanged.`,
    at: place,
  };
}
