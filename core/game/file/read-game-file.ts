import { type Problem, type Result, success } from '../../base/result.ts';
import { NEW_GAME, type GameState } from '../game-state.ts';
import type { TimedEvent } from '../events.ts';
import { GAME_FILE_KIND, GAME_SCHEMA_VERSION, type GameRecord } from '../record.ts';
import { applyEvent } from '../state.ts';
import { RECORD_CHECKS } from './check-record.ts';
import { firstTrouble } from './fields.ts';
import { GAME_MIGRATIONS, migrate } from './migrate.ts';
import { type Fields, readFields } from './plain-json.ts';
import { type GameFileProblem, refuseFile } from './problems.ts';
import { readEvent } from './read-event.ts';

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
  const fields = readFields(text);
  if (!fields.ok) return fields;
  const refused = kindRefused(fields.value);
  if (refused) return refused;
  return openGame(migrate(fields.value, GAME_MIGRATIONS, GAME_SCHEMA_VERSION));
}

/** The same for a document already taken apart, from another process for instance. */
export function openGame(document: Fields): Result<OpenedGame, GameFileProblem> {
  const refused = kindRefused(document);
  if (refused) return refused;
  const trouble = firstTrouble(document, RECORD_CHECKS);
  if (trouble !== null) return refuseFile('bad-field', `This game file can't be read: ${trouble}.`);
  const { events, state, damage } = readEvents(document['events'] as readonly unknown[]);
  return success({ record: { ...asRecord(document), events }, state, damage });
}

function kindRefused(fields: Fields): Result<never, GameFileProblem> | undefined {
  if (fields['kind'] !== GAME_FILE_KIND) {
    return refuseFile('foreign', 'This is not a game file of Windrow: choose another one.');
  }
  const version = fields['schemaVersion'];
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return refuseFile('foreign', 'This game file does not say which version it is: choose a backup of it.');
  }
  if (version <= GAME_SCHEMA_VERSION) return undefined;
  return refuseFile('newer-version', 'This game was written by a newer Windrow: install the newest one to open it.');
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
  return { code, message: `${opened}. Event ${place + 1} can't be: ${message} The file is unchanged.`, at: place };
}

/** Every field has been checked just before; events are replaced by those read. */
function asRecord(document: Fields): GameRecord {
  return document as unknown as GameRecord;
}
