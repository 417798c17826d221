import { constants } from 'node:fs';
import { mkdir, open, readdir, readFile, rename, rm, stat, utimes } from 'node:fs/promises';
import type { FileHandle } from 'node:fs/promises';
import { type Files, type OpenFile } from './files.ts';

const OWNER_ONLY = 0o600;
const OWNER_FOLDER = 0o700;

/** The real file system. */
export const nodeFiles: Files = {
  async createNew(path) {
    return openFile(await open(path, 'wx', OWNER_ONLY));
  },
  async openAtEnd(path) {
    return openFile(await open(path, constants.O_WRONLY | constants.O_APPEND, OWNER_ONLY));
  },
  async read(path) {
    return await readFile(path);
  },
  async info(path) {
    const { size, mtimeMs } = await stat(path);
    return { size, changedAt: mtimeMs };
  },
  async list(folder) {
    const found = await readdir(folder, { withFileTypes: true });
    return found.map((entry) => ({ name: entry.name, folder: entry.isDirectory() }));
  },
  async rename(from, to) {
    await rename(from, to);
  },
  async remove(path) {
    await rm(path);
  },
  async makeFolder(path) {
    await mkdir(path, { mode: OWNER_FOLDER });
  },
  async touch(path) {
    const now = new Date();
    await utimes(path, now, now);
  },
  async syncFolder(path) {
    // Windows can't flush a folder; its file system journals names by itself.
    if (process.platform === 'win32') return;
    const handle = await open(path, 'r');
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
  },
};

function openFile(handle: FileHandle): OpenFile {
  return {
    async write(bytes) {
      const { bytesWritten } = await handle.write(bytes);
      return bytesWritten;
    },
    async sync() {
      await handle.datasync();
    },
    async size() {
      return (await handle.stat()).size;
    },
    async close() {
      await handle.close();
    },
  };
}
