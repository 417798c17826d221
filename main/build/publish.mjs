/**
 * Puts a finished build in its place, file by file, so that `dist` is whole at every moment: a
 * process that starts meanwhile finds either the old file or the new one, and a window that is
 * open still finds the old chunks (their names carry a digest), which are swept an hour later.
 */
import { existsSync, mkdirSync, readdirSync, renameSync, rmdirSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { stampFile } from './stamp.mjs';

const HOUR = 3_600_000;
const CHUNKS = join('renderer', 'assets');
const LOCK = '.publishing';
const LOCK_STALE_AFTER = 10_000;

/**
 * Moves all files of `built` into `dist`, the stamps last.
 * @param {string} built
 * @param {string} dist
 */
export async function publish(built, dist) {
  mkdirSync(dist, { recursive: true });
  const lock = join(dist, LOCK);
  await take(lock);
  try {
    const files = filesIn(built);
    const [stamps, others] = [files.filter(isStamp), files.filter((file) => !isStamp(file))];
    for (const file of [...others, ...stamps]) move(built, dist, file);
    if (stamps.includes(stampFile('renderer'))) sweep(dist, new Set(others));
  } finally {
    rmdirSync(lock);
  }
  rmSync(built, { recursive: true, force: true });
}

/** @param {string} lock */
async function take(lock) {
  for (;;) {
    try {
      mkdirSync(lock);
      return;
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error;
      if (ageOf(lock) > LOCK_STALE_AFTER) rmSync(lock, { recursive: true, force: true });
      else await pause(20);
    }
  }
}

/** Milliseconds since a file was last changed; 0 when it is gone. @param {string} path */
function ageOf(path) {
  const found = statSync(path, { throwIfNoEntry: false });
  return found === undefined ? 0 : Date.now() - found.mtimeMs;
}

/** @param {string} folder */
function filesIn(folder) {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' });
  return names.filter((name) => statSync(join(folder, name)).isFile());
}

/** @param {string} file */
function isStamp(file) {
  return file.startsWith(stampFile(''));
}

/** @param {string} from @param {string} to @param {string} file */
function move(from, to, file) {
  mkdirSync(dirname(join(to, file)), { recursive: true });
  renameSync(join(from, file), join(to, file));
}

/** Removes the window's chunks that earlier builds left and nobody can still have open. @param {string} dist @param {Set<string>} current */
function sweep(dist, current) {
  const folder = join(dist, CHUNKS);
  if (!existsSync(folder)) return;
  for (const name of readdirSync(folder)) {
    if (!current.has(join(CHUNKS, name)) && ageOf(join(folder, name)) > HOUR)
      rmSync(join(folder, name), { force: true });
  }
}
