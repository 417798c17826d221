/**
 * The suites that make up `npm test`, and what their reports say. A suite that ran nothing, or
 * ended without a report, has failed: silence is never a pass.
 *
 * @typedef {{ passed: number, failed: number, skipped: number, troubles: string[], notes?: string[], skips?: import('./skipped.mjs').Skip[] }} Tally `skips` names the skipped
 */
import { existsSync, readFileSync, rmSync } from 'node:fs';

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
 * What failed, and what passed only at the second try, once more at the end, where a log that is cut short still has it.
 * @param {{ name: string, status: string, assertionResults: { status: string, fullName: string, failureMessages?: string[] }[] }[]} files
 */
function namesToTell(files) {
  return files.flatMap(({ name, status, assertionResults }) => {
    const file = fileOf(name);
    if (status === 'failed' && assertionResults.length === 0) return [`Failed: ${file} could not be loaded.`];
    return assertionResults.flatMap(({ status: ended, fullName, failureMessages = [] }) => {
      if (ended === 'failed') return [`Failed: ${file}: ${fullName}`];
      return ended === 'passed' && failureMessages.length > 0
        ? [`Passed only at the second try: ${file}: ${fullName}`]
        : [];
    });
  });
}

/**
 * Counts of the report of the window's tests. An error outside any test counts as a failure. A test
 * that passed only at its second try counts as passed, and how many did is told in `notes`.
 * @param {string} file
 * @returns {Tally}
 */
export function windowTally(file) {
  const found = report(file);
  if (found === undefined) return noReport("The window's tests");
  const { expected, unexpected, flaky, skipped } = found.stats;
  return ranSomething("The window's tests", {
    passed: expected + flaky,
    failed: unexpected + found.errors.length,
    skipped,
    troubles: [],
    skips: found.suites.flatMap((/** @type {WindowSuite} */ suite) => skippedUnder(suite)),
    ...(flaky > 0 ? { notes: [`${flaky} of the window's tests passed only at the second try; see above.`] } : {}),
  });
}

/**
 * @typedef {{ title: string, file: string, tests: { status: string }[] }} WindowTest
 * @typedef {{ title: string, file: string, specs: WindowTest[], suites?: WindowSuite[] }} WindowSuite
 * @param {WindowSuite} suite a file, which has its own name as its title, or a group within
 * @returns {import('./skipped.mjs').Skip[]}
 */
function skippedUnder({ title, file, specs, suites = [] }) {
  const before = title === file ? '' : `${title} `;
  const own = specs.flatMap((spec) =>
    spec.tests
      .filter(({ status }) => status === 'skipped')
      .map(() => ({ file: `tests/${fileOf(spec.file)}`, name: spec.title })),
  );
  return [...own, ...suites.flatMap(skippedUnder)].map((skip) => ({ ...skip, name: `${before}${skip.name}` }));
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
