import { join } from 'node:path';
import { failure, type Result, success } from '../../core/base/result.ts';
import { GAME_FILE_LIMITS, readGameFile, refusedAsGame } from '../../core/game/file/read-game-file.ts';
import { writeGameFile } from '../../core/game/file/write-game-file.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { ifThere } from '../files/files.ts';
import { orTrouble } from '../files/trouble.ts';
import { type DeskContext, filesIn, mend, readExactText, setAside } from './context.ts';
import type { KeptGame } from './log.ts';
import { gameIdOf } from './places.ts';

/** A game, and the text of its file. */
export interface LoadedGame extends KeptGame {
  readonly text: string;
}

/** The files of games that are there. */
export interface FoundGames {
  /** By their ids. */
  readonly paths: Map<string, string>;
  /** Further files of games that have one already, in another month. */
  readonly seconds: SecondFile[];
  /** Ids in the months in which files came, went or were replaced after the moment asked about. */
  readonly changed: ReadonlySet<string>;
}

/** A further file of a game. */
export interface SecondFile {
  readonly id: string;
  readonly path: string;
}

/**
 * Every game's file, from `games/YYYY/MM`; of a game with several, the one of the earliest month. `since` is in milliseconds. A file whose name another
 * program made up (a copy that a sync program put beside a game) is reported and left alone.
 */
export async function findGames(context: DeskContext, since: number): Promise<FoundGames> {
  const paths = new Map<string, string>();
  const seconds: SecondFile[] = [];
  const changed = new Set<string>();
  for (const year of await foldersIn(context, context.places.games)) {
    for (const month of await foldersIn(context, year)) {
      const isChanged = ((await ifThere(context.files.info(month)))?.changedAt ?? 0) > since;
      for (const name of await filesIn(context, month)) {
        const id = gameIdOf(name);
        if (id === undefined) notifyOfCopy(context, name);
        else if (paths.has(id)) seconds.push({ id, path: join(month, name) });
        else paths.set(id, join(month, name));
        if (id !== undefined && isChanged) changed.add(id);
      }
    }
  }
  return { paths, seconds, changed };
}

function notifyOfCopy({ notify }: DeskContext, name: string): void {
  if (!name.endsWith('.json')) return;
  notify(`Another program put "${name}" among your games. To see what is in it, bring it in from the Journal.`);
}

async function foldersIn({ files }: DeskContext, folder: string): Promise<string[]> {
  const entries = (await ifThere(files.list(folder))) ?? [];
  return entries.flatMap((entry) => (entry.folder ? [join(folder, entry.name)] : [])).toSorted();
}

/**
 * Reads a game's file. A damaged one is set aside and reported; what could be read of it takes its
 * place. Newer and foreign files are left untouched.
 */
export async function loadGame(context: DeskContext, id: string, path: string): Promise<Result<LoadedGame>> {
  const file = await orTrouble('read', `the game ${id}`, async () => success(await readExactText(context, path)));
  if (!file.ok) return file;
  if (file.value === undefined) return failure('not-found', 'This game is no longer there: choose another one.');
  const { text, exact } = file.value;
  const read = readGameFile(text);
  if (!read.ok) return isDamaged(text, read.problem.code) ? await setDamagedAside(context, id, path) : read;
  const { record, state, damage } = read.value;
  const named = record.id === id ? record : { ...record, id };
  if (damage === null && exact) return success({ record: named, state, text });
  const words = damage?.message ?? `Some letters of the game ${id} could not be read.`;
  const good = writeGameFile(named);
  const copy = await mend(context, path, good);
  context.notify(`${words} The damaged file is kept as ${copy}.`);
  return success({ record: named, state, text: good });
}

/** Codes of files that were ours once; a file of blanks or zeros, which a crash may leave, was too. */
const DAMAGED = ['unreadable', 'bad-field', 'too-deep'];

function isDamaged(text: string, code: string): boolean {
  return DAMAGED.includes(code) || /^[\0\s]*$/.test(text);
}

async function setDamagedAside(context: DeskContext, id: string, path: string): Promise<Result<never>> {
  const copy = await setAside(context, path);
  const sentence = `The game ${id} is damaged and could not be read. Its file is kept as ${copy}.`;
  context.notify(sentence);
  return failure('damaged', sentence);
}

/** A game from the window, checked whole by reading back what would be written: every field and every event. */
export function checkGame(record: GameRecord): Result<KeptGame> {
  // What nests without end could not even be written.
  const refused = refusedAsGame(record);
  if (refused) return refused;
  const opened = readGameFile(writeGameFile(record));
  if (!opened.ok) return opened;
  const { damage } = opened.value;
  return damage === null ? opened : { ok: false, problem: damage };
}

/** Letters of a game's file; not counted where they are at most so many, and few enough. */
export function lettersOf(record: GameRecord, atMost: number): number {
  return atMost <= GAME_FILE_LIMITS.letters ? atMost : writeGameFile(record).length;
}

/** Why a game can't grow any more: it could not be read again; null when it can. */
export function tooLarge(letters: number): Result<never> | null {
  if (letters <= GAME_FILE_LIMITS.letters) return null;
  return failure('too-large', 'This game is as large as Windrow can read again. Start a new game for what comes.');
}

export function hasNames({ players }: GameRecord): boolean {
  return Object.keys(players ?? {}).length > 0;
}
