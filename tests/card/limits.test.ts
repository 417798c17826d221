import { describe, expect, test } from 'vitest';
import { pointsFrom, readLine } from '../../core/card/line.ts';
import { readCardFile } from '../../core/card/file.ts';
import { parsePattern } from '../../core/card/parse.ts';

const LINE = { id: 'a', pattern: 'FF 2222a 4444b 6666c' };
const letters = (count: number): string => 'x'.repeat(count);
const isGood = (change: object): boolean => readLine({ ...LINE, ...change }).problems.length === 0;

describe('a line of a card', () => {
  test.each<[string, number, (count: number) => object]>([
    ['letters of its id', 80, (count) => ({ id: letters(count) })],
    ['letters of its note', 2000, (count) => ({ note: letters(count) })],
    ['points', 1000, (points) => ({ points })],
    ['further forms', 10, (length) => ({ or: Array.from({ length }, () => LINE.pattern) })],
  ])('may have, as %s, %i and no more', (_, most, changeOf) => {
    expect(isGood(changeOf(most))).toBe(true);
    expect(isGood(changeOf(most + 1))).toBe(false);
  });

  test('has whole points from 0 on, typed ones too', () => {
    expect([0, -1, 24.5].map((points) => isGood({ points }))).toEqual([true, false, false]);
    expect(['0', ' 25 ', '1000', '1001', '-1', ''].map((text) => pointsFrom(text))).toEqual([
      0,
      25,
      1000,
      null,
      null,
      null,
    ]);
  });

  test('has 25 points and slide 0 where its file does not say', () => {
    expect(readLine(LINE)).toMatchObject({ points: 25, slide: 0, slide2: 1 });
  });
});

test('a pattern may have 400 letters and no more', () => {
  expect(parsePattern(LINE.pattern.padEnd(400)).ok).toBe(true);
  expect(parsePattern(LINE.pattern.padEnd(401))).toMatchObject({ ok: false, problem: { code: 'too-long' } });
});

test('a card may have 300 lines and 100 sections, and 4,000,000 letters in its file, and no more', () => {
  const card = (sections: readonly object[]): string =>
    JSON.stringify({ format: 'windrow.card', version: 1, title: 'T', season: 'S', sections });
  const sections = (length: number): object[] => Array.from({ length }, (_, at) => ({ name: `S${at}`, lines: [] }));
  const lines = (length: number): object[] => Array.from({ length }, (_, at) => ({ ...LINE, id: `l${at}` }));
  expect([100, 101].map((count) => readCardFile(card(sections(count))).ok)).toEqual([true, false]);
  expect([300, 301].map((count) => readCardFile(card([{ name: 'S', lines: lines(count) }])).ok)).toEqual([true, false]);
  const small = card([{ name: 'S', lines: [LINE] }]);
  expect([4_000_000, 4_000_001].map((count) => readCardFile(small.padEnd(count)).ok)).toEqual([true, false]);
});

test('a card may have 50,000 ways, and not one more', () => {
  const patterns = ["ww xxx 1111a 11111b'", 'FFFF 1111a 1111b 11c', 'FFFF NNNN EEEE WW'];
  const lines: object[] = [];
  let ways = 0;
  for (const pattern of patterns) {
    const line = { pattern, slide: 1 };
    const { wayCount } = readLine({ id: 'a', ...line });
    for (; ways + wayCount <= 50_000; ways += wayCount) lines.push({ id: `l${lines.length}`, ...line });
  }
  expect(ways).toBe(50_000);
  const read = (all: readonly object[]): boolean =>
    readCardFile(
      JSON.stringify({
        format: 'windrow.card',
        version: 1,
        title: 'T',
        season: '',
        sections: [{ name: 'S', lines: all }],
      }),
    ).ok;
  expect(read(lines)).toBe(true);
  expect(read([...lines, { id: 'more', pattern: 'FFFF NNNN EEEE SS' }])).toBe(false);
});
