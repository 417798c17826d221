import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { type Listed, SKIPPED, skipTroubles } from '../skipped.mjs';

const ROOT = resolve(import.meta.dirname, '../..');
/** Places where a test is skipped, but for those that only a run with changed sources skips (`tests/reference/rounds.ts`). */
const SKIPS = /\b(?:test|it|describe)\.(?:skipIf|runIf|skip|todo|fixme|fails)\((?!IN_FULL\b)/g;

const holding = { words: 'it rains', holds: () => true };
const listed: Listed = { file: 'tests/a.test.ts', name: 'real … (of two) starts', reason: holding };
const skip = { file: listed.file, name: 'real rain (none here) (of two) starts' };

test('a test that is skipped as the list says is no trouble, nor is one that ran after all', () => {
  expect(skipTroubles([skip], [listed])).toEqual([]);
  expect(skipTroubles([], [listed])).toEqual([]);
});

test('a test that the list does not have is trouble: of another name, or in another file', () => {
  for (const stranger of [
    { ...skip, name: 'real rain of two starts' },
    { ...skip, name: `${skip.name} again` },
    { ...skip, file: 'tests/b.test.ts' },
  ]) {
    expect(skipTroubles([skip, stranger], [listed])).toEqual([
      `Skipped, though tests/skipped.mjs does not list it: ${stranger.file}: ${stranger.name}`,
    ]);
  }
});

test('more of a name than the list says is trouble', () => {
  const twice = [skip, { ...skip, name: 'real snow (of two) starts' }];
  expect(skipTroubles(twice, [listed])).toEqual([
    '2 were skipped where tests/skipped.mjs has 1: tests/a.test.ts: real … (of two) starts',
  ]);
  expect(skipTroubles(twice, [{ ...listed, most: 2 }])).toEqual([]);
  expect(skipTroubles([...twice, skip], [{ ...listed, most: 2 }])).toHaveLength(1);
});

test('a test that is skipped though its reason does not hold is trouble', () => {
  const dry = { ...listed, reason: { words: 'it rains', holds: () => false } };
  expect(skipTroubles([skip], [dry])).toEqual([
    'Skipped, though it does not hold that it rains: tests/a.test.ts: real … (of two) starts',
  ]);
  expect(skipTroubles([], [dry])).toEqual([]);
});

test('every place where a test is skipped has its entry, and every entry its test', () => {
  const files = readdirSync(join(ROOT, 'tests'), { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.(?:test|spec)\.ts$/.test(path))
    .map((path) => `tests/${path.replaceAll('\\', '/')}`);
  expect(files.length).toBeGreaterThan(200);
  const source = (file: string): string => readFileSync(join(ROOT, file), 'utf8');
  const own = 'tests/house/skipped.test.ts';
  const places = files
    .filter((file) => file !== own)
    .flatMap((file) => (source(file).match(SKIPS) ?? []).map(() => file));
  expect(places.toSorted()).toEqual(SKIPPED.map(({ file }) => file).toSorted());
  for (const { file, name } of SKIPPED) {
    for (const part of name.split('…')) expect(source(file)).toContain(part.trim());
  }
});
