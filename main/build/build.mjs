/**
 * Builds Windrow into `dist`. Importers call `freshBuild`, which does nothing when the sources have
 * not changed since; `npm run build` builds in any case and says what it did.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { partsOf } from './parts.mjs';
import { publish } from './publish.mjs';
import { isFresh, sourceStamp, STAMP_FILE } from './stamp.mjs';

/** The house's top folder. */
export const ROOT = resolve(import.meta.dirname, '../..');
/** Where the built app lies. */
export const DIST = join(ROOT, 'dist');

/**
 * Builds if the sources changed since the last build. Two processes may do so at once.
 * @param {string} [root]
 * @returns {Promise<string>} the folder of the built app
 */
export async function freshBuild(root = ROOT) {
  const dist = join(root, 'dist');
  if (!isFresh(root, dist)) await buildNow(root, dist, 'silent');
  return dist;
}

/**
 * Builds all parts into a folder of its own and then publishes it as `dist`.
 * @param {string} root
 * @param {string} dist
 * @param {import('vite').LogLevel} logLevel what the bundler may print
 * @returns {Promise<string[]>} the names of the parts
 */
export async function buildNow(root, dist, logLevel) {
  const { build } = await import('vite');
  mkdirSync(join(root, '.cache'), { recursive: true });
  const workshop = mkdtempSync(join(root, '.cache', 'build-'));
  try {
    const stamp = sourceStamp(root);
    const parts = partsOf(root, workshop);
    for (const { config } of parts) await build({ ...config, logLevel });
    writeFileSync(join(workshop, STAMP_FILE), stamp);
    await publish(workshop, dist);
    return parts.map(({ name }) => name);
  } finally {
    rmSync(workshop, { recursive: true, force: true });
  }
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const started = performance.now();
  const parts = await buildNow(ROOT, DIST, 'warn');
  console.log(`Built ${parts.join(', ')} in ${((performance.now() - started) / 1000).toFixed(1)} s.`);
}
