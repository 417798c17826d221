import { join } from 'node:path';
import { failure, type Result, success } from '../../core/base/result.ts';
import type { TimedEvent } from '../../core/game/events.ts';
import { readEvent } from '../../core/game/file/read-event.ts';
import { openGame, readGameFile } from '../../core/game/file/read-game-file.ts';
import { writeGameFile } from '../../core/game/file/write-game-file.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { applyEvent, replay } from '../../core/game/state.ts';
import { writeDurably } from '../files/durable.ts';
import { ifThere } from '../files/files.ts';
import { orTrouble } from '../files/trouble.ts';
import { type DeskContext, keepCopy, readExactText, setAside } from './context.ts';
import { filesIn } from './leftovers.ts';
import { gameIdOf } from './places.ts';

/** A game, and the text of its file. */
export interface LoadedGame {
  readonly record: GameRecord;
  readonly text: string;
}

/** The files of games that are there. */
export interface FoundGames {
  /** By their ids. */
  readonly paths: Map<string, string>;
  /** Ids in the months in which files came, went or were replaced after the moment asked about. */
  readonly changed: ReadonlySet<string>;
}

/**
 * Every game's file, from `games/YYYY/MM`. `since` is in milliseconds. A file whose name another
 * program made up (a copy that a sync program put beside a game) is told of and left alone.
 */
export async function findGames(context: DeskContext, since: number): Promise<FoundGames> {
  const paths = new Map<string, string>();
  const changed = new Set<string>();
  for (const year of await foldersIn(context, context.places.games)) {
    for (const month of await foldersIn(context, year)) {
      const isChanged = ((await ifThere(context.files.info(month)))?.changedAt ?? 0) > since;
      for (const name of await filesIn(context, month)) {
        const id = gameIdOf(name);
        if (id === undefined) tellOfCopy(context, name);
        else paths.set(id, join(month, name));
        if (id !== undefined && isChanged) changed.add(id);
      }
    }
  }
  return { paths, changed };
}

function tellOfCopy({ tell }: DeskContext, name: string): void {
  if (!name.endsWith('.json')) return;
  tell(`Another program put "${name}" among your games. To see what is in it, bring it in from the Journal.`);
}

async function foldersIn({ files }: DeskContext, folder: string): Promise<string[]> {
  const entries = (await ifThere(files.list(folder))) ?? [];
  return entries.filter((entry) => entry.folder).map(({ name }) => join(folder, name));
}

/**
 * Reads a game's file. A damaged one is set aside and told of; what could be read of it takes its
 * place. Newer and foreign files are left untouched.
 */
export async function loadGame(context: DeskContext, id: string, path: string): Promise<Result<LoadedGame>> {
  const file = await orTrouble('read', `the game ${id}`, async () => success(await readExactText(context, path)));
  if (!file.ok) return file;
  if (file.value === undefined) return failure('not-found', 'This game is no longer there: choose another one.');
  const { text, exact } = file.value;
  const read = readGameFile(text);
  if (!read.ok) return isDamaged(text, read.problem.code) ? await setDamagedAside(context, id, path) : read;
  const { record, damage } = read.value;
  const named = record.id === id ? record : { ...record, id };
  if (damage === null && exact) return success({ record: named, text });
  const aside = await keepCopy(context, path);
  const words = damage?.message ?? `Some letters of the game ${id} could not be read.`;
  context.tell(`${words} The damaged file is kept as ${aside}.`);
  const good = writeGameFile(named);
  await writeDurably(context, path, good);
  return success({ record: named, text: good });
}

/** Codes of files that were ours once; a file of blanks or zeros, which a crash may leave, was too. */
const DAMAGED = ['unreadable', 'bad-field', 'too-deep'];

function isDamaged(text: string, code: string): boolean {
  return DAMAGED.includes(code) || /^[\0\s]*$/.test(text);
}

async function setDamagedAside(context: DeskContext, id: string, path: string): Promise<Result<never>> {
  const aside = await setAside(context, path);
  const sentence = `The game ${id} is damaged and could not be read. Its file is kept as ${aside}.`;
  context.tell(sentence);
  return failure('damaged', sentence);
}

/** A game from the window, checked whole: every field and every event. */
export function checkGame(record: object): Result<GameRecord> {
  const opened = openGame({ ...record });
  if (!opened.ok) return opened;
  const { damage, record: checked } = opened.value;
  return damage === null ? success(checked) : { ok: false, problem: damage };
}

/** An event from outside, when it may come next in the game; otherwise why not. */
export function checkEvent({ events }: GameRecord, event: unknown): Result<TimedEvent> {
  const read = readEvent(event);
  if (!read.ok) return read;
  const next = applyEvent(replay(events).state, read.value);
  return next.ok ? read : next;
}
