/**
 * `npm run mutate -- --numbers [PART …]`: changes each number at the top of a source, one at a time, in a copy of the
 * tree; the tests of its folder that reach the source must notice. What was found is kept in `.cache`, so that a run
 * can be stopped and resumed; a change that no test noticed is tried again once its tests are other ones.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { changesOf, constantsOf } from './constants.mjs';
import { filesBelow, markOf, OneByOne } from './one-by-one.mjs';
import { sourcePath } from './parts.mjs';

/**
 * @typedef {{ file: string, name: string, line: number, was: string, became: number, by: string | null, tests: string }} Tried
 */

const ROOT = resolve(import.meta.dirname, '../..');
const KNOWN = join(ROOT, '.cache/mutation/numbers.json');
const TABLE = join(ROOT, '.cache/mutation/numbers.txt');
/** Numbers that a fit wrote: whether they fit is said by the reports of the fits, not by tests. */
const FITS = ['chance/demo-fit', 'chance/pooled', 'others/fitted'];
const SHAPES = ['base-model', 'calibration', 'hand-curves', 'reach-shape'].map((name) => `reading/${name}`);
const FITTED = new Set([...FITS, ...SHAPES].map((name) => `core/${name}.ts`));
/** A test that takes longer is not run for each number. */
const LONGEST_MS = 15_000;
const CORE = 'base tiles game card journal review exchange reading warmup';
const OTHERS = 'main/desk main/files main/host renderer/session renderer/worker renderer/backup';
const USUAL = `${CORE} ${OTHERS}`.split(' ');

/** @param {readonly string[]} named the parts @returns {Promise<boolean>} whether all was noticed */
export async function tryNumbers(named) {
  const parts = (named.length === 0 ? USUAL : named).map((part) => sourcePath(part));
  mkdirSync(dirname(KNOWN), { recursive: true });
  /** @type {Record<string, Tried>} */
  const known = existsSync(KNOWN) ? JSON.parse(readFileSync(KNOWN, 'utf8')) : {};
  const runner = OneByOne.begin('mutation-numbers');
  const tried = [];
  for (const file of parts.flatMap(filesBelow)) {
    if (file.endsWith('.ts') && !FITTED.has(file)) tried.push(...(await tryFile(file, known, runner)));
  }
  runner.end();
  writeFileSync(TABLE, tried.map((each) => `${lineOf(each)}\n`).join(''));
  console.log(summaryOf(tried));
  return tried.length > 0 && tried.every(({ by }) => by !== null);
}

/** @param {string} file @param {Record<string, Tried>} known @param {OneByOne} runner @returns {Promise<Tried[]>} */
async function tryFile(file, known, runner) {
  const source = readFileSync(file, 'utf8');
  const tests = runner.testsOf(file);
  const mark = runner.markOf(tests);
  const tried = [];
  for (const { name, line, start, end, value } of constantsOf(file, source)) {
    for (const became of changesOf(value)) {
      const key = `${file} ${markOf(source)} ${start} ${became}`;
      const before = known[key];
      if (before !== undefined && (before.by !== null || before.tests === mark)) {
        tried.push(before);
        continue;
      }
      const by = await runner.try(file, source.slice(0, start) + String(became) + source.slice(end), tests, LONGEST_MS);
      const found = { file, name, line, was: source.slice(start, end), became, by, tests: mark };
      known[key] = found;
      writeFileSync(KNOWN, JSON.stringify(known));
      console.log(lineOf(found));
      tried.push(found);
    }
  }
  return tried;
}

function lineOf(/** @type {Tried} */ { file, line, name, was, became, by }) {
  const verdict = by === null ? 'SURVIVED' : `noticed by ${by.replace(/^tests\//, '')}`;
  return `${file}:${line} ${name} ${was} → ${became}: ${verdict}`;
}

/** The score of each file, then all that survived. @param {readonly Tried[]} tried */
export function summaryOf(tried) {
  const survived = tried.filter(({ by }) => by === null);
  const files = [...new Set(tried.map(({ file }) => file))].map((file) => {
    const all = tried.filter((each) => each.file === file);
    const noticed = all.filter(({ by }) => by !== null).length;
    return `${String(noticed).padStart(5)} of ${String(all.length).padEnd(5)} ${file}`;
  });
  const sum = `${tried.length - survived.length} of ${tried.length} noticed.`;
  return [...files, '', sum, ...survived.map(lineOf)].join('\n');
}
