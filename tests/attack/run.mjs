/**
 * `npm run attack [-- NAME …] [--minutes N] [--seed N]`: attacks a Windrow that runs on this computer,
 * in a temporary folder of its own, and prints what was tried and what failed. Ends with 1 when anything
 * failed. A NAME takes only the attacks that have it in their name.
 */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { freshBuild } from '../../main/build/build.mjs';
import { bundleForNode } from '../bundle.mjs';

const ROOT = resolve(import.meta.dirname, '../..');

const { values, positionals } = parseArgs({
  options: { minutes: { type: 'string', default: '4' }, seed: { type: 'string', default: '1' } },
  allowPositionals: true,
});
const [minutes, seed] = [Number(values.minutes), Number(values.seed)];
if (!(minutes > 0 && minutes <= 600) || !Number.isSafeInteger(seed) || seed < 0) {
  console.error('Say minutes up to 600 and a whole number as seed: npm run attack -- --minutes 4 --seed 1');
  process.exitCode = 2;
} else {
  process.chdir(ROOT);
  await freshBuild(['host', 'cli', 'renderer']);
  mkdirSync('.cache', { recursive: true });
  const workshop = mkdtempSync(join(ROOT, '.cache/attack-'));
  try {
    await bundleForNode({ attacks: join(import.meta.dirname, 'attacks.ts') }, workshop);
    /** @type {typeof import('./attacks.ts')} */
    const { attackAll } = await import(pathToFileURL(join(workshop, 'attacks.js')).href);
    process.exitCode = await attackAll({ minutes, seed, names: positionals });
  } finally {
    rmSync(workshop, { recursive: true, force: true });
  }
}
