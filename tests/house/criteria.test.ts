import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { testTitles } from './titles.ts';

/** The page of criteria says no more than the tests do, and no less. */
const tests = resolve(import.meta.dirname, '..');
const rows = [
  ...readFileSync(join(tests, 'CRITERIA.md'), 'utf8').matchAll(/^\| CR-([A-Z])(\d+) \| .+ \| ([a-z, ]+) \|$/gm),
].map(([, family = '', number = '', kept = '']) => ({ family, number: Number(number), kept: kept.split(', ') }));
const titles = testTitles();
const byHand = readFileSync(join(tests, 'hand/screen-reader.md'), 'utf8');

function isQuoted(id: string): boolean {
  return titles.some((title) => new RegExp(`\\b${id}\\b`).test(title));
}

test('the page was read, and so were the tests', () => {
  expect(rows.length).toBeGreaterThan(80);
  expect(titles.length).toBeGreaterThan(1000);
});

test('the ids of a family run from one without a gap', () => {
  for (const family of new Set(rows.map((row) => row.family))) {
    const numbers = rows.filter((row) => row.family === family).map(({ number }) => number);
    expect(numbers, family).toEqual(numbers.map((_, place) => place + 1));
  }
});

test('each row is kept in a way that the page explains', () => {
  const ways = new Set(['tested', 'figure', 'hand']);
  expect(rows.filter(({ kept }) => !kept.every((way) => ways.has(way)))).toEqual([]);
});

test('each row marked tested is quoted by a test', () => {
  expect(idsKept('tested').filter((id) => !isQuoted(id))).toEqual([]);
});

test('each id that a test quotes is a row of the page', () => {
  const known = new Set(rows.map(({ family, number }) => `CR-${family}${number}`));
  const quoted = titles.flatMap((title) => title.match(/\bCR-\w+/g) ?? []);
  expect(quoted.length).toBeGreaterThan(200);
  expect(quoted.filter((id) => !known.has(id))).toEqual([]);
});

test('each row marked hand stands on the page of what people must try', () => {
  expect(idsKept('hand').filter((id) => !byHand.includes(`| ${id} |`))).toEqual([]);
});

function idsKept(way: string): string[] {
  return rows.filter(({ kept }) => kept.includes(way)).map(({ family, number }) => `CR-${family}${number}`);
}
