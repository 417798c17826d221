/**
 * `npm run calibrate [-- --fit-deals N] [--deals N] [--close-deals N]`: fits the curves of the reach of hands to one set
 * of simulated racks, tests them on another with each card left out in turn, and writes what it found:
 * core/reading/hand-curves.ts, core/reading/CALIBRATION.md, core/reading/calibration.ts and assets/calibration.svg.
 * `npm run calibrate -- --shape` fits the shape of the base model instead, core/reading/reach-shape.ts; the chance and the
 * curves are fitted to what that model says, so that they must be fitted anew after it. `npm run calibrate -- --keep`
 * plays racks for the test of tests/calibration/kept.test.ts and keeps them; whoever changes a player or a rule of the
 * table does so. The same numbers give the same files on every machine. Five minutes of one core each.
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { bundleForNode } from '../bundle.mjs';

const ROOT = resolve(import.meta.dirname, '../..');
/** Deals of each card that the shape is fitted to. */
const SHAPE_DEALS = 1500;
/** Deals of each card at each kind of table whose racks are kept; not a seed of the fit or of the report. */
const KEPT = { seed: 35, deals: 600 };
const { values } = parseArgs({
  options: {
    'fit-deals': { type: 'string', default: '450' },
    deals: { type: 'string', default: '800' },
    'close-deals': { type: 'string', default: '5000' },
    shape: { type: 'boolean', default: false },
    keep: { type: 'boolean', default: false },
  },
});

mkdirSync(join(ROOT, '.cache'), { recursive: true });
const workshop = mkdtempSync(join(ROOT, '.cache/calibrate-'));
try {
  await bundleForNode([join(import.meta.dirname, 'calibrate.ts')], workshop);
  /** @type {typeof import('./calibrate.ts')} */
  const { calibrateHands, fitBaseShape, writeCalibration, writeKept, writeShape } = await import(
    pathToFileURL(join(workshop, 'calibrate.js')).href
  );
  if (values.keep) {
    const made = `npm run calibrate -- --keep, ${new Date().toISOString().slice(0, 10)}, Node ${process.versions.node}`;
    writeKept(ROOT, { made, ...KEPT, say: (line) => console.log(line) });
    format('tests/calibration/kept-racks.json', 'core/reading/CALIBRATION.md');
  } else if (values.shape) {
    writeShape(ROOT, fitBaseShape(ROOT, SHAPE_DEALS));
    format('core/reading/reach-shape.ts');
  } else {
    writeCalibration(
      ROOT,
      calibrateHands(ROOT, {
        fitDeals: Number(values['fit-deals']),
        testDeals: Number(values.deals),
        closeDeals: Number(values['close-deals']),
        say: (line) => console.log(line),
      }),
    );
    format('core/reading/hand-curves.ts', 'core/reading/calibration.ts', 'core/reading/CALIBRATION.md');
  }
} finally {
  rmSync(workshop, { recursive: true, force: true });
}

/** @param {string[]} written */
function format(...written) {
  execFileSync(process.execPath, [join(ROOT, 'node_modules/oxfmt/bin/oxfmt'), ...written], { cwd: ROOT });
}
