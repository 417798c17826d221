import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { testTitles } from './titles.ts';

/** The page of criteria says no more than the tests do, and no less. */
const tests = resolve(import.meta.dirname, '..');
const rows = [
  ...readFileSync(join(tests, 'CRITERIA.md'), 'utf8').matchAll(/^\| CR-([A-Z])(\d+) \| (.+) \| ([a-z, ]+) \|$/gm),
].map(([, family = '', number = '', asks = '', kept = '']) => ({
  family,
  number: Number(number),
  asks,
  kept: kept.split(', '),
}));
const titles = testTitles();
/** The texts of all tests and what they share, numbers without what only parts their digits. */
const sources = readdirSync(tests, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => readFileSync(join(tests, name), 'utf8').replaceAll(/(?<=\d)[_,](?=\d{3})/g, ''));
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

/** Words that stand for a number in a row. */
const NUMBER_WORDS: Readonly<Record<string, string>> = { 'a thousand': '1000', 'a hundred thousand': '100000' };

/** The numbers that a row names, plain. */
function numbersOf(asks: string): string[] {
  const plain = Object.entries(NUMBER_WORDS)
    .toSorted(([one], [other]) => other.length - one.length)
    .reduce((text, [word, number]) => text.replaceAll(word, number), asks.replaceAll(/`[^`]*`|CR-\w+/g, ''));
  return (plain.match(/\d+(?:[.,]\d+)*/g) ?? []).map((number) => number.replaceAll(',', ''));
}

test('each number of a row that is tested and no figure stands in a file of tests that quotes the row', () => {
  const claimed = rows.filter(({ kept }) => kept.includes('tested') && !kept.includes('figure'));
  const missing = claimed.flatMap(({ family, number, asks }) => {
    const id = `CR-${family}${number}`;
    const quoting = sources.filter((text) => new RegExp(`\\b${id}\\b`).test(text));
    const holds = (wanted: string): boolean =>
      quoting.some((text) => new RegExp(`(?<![\\d.])${wanted}(?!\\d)`).test(text));
    return numbersOf(asks)
      .filter((wanted) => !holds(wanted))
      .map((wanted) => `${id}: ${wanted}`);
  });
  expect(claimed.some(({ asks }) => numbersOf(asks).length > 1)).toBe(true);
  expect(missing).toEqual([]);
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
