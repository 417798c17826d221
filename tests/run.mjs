/**
 * `npm test`: builds the app, runs the tests without a window and then those in a real Chromium,
 * and closes with one line: `N passed, N failed, N skipped`. Ends with 1 on any failure, when a
 * suite ran nothing, and when a test was skipped that may not be (skipped.mjs).
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { freshBuild } from '../main/build/build.mjs';
import { ADVICE, chromiumForTests } from './chromium.mjs';
import { skipTroubles } from './skipped.mjs';
import { nodeTally, removeReport, sum, windowTally } from './suites.mjs';

const ROOT = resolve(import.meta.dirname, '..');
const REPORTS = join(ROOT, '.cache/reports');

mkdirSync(REPORTS, { recursive: true });
const chromium = await chromiumForTests({ say: console.log });
await freshBuild();
const total = sum([...runNodeTests(), chromium === undefined ? noChromium() : runWindowTests()]);
for (const note of total.notes ?? []) console.log(note);
const troubles = [...total.troubles, ...skipTroubles(total.skips ?? [])];
for (const trouble of troubles) console.error(trouble);
console.log(`${total.passed} passed, ${total.failed} failed, ${total.skipped} skipped`);
process.exitCode = total.failed === 0 && troubles.length === 0 ? 0 : 1;

/** The tests of the desk and the shell, which must run every branch of the storage (CR-D1), and then all others. */
function runNodeTests() {
  const storage = ['main/desk/**/*.ts', 'main/files/**/*.ts'].map((files) => `--coverage.include=${files}`);
  return [
    runVitest('The tests of main', 'main', ['tests/main', '--coverage', ...storage]),
    runVitest('The other tests without a window', 'others', ['--exclude', 'tests/main/**']),
  ];
}

/** @param {string} suite @param {string} name of its report @param {string[]} args */
function runVitest(suite, name, args) {
  const file = join(REPORTS, `${name}.json`);
  removeReport(file);
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`];
  const ended = run('vitest/vitest.mjs', ['run', '--config', 'tests/vitest.config.ts', ...reporters, ...args]);
  return withExit(nodeTally(file, suite), ended, suite);
}

function runWindowTests() {
  const file = join(REPORTS, 'window.json');
  removeReport(file);
  process.env['PLAYWRIGHT_JSON_OUTPUT_NAME'] = file;
  const ended = run('@playwright/test/cli.js', [
    'test',
    '--config',
    'tests/playwright.config.ts',
    '--reporter=line,json',
  ]);
  return withExit(windowTally(file), ended, "The window's tests");
}

/** @returns {import('./suites.mjs').Tally} */
function noChromium() {
  return { passed: 0, failed: 0, skipped: 0, troubles: [ADVICE] };
}

/**
 * A runner that ends badly without a failed test has found trouble of another kind.
 * @param {import('./suites.mjs').Tally} tally
 * @param {number | null} code
 * @param {string} suite
 */
function withExit(tally, code, suite) {
  if (code === 0 || tally.failed > 0 || tally.troubles.length > 0) return tally;
  return { ...tally, troubles: [`${suite} ended with code ${code ?? 'none'} though no test failed; see above.`] };
}

/** @param {string} tool a file in node_modules @param {string[]} args */
function run(tool, args) {
  const command = [join(ROOT, 'node_modules', tool), ...args];
  return spawnSync(process.execPath, command, { cwd: ROOT, stdio: 'inherit' }).status;
}
