import { isUtf8 } from 'node:buffer';
import { basename, dirname, join } from 'node:path';
import { type Fields, readJson } from '../../core/base/json.ts';
import {
  removeQuietly,
  renamePatiently,
  type Storage,
  UNFINISHED,
  writeDurably,
  writeWhole,
} from '../files/durable.ts';
import { errorCode, ifThere } from '../files/files.ts';
import { freeName, type Places, stampOf } from './places.ts';

/** What every shelf of the desk shares. */
export interface DeskContext extends Storage {
  readonly places: Places;
  readonly now: () => Date;
  readonly appVersion: string;
  /** Tells the person something at the next look at the notices. */
  readonly notify: (sentence: string) => void;
  /** Nothing in the folder may change: what is damaged is read as well as it can be, and left as it is. */
  readonly onlyReads?: boolean;
}

/** Bytes. Larger files are not ours: refused before they are read. A game's letters take up to three bytes each, and some more in its log. */
const LARGEST_FILE = 40_000_000;

/** A file's text; undefined where it isn't there, and a byte order mark is passed over. */
export async function readText(storage: Storage, path: string): Promise<string | undefined> {
  return (await readExactText(storage, path))?.text;
}

/** A file's text, and whether each of its bytes could be read as text. */
export async function readExactText(
  { files }: Storage,
  path: string,
  largest = LARGEST_FILE,
): Promise<{ readonly text: string; readonly exact: boolean } | undefined> {
  const info = await ifThere(files.info(path));
  if (info === undefined) return undefined;
  if (info.size > largest) throw Object.assign(new Error(`${path} is too large`), { code: 'EFBIG' });
  const bytes = await ifThere(files.read(path));
  return bytes === undefined ? undefined : { text: new TextDecoder().decode(bytes), exact: isUtf8(bytes) };
}

/** The text of a file that can be made again: one that is far too large counts as not there. */
export async function readRemakable(
  storage: Storage,
  path: string,
  largest = LARGEST_FILE,
): Promise<string | undefined> {
  try {
    return (await readExactText(storage, path, largest))?.text;
  } catch (error) {
    if (errorCode(error) === 'EFBIG') return undefined;
    throw error;
  }
}

/**
 * Renames a file that can't be read to `<name>.damaged-<time>`, so that nothing is written over
 * it. Answers the name that it has from then on.
 */
export async function setAside(context: DeskContext, path: string, why = 'damaged'): Promise<string> {
  if (context.onlyReads === true) return basename(path);
  const name = await copyName(context, path, why);
  await renamePatiently(context, path, join(dirname(path), name));
  await context.files.syncFolder(dirname(path));
  return name;
}

/** The same by a copy, for a file that is to be written anew: at every moment one of both is in its place. */
export async function keepCopy(context: DeskContext, path: string, why = 'damaged'): Promise<string> {
  if (context.onlyReads === true) return basename(path);
  const name = await copyName(context, path, why);
  const copy = join(dirname(path), name);
  try {
    await writeWhole(context.files, copy, await context.files.read(path));
  } catch (error) {
    await removeQuietly(context.files, copy);
    throw error;
  }
  await context.files.syncFolder(dirname(path));
  return name;
}

/** Puts what could be read of a damaged file into its place, once it is kept as it was. Answers the name that it has from then on. */
export async function mend(context: DeskContext, path: string, good: string): Promise<string> {
  const name = await keepCopy(context, path);
  if (context.onlyReads !== true) await writeDurably(context, path, good);
  return name;
}

async function copyName({ files, now }: DeskContext, path: string, why: string): Promise<string> {
  const taken = (await files.list(dirname(path))).map(({ name }) => name);
  return freeName(`${basename(path)}.${why}-${stampOf(now())}`, '', taken);
}

/** The object in a file of ours: fields that this version does not know stay in it. */
export type Kept = Fields;

/** Deeper than any file of ours; what is nested deeper still could not be written again. */
const LIMITS = { letters: Infinity, depth: 64 };

/** The object that a text of JSON holds; undefined for anything else, and for one nested too deep. */
export function parseObject(text: string): Kept | undefined {
  const read = readJson(text, LIMITS);
  return read.ok ? read.value : undefined;
}

const DAY = 86_400_000;

/** The names of the files in a folder; those left unfinished by a crash go when a day old. */
export async function filesIn(context: DeskContext, folder: string): Promise<string[]> {
  const names = ((await ifThere(context.files.list(folder))) ?? [])
    .filter((entry) => !entry.folder)
    .map(({ name }) => name);
  for (const name of names) {
    if (name.endsWith(UNFINISHED) && context.onlyReads !== true) await sweep(context, join(folder, name), DAY);
  }
  return names.filter((name) => !name.endsWith(UNFINISHED));
}

/** Removes a file that was last changed longer ago than `age` milliseconds. */
async function sweep({ files, now }: DeskContext, path: string, age: number): Promise<void> {
  const info = await ifThere(files.info(path));
  if (info !== undefined && now().getTime() - info.changedAt > age) await ifThere(files.remove(path));
}
