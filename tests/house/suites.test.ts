import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { nodeTally, sum, windowTally } from '../suites.mjs';

let folder = '';
const nothing = { numPassedTests: 0, numFailedTests: 0, numPendingTests: 0, numTodoTests: 0, testResults: [] };

function reportOf(content: unknown): string {
  const file = join(folder, 'report.json');
  writeFileSync(file, JSON.stringify(content));
  return file;
}

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'windrow-suites-'));
});

afterEach(() => rmSync(folder, { recursive: true }));

test('passed, failed and skipped are counted, what failed is named; a file that could not be loaded is a failure', () => {
  const broken = { name: '/x/tests/a.test.ts', status: 'failed', assertionResults: [] };
  const one = {
    name: '/x/tests/b.test.ts',
    status: 'failed',
    assertionResults: [
      { status: 'failed', fullName: 'a sum adds up' },
      { status: 'passed', fullName: 'a sum begins', failureMessages: [] },
      { status: 'passed', fullName: 'a sum ends', failureMessages: ['too slow'] },
    ],
  };
  const report = { ...nothing, numPassedTests: 5, numFailedTests: 1, numPendingTests: 2, testResults: [broken, one] };
  expect(nodeTally(reportOf(report))).toEqual({
    passed: 5,
    failed: 2,
    skipped: 2,
    troubles: [],
    notes: [
      'Failed: tests/a.test.ts could not be loaded.',
      'Failed: tests/b.test.ts: a sum adds up',
      'Passed only at the second try: tests/b.test.ts: a sum ends',
    ],
  });
});

test('an error outside any test is a failure; a pass at the second try is counted and told', () => {
  const report = { stats: { expected: 4, unexpected: 1, flaky: 1, skipped: 3 }, errors: [{}] };
  expect(windowTally(reportOf(report))).toEqual({
    passed: 5,
    failed: 2,
    skipped: 3,
    troubles: [],
    notes: ["1 of the window's tests passed only at the second try; see above."],
  });
});

test('a suite that ran nothing, or left no report, is trouble', () => {
  expect(nodeTally(reportOf(nothing)).troubles).toEqual(['The tests without a window ran nothing.']);
  expect(nodeTally(join(folder, 'none.json')).troubles).toEqual(['The tests without a window ended without a report.']);
  const idle = { stats: { expected: 0, unexpected: 0, flaky: 0, skipped: 9 }, errors: [] };
  expect(windowTally(reportOf(idle)).troubles).toEqual(["The window's tests ran nothing."]);
});

test('the sum keeps every trouble', () => {
  const one = { passed: 1, failed: 2, skipped: 3, troubles: ['a'] };
  expect(sum([one, { ...one, troubles: ['b'] }])).toEqual({
    passed: 2,
    failed: 4,
    skipped: 6,
    troubles: ['a', 'b'],
    notes: [],
  });
});
