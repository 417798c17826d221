import { basename, dirname, join } from 'node:path';
import { renamePatiently, type Storage } from '../files/durable.ts';
import { ifThere } from '../files/files.ts';
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
export async function readText({ files }: Storage, path: string): Promise<string | undefined> {
  const info = await ifThere(files.info(path));
  if (info === undefined) return undefined;
  if (info.size > LARGEST_FILE) throw Object.assign(new Error(`${path} is too large`), { code: 'EFBIG' });
  const bytes = await ifThere(files.read(path));
  return bytes === undefined ? undefined : new TextDecoder().decode(bytes);
}

/**
 * Renames a file that can't be read to `<name>.damaged-<time>`, so that nothing is written over
 * it. Answers the new name.
 */
export async function setAside(context: DeskContext, path: string, why = 'damaged'): Promise<string> {
  const folder = dirname(path);
  const taken = new Set(((await ifThere(context.files.list(folder))) ?? []).map((entry) => entry.name));
  const wished = `${basename(path)}.${why}-${stampOf(context.now())}`;
  let name = wished;
  for (let turn = 2; taken.has(name); turn += 1) name = `${wished}-${turn}`;
  await renamePatiently(context, path, join(folder, name));
  await context.files.syncFolder(folder);
  return name;
}
