/**
 * The suites that make up `npm test`, and what their reports say. A suite that ran nothing, or
 * ended without a report, has failed: silence is never a pass.
 *
 * @typedef {{ passed: number, failed: number, skipped: number, troubles: string[], notes?: string[], skips?: import('./skipped.mjs').Skip[] }} Tally `skips` names the skipped
 */
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { stripVTControlCharacters } from 'node:util';

/** Reads a report file once; one left over from an earlier run must be removed before. @param {string} file */
function report(file) {
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : undefined;
}

/** @param {string} file */
export function removeReport(file) {
  rmSync(file, { force: true });
}

/**
 * Counts of a report of tests without a window. A file that could not be loaded counts as one failure.
 * @param {string} file
 * @param {string} suite whose report it is
 * @returns {Tally}
 */
export function nodeTally(file, suite = 'The tests without a window') {
  const found = report(file);
  if (found === undefined) return noReport(suite);
  const broken = found.testResults.filter(
    (/** @type {{ status: string, assertionResults: unknown[] }} */ one) =>
      one.status === 'failed' && one.assertionResults.length === 0,
  ).length;
  return ranSomething(suite, {
    passed: found.numPassedTests,
    failed: found.numFailedTests + broken,
    skipped: found.numPendingTests + found.numTodoTests,
    troubles: [],
    notes: namesToTell(found.testResults),
    skips: skippedIn(found.testResults),
  });
}

/** A test's file, from the top folder. @param {string} path */
function fileOf(path) {
  return path.replaceAll('\\', '/').replace(/^.*\/tests\//, 'tests/');
}

/** @param {{ name: string, assertionResults: { status: string, fullName: string }[] }[]} files */
function skippedIn(files) {
  return files.flatMap(({ name, assertionResults }) =>
    assertionResults
      .filter(({ status }) => status !== 'passed' && status !== 'failed')
      .map(({ fullName }) => ({ file: fileOf(name), name: fullName })),
  );
}

/**
 * What failed, once more at the end, where a log that is cut short still has it.
 * @param {{ name: string, status: string, assertionResults: { status: string, fullName: string, failureMessages?: string[] }[] }[]} files
 */
function namesToTell(files) {
  return files.flatMap(({ name, status, assertionResults }) => {
    const file = fileOf(name);
    if (status === 'failed' && assertionResults.length === 0) return [`Failed: ${file} could not be loaded.`];
    return assertionResults
      .filter((one) => one.status === 'failed')
      .map(({ fullName, failureMessages = [] }) => failedLine(file, fullName, failureMessages[0]));
  });
}

/** @param {string} file @param {string} name @param {string | undefined} why the first line of it is told */
function failedLine(file, name, why = '') {
  // Playwright colours what it says.
  const [first = ''] = stripVTControlCharacters(why).split('\n');
  return `Failed: ${file}: ${name}${first === '' ? '' : ` (${first})`}`;
}

/**
 * Counts of the report of the window's tests. An error outside any test counts as a failure, and so does a pass at a
 * second try, for nothing is tried twice.
 * @param {string} file
 * @returns {Tally}
 */
export function windowTally(file) {
  const found = report(file);
  if (found === undefined) return noReport("The window's tests");
  const { expected, unexpected, flaky, skipped } = found.stats;
  /** @type {Ended[]} */
  const tests = found.suites.flatMap((/** @type {WindowSuite} */ suite) => testsUnder(suite));
  return ranSomething("The window's tests", {
    passed: expected,
    failed: unexpected + flaky + found.errors.length,
    skipped,
    troubles: [],
    skips: tests.filter(({ status }) => status === 'skipped').map(({ file: path, name }) => ({ file: path, name })),
    notes: tests
      .filter(({ status }) => status === 'unexpected' || status === 'flaky')
      .map(({ file: path, name, why }) => failedLine(path, name, why)),
  });
}

/**
 * @typedef {{ status: string, results?: { error?: { message?: string } }[] }} WindowRun
 * @typedef {{ title: string, file: string, tests: WindowRun[] }} WindowTest
 * @typedef {{ title: string, file: string, specs: WindowTest[], suites?: WindowSuite[] }} WindowSuite
 * @typedef {{ file: string, name: string, status: string, why: string | undefined }} Ended
 * @param {WindowSuite} suite a file, which has its own name as its title, or a group within
 * @returns {Ended[]}
 */
function testsUnder({ title, file, specs, suites = [] }) {
  const before = title === file ? '' : `${title} `;
  const own = specs.flatMap((spec) =>
    spec.tests.map(({ status, results = [] }) => ({
      file: `tests/${fileOf(spec.file)}`,
      name: `${before}${spec.title}`,
      status,
      why: results[0]?.error?.message,
    })),
  );
  const within = suites.flatMap((suite) => testsUnder(suite));
  return [...own, ...within.map((one) => ({ ...one, name: `${before}${one.name}` }))];
}

/** @param {string} suite @returns {Tally} */
function noReport(suite) {
  return { passed: 0, failed: 0, skipped: 0, troubles: [`${suite} ended without a report.`] };
}

/** @param {string} suite @param {Tally} tally @returns {Tally} */
function ranSomething(suite, tally) {
  return tally.passed + tally.failed > 0 ? tally : { ...tally, troubles: [`${suite} ran nothing.`] };
}

/** @param {readonly Tally[]} tallies @returns {Tally} */
export function sum(tallies) {
  return {
    passed: tallies.reduce((total, { passed }) => total + passed, 0),
    failed: tallies.reduce((total, { failed }) => total + failed, 0),
    skipped: tallies.reduce((total, { skipped }) => total + skipped, 0),
    troubles: tallies.flatMap(({ troubles }) => troubles),
    notes: tallies.flatMap(({ notes }) => notes ?? []),
    skips: tallies.flatMap(({ skips }) => skips ?? []),
  };
}
