/**
 * Whether a built part was made from its sources as they are now. A stamp is a digest over the
 * names, sizes and times of all source files: quick to take (some milliseconds), and it notices
 * files that went away, which a newest-time rule would not.
 */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** Where a part's stamp lies inside `dist`; it is written after the part's files. @param {string} part */
export function stampFile(part) {
  return join('stamps', part);
}

/**
 * The digest of these files and folders, as they are now.
 * @param {string} root
 * @param {readonly string[]} sources
 */
export function sourceStamp(root, sources) {
  const digest = createHash('sha256');
  for (const name of sources) addTo(digest, join(root, name), name);
  return digest.digest('hex').slice(0, 16);
}

/** @param {import('node:crypto').Hash} digest @param {string} path @param {string} name */
function addTo(digest, path, name) {
  const found = statSync(path, { throwIfNoEntry: false });
  if (found === undefined) return;
  if (!found.isDirectory()) {
    digest.update(`${name} ${found.size} ${found.mtimeMs}\n`);
    return;
  }
  for (const entry of readdirSync(path).sort()) addTo(digest, join(path, entry), `${name}/${entry}`);
}

/**
 * Whether the part in `dist` carries the stamp of its sources.
 * @param {string} root
 * @param {string} dist
 * @param {import('./parts.mjs').Part} part
 */
export function isFresh(root, dist, part) {
  const file = join(dist, stampFile(part.name));
  return existsSync(file) && readFileSync(file, 'utf8') === sourceStamp(root, part.sources);
}
