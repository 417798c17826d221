/**
 * The file system as the storage sees it: as few calls as durable writing needs, so that a test
 * can make each of them fail or stop the world between two of them. Paths are absolute. Every
 * call may reject with an error that carries a `code` such as `ENOSPC`.
 */
export interface Files {
  /** Creates a file that must not exist yet, readable by its owner alone (0600). */
  createNew(path: string): Promise<OpenFile>;
  /** Opens a file that exists, to write after its end. */
  openAtEnd(path: string): Promise<OpenFile>;
  read(path: string): Promise<Uint8Array>;
  info(path: string): Promise<FileInfo>;
  list(folder: string): Promise<readonly ListedName[]>;
  rename(from: string, to: string): Promise<void>;
  remove(path: string): Promise<void>;
  /** Creates one folder (0700); its parent exists. */
  makeFolder(path: string): Promise<void>;
  /** Sets a file's time of change to now. */
  touch(path: string): Promise<void>;
  /** Makes the folder's names durable: what was created, renamed or removed in it. */
  syncFolder(path: string): Promise<void>;
}

export interface OpenFile {
  /** Writes some of the bytes, perhaps not all; answers how many. */
  write(bytes: Uint8Array): Promise<number>;
  /** Makes the file's content durable. */
  sync(): Promise<void>;
  size(): Promise<number>;
  close(): Promise<void>;
}

export interface FileInfo {
  readonly size: number;
  /** Milliseconds since 1970. */
  readonly changedAt: number;
}

interface ListedName {
  readonly name: string;
  readonly folder: boolean;
}

/** The error's code, such as `ENOENT`; an empty text for anything that is not a file error. */
export function errorCode(error: unknown): string {
  if (!(error instanceof Error) || !('code' in error)) return '';
  return typeof error.code === 'string' ? error.code : '';
}

/** Runs a call that may find nothing: answers `undefined` where the file or folder isn't there. */
export async function ifThere<Value>(call: Promise<Value>): Promise<Value | undefined> {
  try {
    return await call;
  } catch (error) {
    if (['ENOENT', 'ENOTDIR'].includes(errorCode(error))) return undefined;
    throw error;
  }
}

/** Waits for a call that may fail without harm, with undefined; anything but a file error is thrown again. */
export async function quietly<Value>(call: Promise<Value>): Promise<Value | undefined> {
  try {
    return await call;
  } catch (error) {
    if (errorCode(error) === '') throw error;
    return undefined;
  }
}
