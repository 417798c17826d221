/**
 * `npm run growth`: measures what cards of 500 to 50,000 ways cost, each in a process of its own,
 * prints a line for each, and writes the table (GROWTH.md beside this file) and the picture
 * (assets/growth.svg). A minute of one core.
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { bundleForNode } from '../bundle.mjs';

const ROOT = resolve(import.meta.dirname, '../..');
mkdirSync(join(ROOT, '.cache'), { recursive: true });
const workshop = mkdtempSync(join(ROOT, '.cache/growth-'));
try {
  await bundleForNode(
    ['growth.ts', 'growth-report.ts'].map((file) => join(import.meta.dirname, file)),
    workshop,
  );
  /** @type {typeof import('./growth-report.ts')} */
  const { growthPage, growthPlot } = await import(pathToFileURL(join(workshop, 'growth-report.js')).href);
  /** @type {typeof import('./growth.ts')} */
  const { SIZES } = await import(pathToFileURL(join(workshop, 'growth.js')).href);
  const costs = SIZES.map(measure);
  const machine = `${cpus()[0]?.model ?? 'an unknown processor'}, Node ${process.version}`;
  writeFileSync(join(import.meta.dirname, 'GROWTH.md'), growthPage(costs, machine));
  writeFileSync(join(ROOT, 'assets/growth.svg'), growthPlot(costs));
} finally {
  rmSync(workshop, { recursive: true, force: true });
}

/** @param {number} ways @returns {import('./growth.ts').Cost} */
function measure(ways) {
  const url = pathToFileURL(join(workshop, 'growth.js')).href;
  const work = `import { costOf } from ${JSON.stringify(url)}; console.log(JSON.stringify(costOf(${ways})));`;
  const told = execFileSync(process.execPath, ['--input-type=module', '--eval', work], { cwd: ROOT, encoding: 'utf8' });
  console.log(told.trim());
  return JSON.parse(told);
}
