/**
 * One process of `npm run bench:against`: `node against-turn.mjs BASELINE NOW [later]`, two bundled
 * benchmark files; with `later` the baseline is loaded last, because what is loaded second may sit worse
 * in the memory. Times what both sides measure, in pairs, and writes the ratios as JSON.
 */
import { pathToFileURL } from 'node:url';
import { CLOCKS } from './clocks.mjs';
import { paired } from './regress.mjs';

const PAIRS = 7;
const ROUND_MS = 100;

const [before = '', now = '', order] = process.argv.slice(2);
const first = await measuresOf(order === 'later' ? now : before);
const second = await measuresOf(order === 'later' ? before : now);
const [baseline, current] = order === 'later' ? [second, first] : [first, second];
const found = [];
for (const measure of current) {
  const same = baseline.find(({ name }) => name === measure.name);
  if (same === undefined || measure.clock === 'own') continue;
  const clock = CLOCKS[measure.clock ?? 'cpu'];
  found.push(await paired(same, measure, { pairs: PAIRS, roundMs: ROUND_MS, clock }));
}
for (const { name, clock } of baseline) {
  const isGone = clock !== 'own' && !current.some((measure) => measure.name === name);
  if (isGone) found.push({ name, ratios: [], gone: true });
}
console.log(JSON.stringify(found));

/** @param {string} file @returns {Promise<readonly import('./measure.ts').Measure[]>} */
async function measuresOf(file) {
  /** @type {{ measures: import('./measure.ts').Measures }} */
  const { measures } = await import(pathToFileURL(file).href);
  return typeof measures === 'function' ? await measures() : measures;
}
