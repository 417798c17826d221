/**
 * `npm run bench [-- NAME …] [--quick] [--json FILE]`: runs the benchmark files in one process,
 * prints a table and, if asked, writes the figures as JSON. Ends with 1 when a ratio falls short,
 * or when no file was found. The files are bundled first, as the app is, so that what is measured
 * is what is shipped.
 */
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { freshBuild } from '../../main/build/build.mjs';
import { chromiumForTests } from '../chromium.mjs';
import { bundleForNode } from '../bundle.mjs';
import { CLOCKS } from './clocks.mjs';

const ROOT = resolve(import.meta.dirname, '../..');
const ENDING = '.bench.ts';
/** The benchmarks that need a browser; left out, and said to be, where there is none. */
const WINDOW = 'window.bench.ts';

const { values, positionals } = parseArgs({
  options: { quick: { type: 'boolean', default: false }, json: { type: 'string' } },
  allowPositionals: true,
});
await freshBuild();
const chromium = await chromiumForTests({ say: console.log });
if (chromium === undefined) console.log('Skipped: the window is not measured without a Chromium.');
const names = readdirSync(import.meta.dirname)
  .filter((name) => name.endsWith(ENDING))
  .filter((name) => positionals.length === 0 || positionals.some((part) => name.includes(part)))
  .filter((name) => name !== WINDOW || chromium !== undefined)
  .sort();

mkdirSync(join(ROOT, '.cache'), { recursive: true });
const workshop = mkdtempSync(join(ROOT, '.cache/bench-'));
try {
  const files = ['judge.ts', ...names].map((file) => [file.replace(/\.ts$/, ''), join(import.meta.dirname, file)]);
  await bundleForNode(Object.fromEntries(files), workshop);
  process.exitCode = await runAll(workshop);
} finally {
  rmSync(workshop, { recursive: true, force: true });
}

/** @param {string} folder */
async function runAll(folder) {
  /** @type {typeof import('./judge.ts')} */
  const { judge, table, FULL, QUICK } = await load(folder, 'judge');
  /** @type {import('./judge.ts').Figure[]} */
  const figures = [];
  for (const name of names) {
    /** @type {{ measures: import('./measure.ts').Measures, close?: () => Promise<void> }} */
    const { measures, close } = await load(folder, name.replace(/\.ts$/, ''));
    try {
      for (const measure of typeof measures === 'function' ? await measures() : measures) {
        figures.push(await judge(measure, values.quick ? QUICK : FULL, CLOCKS));
      }
    } finally {
      await close?.();
    }
  }
  console.log(table(figures));
  if (values.json !== undefined) writeFileSync(values.json, `${JSON.stringify(report(figures), null, 2)}\n`);
  const short = figures.filter(({ holds }) => !holds).length;
  console.log(`${figures.length} measures in ${names.length} files, ${short} fall short`);
  return figures.length > 0 && short === 0 ? 0 : 1;
}

/** @param {import('./judge.ts').Figure[]} figures */
function report(figures) {
  const machine = { node: process.version, platform: process.platform, processor: cpus()[0]?.model ?? 'unknown' };
  return { machine, quick: values.quick, figures };
}

/** @param {string} folder @param {string} name */
function load(folder, name) {
  return import(pathToFileURL(join(folder, `${name}.js`)).href);
}
