import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Skip } from '../skipped.mjs';
import { nodeTally, sum, windowTally } from '../suites.mjs';

let folder = '';
const nothing = { numPassedTests: 0, numFailedTests: 0, numPendingTests: 0, numTodoTests: 0, testResults: [] };
const noneSkipped: Skip[] = [];

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
      { status: 'failed', fullName: 'a sum adds up', failureMessages: ['Error: 3 is not 4\n  at line 5'] },
      { status: 'passed', fullName: 'a sum begins', failureMessages: [] },
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
      'Failed: tests/b.test.ts: a sum adds up (Error: 3 is not 4)',
    ],
    skips: noneSkipped,
  });
});

test('an error outside any test is a failure, and so is a pass at a second try; what failed is named, with why', () => {
  const file = 'window/c.spec.ts';
  const spec = (title: string, status: string, message?: string): unknown => ({
    title,
    file,
    tests: [{ status, results: [{ error: { message } }] }],
  });
  const group = {
    title: 'in a group',
    file,
    specs: [spec('it opens', 'unexpected', '\u001B[31mError: shut\u001B[39m\nmore')],
  };
  const suites = [{ title: file, file, specs: [spec('alone', 'flaky'), spec('too', 'expected')], suites: [group] }];
  const report = { stats: { expected: 4, unexpected: 1, flaky: 1, skipped: 3 }, suites, errors: [{}] };
  expect(windowTally(reportOf(report))).toEqual({
    passed: 4,
    failed: 3,
    skipped: 3,
    troubles: [],
    notes: [
      'Failed: tests/window/c.spec.ts: alone',
      'Failed: tests/window/c.spec.ts: in a group it opens (Error: shut)',
    ],
    skips: noneSkipped,
  });
});

test('what was skipped is told by its file and its whole name, without a window and in one', () => {
  const assertionResults = [
    { status: 'skipped', fullName: 'a sum ends' },
    { status: 'pending', fullName: 'a sum waits' },
    { status: 'todo', fullName: 'a sum to come' },
    { status: 'passed', fullName: 'a sum begins' },
  ];
  const testResults = [{ name: '/x/tests/a/b.test.ts', status: 'passed', assertionResults }];
  expect(nodeTally(reportOf({ ...nothing, numPassedTests: 1, testResults })).skips).toEqual([
    { file: 'tests/a/b.test.ts', name: 'a sum ends' },
    { file: 'tests/a/b.test.ts', name: 'a sum waits' },
    { file: 'tests/a/b.test.ts', name: 'a sum to come' },
  ]);
  const file = 'window/c.spec.ts';
  const spec = (title: string, status: string): unknown => ({ title, file, tests: [{ status }] });
  const group = { title: 'in a group', file, specs: [spec('it opens', 'skipped'), spec('it shuts', 'flaky')] };
  const suites = [{ title: file, file, specs: [spec('alone', 'skipped'), spec('too', 'expected')], suites: [group] }];
  const stats = { expected: 1, unexpected: 0, flaky: 1, skipped: 2 };
  expect(windowTally(reportOf({ stats, suites, errors: [] })).skips).toEqual([
    { file: 'tests/window/c.spec.ts', name: 'alone' },
    { file: 'tests/window/c.spec.ts', name: 'in a group it opens' },
  ]);
});

test('a suite that ran nothing, or left no report, is trouble', () => {
  expect(nodeTally(reportOf(nothing)).troubles).toEqual(['The tests without a window ran nothing.']);
  expect(nodeTally(join(folder, 'none.json')).troubles).toEqual(['The tests without a window ended without a report.']);
  const idle = { stats: { expected: 0, unexpected: 0, flaky: 0, skipped: 9 }, suites: [], errors: [] };
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
    skips: noneSkipped,
  });
});

test('the sum keeps the name of every test that was skipped', () => {
  const one = { passed: 1, failed: 0, skipped: 1, troubles: [] };
  const [first, second] = [
    { file: 'tests/a.test.ts', name: 'a' },
    { file: 'tests/b.test.ts', name: 'b' },
  ] satisfies Skip[];
  expect(sum([{ ...one, skips: [first!] }, one, { ...one, skips: [second!] }]).skips).toEqual([first, second]);
});
