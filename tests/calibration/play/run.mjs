/**
 * `npm run calibrate:play [-- --games N] [--leads N] [--kinds club]`: compares games from moments of play with what came
 * of the games that these moments belong to, and tests the choices that such games put before the first of the advice.
 * Prints what it finds; ten minutes of one core.
 */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { bundleForNode } from '../../bundle.mjs';

const ROOT = resolve(import.meta.dirname, '../../..');
const { values } = parseArgs({
  options: {
    games: { type: 'string', default: '3000' },
    leads: { type: 'string', default: '150' },
    kinds: { type: 'string', default: 'club' },
  },
});

mkdirSync(join(ROOT, '.cache'), { recursive: true });
const workshop = mkdtempSync(join(ROOT, '.cache/calibrate-play-'));
try {
  await bundleForNode([join(import.meta.dirname, 'run.ts')], workshop);
  /** @type {typeof import('./run.ts')} */
  const { calibratePlay } = await import(pathToFileURL(join(workshop, 'run.js')).href);
  calibratePlay(ROOT, {
    games: Number(values.games),
    leads: Number(values.leads),
    kinds: values.kinds.split(','),
    say: (line) => console.log(line),
  });
} finally {
  rmSync(workshop, { recursive: true, force: true });
}
