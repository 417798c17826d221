import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import windowTests from '../playwright.config.ts';
import nodeTests, { ALONE } from '../vitest.config.ts';

const ROOT = resolve(import.meta.dirname, '../..');

test('each step of .ci/run has a limit of time', () => {
  const steps = readFileSync(resolve(ROOT, '.ci/run'), 'utf8')
    .split('\n')
    .filter((line) => line.includes('npm ') && !line.startsWith('#'));
  expect(steps.length).toBeGreaterThan(6);
  for (const step of steps) expect(step).toMatch(/^limited \d+ npm /);
});

test('no test is tried twice', () => {
  expect(windowTests.retries).toBe(0);
  expect(nodeTests.test?.retry).toBe(0);
});

test('files that put other modules in the place of some run in a world of their own', () => {
  const files = readdirSync(resolve(ROOT, 'tests'), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.test.ts'))
    .map((file) => `tests/${file.replaceAll('\\', '/')}`);
  const alone = files.filter((file) => /^vi\.(?:do)?mock\(/im.test(readFileSync(resolve(ROOT, file), 'utf8')));
  expect(alone.length).toBeGreaterThan(2);
  expect(alone.filter((file) => !ALONE.some((pattern) => file.startsWith(pattern.split('*')[0] ?? '')))).toEqual([]);
});

test.skipIf(process.platform === 'win32')('a step that hangs is ended, with a sentence that names it', () => {
  const { status, stderr } = inShell('limited 0.005 sleep 60');
  expect(status).toBe(124);
  expect(stderr).toBe('"sleep 60" was given up after 0.005 minutes.\n');
});

test.skipIf(process.platform === 'win32')('a step that ends by itself ends as it would alone', () => {
  expect(inShell("limited 1 sh -c 'exit 3'")).toMatchObject({ status: 3, stderr: '' });
  expect(inShell('limited 1 true && echo on')).toMatchObject({ status: 0, stdout: 'on\n' });
  expect(inShell('limited 1 false; echo on'), 'a failed step ends the whole').toMatchObject({ status: 1, stdout: '' });
});

function inShell(command: string) {
  return spawnSync('sh', ['-c', `set -eu; . .ci/limited; ${command}`], { cwd: ROOT, encoding: 'utf8' });
}
