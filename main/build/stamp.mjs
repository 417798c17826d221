/**
 * Whether `dist` was built from the sources as they are now. The stamp is a digest over the names,
 * sizes and times of all source files: quick to take (some milliseconds), and it notices files that
 * went away, which a newest-time rule would not.
 */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';

const SOURCES = ['core', 'main', 'renderer', 'assets', 'package.json', 'package-lock.json'];
const STAMP = 'stamp.txt';

/** The digest of the sources under a root. @param {string} root */
export function sourceStamp(root) {
  const digest = createHash('sha256');
  for (const name of SOURCES) addTo(digest, join(root, name), name);
  return digest.digest('hex').slice(0, 16);
}

/** @param {import('node:crypto').Hash} digest @param {string} path @param {string} name */
function addTo(digest, path, name) {
  if (!existsSync(path)) return;
  const { size, mtimeMs } = statSync(path);
  if (!statSync(path).isDirectory()) {
    digest.update(`${name} ${size} ${mtimeMs}\n`);
    return;
  }
  for (const entry of readdirSync(path).sort()) addTo(digest, join(path, entry), `${name}/${entry}`);
}

/** The stamp that a built folder carries, if any. @param {string} dist */
export function builtStamp(dist) {
  const file = join(dist, STAMP);
  return existsSync(file) ? readFileSync(file, 'utf8') : undefined;
}

/** @param {string} root @param {string} dist */
export function isFresh(root, dist) {
  return builtStamp(dist) === sourceStamp(root);
}

/** The stamp's file name inside a built folder; it is written last. */
export const STAMP_FILE = STAMP;
