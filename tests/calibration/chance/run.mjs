/**
 * `npm run calibrate:chance [-- --pool-games N] [--games N] [--kinds quick,club]`: fits the form of the chance that holds for
 * all cards, tests it on each card left out, and writes core/chance/pooled.ts, core/chance/demo-fit.ts and
 * core/chance/CALIBRATION.md. `--games 0` leaves the report. The same numbers give the same files on every machine. A
 * quarter of an hour of one core.
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { bundleForNode } from '../../bundle.mjs';

const ROOT = resolve(import.meta.dirname, '../../..');
const { values } = parseArgs({
  options: {
    'pool-games': { type: 'string', default: '400' },
    games: { type: 'string', default: '1500' },
    kinds: { type: 'string', default: 'quick,club' },
  },
});

mkdirSync(join(ROOT, '.cache'), { recursive: true });
const workshop = mkdtempSync(join(ROOT, '.cache/calibrate-chance-'));
try {
  await bundleForNode([join(import.meta.dirname, 'run.ts')], workshop);
  /** @type {typeof import('./run.ts')} */
  const { calibrateChance } = await import(pathToFileURL(join(workshop, 'run.js')).href);
  calibrateChance(ROOT, {
    poolGames: Number(values['pool-games']),
    testGames: Number(values.games),
    kinds: /** @type {('quick' | 'club' | 'relaxed')[]} */ (values.kinds.split(',')),
    say: (line) => console.log(line),
  });
  const written = ['core/chance/pooled.ts', 'core/chance/demo-fit.ts', 'core/chance/CALIBRATION.md'];
  execFileSync(process.execPath, [join(ROOT, 'node_modules/oxfmt/bin/oxfmt'), ...written], { cwd: ROOT });
} finally {
  rmSync(workshop, { recursive: true, force: true });
}
