import { join, sep } from 'node:path';
import { type Problem, type Result, success } from '../../core/base/result.ts';
import { makeFolders } from '../files/durable.ts';
import type { Files } from '../files/files.ts';
import { readingFiles } from '../files/reading-files.ts';
import { type DeskContext, filesIn } from './context.ts';
import { keepAboutPage } from './folder.ts';
import { GameShelf } from './game-shelf.ts';
import { folderGone, hasOurs, inUse, type Lock, type Running, takeLock, tryRoom } from './lock.ts';

/** The folder as it was opened: what works on it, and the lock or why nothing may be written. */
export interface OpenFolder {
  readonly context: DeskContext;
  readonly games: GameShelf;
  readonly hold: Lock | Problem;
}

export interface ToWrite {
  readonly running: Running;
  /** The page that explains the files, to lie among them. */
  readonly aboutPage?: string | undefined;
}

/** Opens the folder for this copy of the program alone, and makes it where it is missing. Rejects with a file error. */
export async function openToWrite(
  given: DeskContext,
  { running, aboutPage }: ToWrite,
): Promise<Result<OpenFolder & { readonly hold: Lock }>> {
  const { places } = given;
  await makeFolders(given.files, places.folder);
  const taken = await takeLock(given, running);
  if (!taken.ok) return taken;
  const hold = taken.value;
  try {
    const context = { ...given, files: filesBelow(given.files, places.folder) };
    for (const folder of [places.folder, places.progress, places.cards]) await filesIn(context, folder);
    const games = await GameShelf.open(context);
    if (aboutPage !== undefined) await keepAboutPage(context, aboutPage);
    // Of several that found an old lock at the same moment, one may have put it back over ours.
    if (await hold.look()) return success({ context, games, hold });
    await hold.release();
    return inUse();
  } catch (error) {
    await hold.release();
    throw error;
  }
}

/** Opens the folder, or what is there of it, without changing anything. Rejects with a file error. */
export async function openToRead(given: DeskContext, why: Problem): Promise<OpenFolder> {
  const context = { ...given, files: readingFiles(given.files), onlyReads: true };
  return { context, games: await GameShelf.open(context), hold: why };
}

/**
 * Opens a folder for writing that could only be read so far, if there is room for more than the first file; else rejects
 * with the reason. `wasOurs`: it held files of ours then, so that one that holds none is another one in its place.
 */
export async function takeUpWriting(
  given: DeskContext,
  how: ToWrite,
  wasOurs: boolean,
): Promise<Result<OpenFolder & { readonly hold: Lock }>> {
  if (wasOurs) {
    if (!(await hasOurs(given))) throw folderGone(given.places.folder);
    await tryRoom(given);
  }
  return await openToWrite(given, how);
}

/** The same files, with folders made below a folder only: one that was moved away is not made anew. */
function filesBelow(files: Files, folder: string): Files {
  return {
    ...files,
    makeFolder: async (path) => {
      if (path.startsWith(join(folder, sep))) return await files.makeFolder(path);
      throw Object.assign(new Error(`${path} is not there`), { code: 'ENOENT' });
    },
  };
}
