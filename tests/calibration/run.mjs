/**
 * `npm run calibrate [-- --fit-deals N] [--deals N] [--keep]`: fits the shape of reach to one set of
 * simulated racks, tests it on another, and writes what it found: core/reading/reach-shape.ts,
 * core/reading/CALIBRATION.md, core/reading/calibration.ts and assets/calibration.svg. With
 * `--keep` the shape stays. The same numbers give the same files on every machine. Three minutes of one core.
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { bundleForNode } from '../bundle.mjs';

const ROOT = resolve(import.meta.dirname, '../..');
const { values } = parseArgs({
  options: {
    'fit-deals': { type: 'string', default: '1500' },
    deals: { type: 'string', default: '5000' },
    keep: { type: 'boolean', default: false },
  },
});

mkdirSync(join(ROOT, '.cache'), { recursive: true });
const workshop = mkdtempSync(join(ROOT, '.cache/calibrate-'));
try {
  await bundleForNode([join(import.meta.dirname, 'calibrate.ts')], workshop);
  /** @type {typeof import('./calibrate.ts')} */
  const { calibrate, writeCalibration } = await import(pathToFileURL(join(workshop, 'calibrate.js')).href);
  const extent = { fitDeals: Number(values['fit-deals']), testDeals: Number(values.deals), keep: values.keep };
  const calibration = calibrate(ROOT, extent);
  writeCalibration(ROOT, calibration);
  const written = ['core/reading/reach-shape.ts', 'core/reading/calibration.ts', 'core/reading/CALIBRATION.md'];
  execFileSync(process.execPath, [join(ROOT, 'node_modules/oxfmt/bin/oxfmt'), ...written], { cwd: ROOT });
  for (const { title, measured } of calibration.cards) {
    const gap = (100 * measured.best.gap).toFixed(2);
    console.log(`${title}: mean gap ${gap} points, Brier ${measured.brier.reach.toFixed(4)}`);
  }
} finally {
  rmSync(workshop, { recursive: true, force: true });
}
