import { basename, dirname, join } from 'node:path';
import { removeQuietly, renamePatiently, type Storage, writeWhole } from '../files/durable.ts';
import { isUtf8 } from 'node:buffer';
import { errorCode, ifThere } from '../files/files.ts';
import { type Places, stampOf } from './places.ts';

/** What every shelf of the desk shares. */
export interface DeskContext extends Storage {
  readonly places: Places;
  readonly now: () => Date;
  readonly appVersion: string;
  /** Tells the person something at the next look at the notices. */
  readonly tell: (sentence: string) => void;
}

/** Larger files are not ours: refused before they are read. */
const LARGEST_FILE = 20_000_000;

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
 * it. Answers the new name.
 */
export async function setAside(context: DeskContext, path: string, why = 'damaged'): Promise<string> {
  const name = await asideName(context, path, why);
  await renamePatiently(context, path, join(dirname(path), name));
  await context.files.syncFolder(dirname(path));
  return name;
}

/** The same by a copy, for a file that is to be written anew: at every moment one of both is in its place. */
export async function keepCopy(context: DeskContext, path: string, why = 'damaged'): Promise<string> {
  const name = await asideName(context, path, why);
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

async function asideName({ files, now }: DeskContext, path: string, why: string): Promise<string> {
  const taken = new Set((await files.list(dirname(path))).map((entry) => entry.name));
  const wished = `${basename(path)}.${why}-${stampOf(now())}`;
  let name = wished;
  for (let turn = 2; taken.has(name); turn += 1) name = `${wished}-${turn}`;
  return name;
}
