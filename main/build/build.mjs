/**
 * Builds Windrow into `dist`. Importers call `freshBuild`, which builds only those parts whose
 * sources have changed; `npm run build` builds all in any case and says what it did.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { configsOf, PARTS } from './parts.mjs';
import { publish } from './publish.mjs';
import { isFresh, sourceStamp, stampFile } from './stamp.mjs';

/**
 * @typedef {import('./parts.mjs').Part} Part
 * @typedef {import('./parts.mjs').PartName} PartName
 */

/** The house's top folder. */
export const ROOT = resolve(import.meta.dirname, '../..');
/** Where the built app lies. */
export const DIST = join(ROOT, 'dist');

/** @type {readonly PartName[]} */
export const ALL_PARTS = PARTS.map(({ name }) => name);

/**
 * Builds the named parts if their sources changed since they were built. Two processes may do so
 * at once.
 * @param {readonly PartName[]} [names] all, if left out
 * @param {string} [root]
 * @returns {Promise<string>} the folder of the built app
 */
export async function freshBuild(names = ALL_PARTS, root = ROOT) {
  const dist = join(root, 'dist');
  const stale = PARTS.filter((part) => names.includes(part.name) && !isFresh(root, dist, part));
  if (stale.length > 0) await buildParts(stale, { root, dist, logLevel: 'silent' });
  return dist;
}

/**
 * Builds parts in a folder of their own and then publishes them in `dist`.
 * @param {readonly Part[]} parts
 * @param {{ root: string, dist: string, logLevel: import('vite').LogLevel }} how `logLevel`: what the bundler may print
 */
export async function buildParts(parts, { root, dist, logLevel }) {
  const { build } = await import('vite');
  const { NODE_ENV } = process.env;
  // Inside a test runner this is "test", which would give the window its library's development form.
  process.env['NODE_ENV'] = 'production';
  mkdirSync(join(root, '.cache'), { recursive: true });
  const workshop = mkdtempSync(join(root, '.cache', 'build-'));
  try {
    for (const part of parts) {
      const stamp = sourceStamp(root, part.sources);
      for (const config of configsOf(root, part, workshop)) await build({ ...config, logLevel });
      const file = join(workshop, stampFile(part.name));
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(file, stamp);
    }
    await publish(workshop, dist);
  } finally {
    if (NODE_ENV === undefined) delete process.env['NODE_ENV'];
    else process.env['NODE_ENV'] = NODE_ENV;
    rmSync(workshop, { recursive: true, force: true });
  }
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const started = performance.now();
  await buildParts(PARTS, { root: ROOT, dist: DIST, logLevel: 'warn' });
  console.log(`Built ${ALL_PARTS.join(', ')} in ${((performance.now() - started) / 1000).toFixed(1)} s.`);
}
