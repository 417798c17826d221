/**
 * `npm run calibrate:others [-- --fit-games N] [--games N] [--kinds club]`: fits what a seat is read by to games of ten
 * cards, tests it on the demo card and two cards left out, and writes core/others/fitted.ts and core/others/CALIBRATION.md.
 * With `--games 0` it only fits. The same numbers give the same files on every machine. Half an hour of one core.
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { bundleForNode } from '../../bundle.mjs';

const ROOT = resolve(import.meta.dirname, '../../..');
const { values } = parseArgs({
  options: { 'fit-games': { type: 'string', default: '150' }, games: { type: 'string', default: '2000' } },
});

mkdirSync(join(ROOT, '.cache'), { recursive: true });
const workshop = mkdtempSync(join(ROOT, '.cache/calibrate-others-'));
try {
  await bundleForNode([join(import.meta.dirname, 'run.ts')], workshop);
  /** @type {typeof import('./run.ts')} */
  const { calibrateOthers } = await import(pathToFileURL(join(workshop, 'run.js')).href);
  const written = calibrateOthers(ROOT, {
    fitGames: Number(values['fit-games']),
    games: Number(values.games),
    say: (line) => console.log(line),
  });
  execFileSync(process.execPath, [join(ROOT, 'node_modules/oxfmt/bin/oxfmt'), ...written], { cwd: ROOT });
} finally {
  rmSync(workshop, { recursive: true, force: true });
}
