/**
 * `npm run mutate [-- PART …] [--tests NAME …] [--jobs N] [--all] [--from FILE]`: changes the sources at many
 * places, one at a time; the tests must notice. A PART is a folder or a file of `core` (`plan`, `plan/race.ts`) or of
 * `main` (`main/desk`, `main/files/durable.ts`). Without one it takes reading, plan and table. The tests are those of
 * the parts' own folders unless `--tests` names others, as patterns below `tests` without their ending (`main/desk*`);
 * those of `main` leave out what takes long (see parts.mjs). What was found before is kept in `.cache`, and only what changed since is tried again; `--all` tries
 * everything; `--again` tries what no test noticed once more, with all tests of the parts (see again.mjs). Closes with the score of each file and writes every change that no test noticed to
 * `.cache/mutation/PARTS.survivors.txt`. Ends with 1 under 90 %. `--from FILE` only shows the report of an earlier run.
 * `--numbers` changes the numbers at the top of the sources instead, also those of `renderer` (see numbers.mjs);
 * `--faults` puts in the faults of a list (see faults.mjs).
 */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { tryAgain } from './again.mjs';
import { tryFaults } from './faults.mjs';
import { tryNumbers } from './numbers.mjs';
import { sourcePath, testNames, unneededFolders } from './parts.mjs';
import { scores, scoreTable, survivorText } from './score.mjs';

const ROOT = resolve(import.meta.dirname, '../..');
const USUAL = ['reading', 'plan', 'table'];
const NEEDED = 90;

const { values, positionals } = parseArgs({
  options: {
    tests: { type: 'string', multiple: true, default: [] },
    jobs: { type: 'string', default: '2' },
    all: { type: 'boolean', default: false },
    from: { type: 'string' },
    again: { type: 'boolean', default: false },
    numbers: { type: 'boolean', default: false },
    faults: { type: 'boolean', default: false },
  },
  allowPositionals: true,
});
if (values.faults) process.exit((await tryFaults(positionals)) ? 0 : 1);
if (values.numbers) process.exit((await tryNumbers(positionals)) ? 0 : 1);
const parts = (positionals.length === 0 ? USUAL : positionals).map(sourcePath);
const name = nameOfRun(parts);
const folder = join(ROOT, '.cache/mutation');
const report = values.from ?? join(folder, `${name}.json`);
mkdirSync(folder, { recursive: true });
if (values.from === undefined) await mutate();
if (values.again) again();
show();

/** A short name for the files of a run, the same each time for the same parts. @param {readonly string[]} paths */
function nameOfRun(paths) {
  const whole = paths
    .map((part) => part.replace(/^core\//, ''))
    .join('-')
    .replaceAll('/', '.');
  const mark = createHash('sha256').update(whole).digest('hex').slice(0, 8);
  return whole.length <= 80 ? whole : `${whole.slice(0, 60)}-${mark}`;
}

async function mutate() {
  const missing = parts.find((part) => !existsSync(join(ROOT, part)));
  if (missing !== undefined) throw new Error(`There is no ${missing}: name a folder or a file of core or main.`);
  // Read by vitest.config.ts, in this process and in those that Stryker starts.
  process.env.WINDROW_MUTATE = JSON.stringify(values.tests.length > 0 ? values.tests : testNames(parts));
  const { Stryker } = await import('@stryker-mutator/core');
  await new Stryker({
    configFile: 'tests/mutation/stryker.config.json',
    mutate: parts.map((part) => (part.endsWith('.ts') ? part : `${part}/**/*.ts`)),
    ignorePatterns: ['dist', '.cache', ...unneededFolders(parts)],
    concurrency: Number(values.jobs),
    incremental: true,
    incrementalFile: join('.cache/mutation', `${name}.known.json`),
    force: values.all,
    jsonReporter: { fileName: report },
    tempDirName: `.cache/stryker-${name}`,
    thresholds: { high: 95, low: NEEDED, break: null },
  }).runMutationTest();
}

/** Changes that no test noticed, with all tests of the parts. */
function again() {
  process.env.WINDROW_MUTATE = JSON.stringify(testNames(parts));
  const found = JSON.parse(readFileSync(report, 'utf8'));
  tryAgain(found, console.log);
  writeFileSync(report, JSON.stringify(found));
}

function show() {
  const found = JSON.parse(readFileSync(report, 'utf8'));
  const files = scores(found);
  writeFileSync(join(folder, `${name}.survivors.txt`), survivorText(found));
  console.log(scoreTable(files));
  const total = files.at(-1);
  process.exitCode = total !== undefined && total.tried > 0 && total.score >= NEEDED ? 0 : 1;
}
