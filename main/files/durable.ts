import { dirname, join, basename } from 'node:path';
import { errorCode, type Files, ifThere } from './files.ts';

/** Ends the name of a file that is still being written. */
export const UNFINISHED = '.unfinished';
/** How long a rename or a removal that another program blocks is tried again, in milliseconds. */
const PATIENCE = 5000;
const FIRST_PAUSE = 10;
const BLOCKED = ['EPERM', 'EBUSY', 'EACCES'];

/** What durable writing needs from outside. */
export interface Storage {
  readonly files: Files;
  /** Waits for so many milliseconds. */
  readonly pause: (milliseconds: number) => Promise<void>;
  /** A short name that was never used before. */
  readonly freshName: () => string;
}

/**
 * Puts a text in a file so that a crash at any moment leaves the old content or the new, whole: a
 * new file in the same folder, all bytes, flush, size check, rename over the old one, flush of the
 * folder. Rejects with the file system's error; then the old file is as it was (unless only the
 * last flush failed) and nothing is left lying about.
 */
export async function writeDurably(storage: Storage, path: string, text: string): Promise<void> {
  const { files } = storage;
  const unfinished = join(dirname(path), `${basename(path)}.${storage.freshName()}${UNFINISHED}`);
  try {
    await writeWhole(files, unfinished, Buffer.from(text, 'utf8'));
    await renamePatiently(storage, unfinished, path);
  } catch (error) {
    await removeQuietly(files, unfinished);
    throw error;
  }
  await files.syncFolder(dirname(path));
}

/** Makes a new file with these bytes, flushed and checked. */
export async function writeWhole(files: Files, path: string, bytes: Uint8Array): Promise<void> {
  const file = await files.createNew(path);
  try {
    await writeAll(file, bytes);
    await file.sync();
    if ((await file.size()) !== bytes.length) throw shortWrite();
  } finally {
    await file.close();
  }
}

/** Writes all bytes, however few the system takes at a time. */
export async function writeAll(file: { write(bytes: Uint8Array): Promise<number> }, bytes: Uint8Array): Promise<void> {
  let done = 0;
  while (done < bytes.length) {
    const written = await file.write(bytes.subarray(done));
    // A disk that takes nothing and says nothing is full.
    if (written === 0) throw shortWrite();
    done += written;
  }
}

/**
 * Adds a text at the end of a file of `size` bytes, flushed; true when it is safely there. False when the file is gone, or
 * is then not as long as it must be: the disk has not reported the truth, or another program writes too.
 */
export async function addDurably(files: Files, path: string, text: string, size: number): Promise<boolean> {
  const file = await ifThere(files.openAtEnd(path));
  if (file === undefined) return false;
  const bytes = Buffer.from(text);
  try {
    await writeAll(file, bytes);
    await file.sync();
    return (await file.size()) === size + bytes.length;
  } finally {
    await file.close();
  }
}

function shortWrite(): Error {
  return Object.assign(new Error('the disk took only part of the file'), { code: 'ENOSPC' });
}

/** Renames, trying again for a while when a scanner or a backup program holds the file. */
export async function renamePatiently(storage: Storage, from: string, to: string): Promise<void> {
  await patiently(storage, () => storage.files.rename(from, to));
}

/** Removes a file with the same patience; answers whether it was there. */
export async function removePatiently(storage: Storage, path: string): Promise<boolean> {
  const removed = await ifThere(patiently(storage, () => storage.files.remove(path)).then(() => true));
  return removed === true;
}

async function patiently({ pause }: Storage, call: () => Promise<void>): Promise<void> {
  let wait = FIRST_PAUSE;
  let waited = 0;
  for (;;) {
    try {
      await call();
      return;
    } catch (error) {
      if (!BLOCKED.includes(errorCode(error)) || waited >= PATIENCE) throw error;
    }
    await pause(wait);
    waited += wait;
    wait *= 2;
  }
}

/** Removes a file that is only in the way; never rejects. */
export async function removeQuietly(files: Files, path: string): Promise<void> {
  try {
    await files.remove(path);
  } catch {
    // It was never made, or it can't be removed now: the sweep at a later start does it.
  }
}

/** Makes a folder and those above it, durably, where they are missing. */
export async function makeFolders(files: Files, path: string): Promise<void> {
  if ((await ifThere(files.info(path))) !== undefined) return;
  const parent = dirname(path);
  if (parent !== path) await makeFolders(files, parent);
  try {
    await files.makeFolder(path);
  } catch (error) {
    if (errorCode(error) !== 'EEXIST') throw error;
  }
  await files.syncFolder(parent);
}

/** Removes a file, durably; nothing happens when it isn't there. */
export async function removeDurably(storage: Storage, path: string): Promise<void> {
  if (await removePatiently(storage, path)) await storage.files.syncFolder(dirname(path));
}

/** Renames a file into a folder that is made if it has to be; a file that is there under the new name is replaced. */
export async function moveDurably(storage: Storage, from: string, to: string): Promise<void> {
  const { files } = storage;
  await makeFolders(files, dirname(to));
  await renamePatiently(storage, from, to);
  await files.syncFolder(dirname(to));
  await files.syncFolder(dirname(from));
}
