import { describe, expect, test } from 'vitest';
import { HORIZON_DAYS } from '../../core/base/spacing.ts';
import { SURENESS } from '../../core/warmup/estimate.ts';
import { FEWEST_FOR_TREND } from '../../core/warmup/progress.ts';
import { MOST_WAITING } from '../../core/warmup/returns.ts';
import { MOST_ITEMS } from '../../core/warmup/session.ts';
import { codesIn } from '../../core/warmup/class-codes.ts';
import { formatCode } from '../../core/warmup/code-signs.ts';
import type { Target } from '../../core/reading/targets.ts';
import { lessonOf } from '../../core/warmup/lesson.ts';
import { checkPracticeEntry } from '../../core/warmup/history-file.ts';
import { readSheetFile, writeSheetFile } from '../../core/warmup/sheet-file.ts';
import { type ClassAnswer, MOST_PROBLEMS, type Sheet, type SheetProblem } from '../../core/warmup/sheet.ts';
import { classSheet } from './demo.ts';

const letters = (count: number): string => 'x'.repeat(count);
const blanks = (count: number): string => ' '.repeat(count);

describe('an entry of the practice history', () => {
  const ASKED = {
    rack: '',
    gone: '',
    seat: 'East',
    code: '',
    give: '',
    blind: 0,
    stops: false,
    keeps: '',
    aims: [],
    why: '',
    card: '',
  };
  const ANSWER = {
    type: 'answer',
    id: 'a',
    day: 1,
    kind: 'any',
    step: 'right',
    cost: 0,
    miss: null,
    verdict: 'best',
    asked: ASKED,
  };
  const THROW = {
    type: 'throw',
    id: 't',
    day: 1,
    seed: 1,
    card: '',
    table: 'quick',
    tile: '',
    cost: 0,
    verdict: 'best',
  };
  const MISS = { type: 'miss', id: 'm', day: 1, kind: 'any', step: 'right', cost: 0, source: '' };

  test('is in order as it stands here', () => {
    for (const entry of [ANSWER, THROW, MISS]) expect(checkPracticeEntry(entry)).toMatchObject({ ok: true });
  });

  test.each<[string, number, (words: string) => object]>([
    ['the rack', 100, (rack) => ({ ...ANSWER, asked: { ...ASKED, rack } })],
    ['the tiles gone', 100, (gone) => ({ ...ANSWER, asked: { ...ASKED, gone } })],
    ['the code', 60, (code) => ({ ...ANSWER, asked: { ...ASKED, code } })],
    ['the pass', 100, (give) => ({ ...ANSWER, asked: { ...ASKED, give } })],
    ['the tiles kept', 100, (keeps) => ({ ...ANSWER, asked: { ...ASKED, keeps } })],
    ['an aim', 300, (aim) => ({ ...ANSWER, asked: { ...ASKED, aims: [aim] } })],
    ['the reason', 2000, (why) => ({ ...ANSWER, asked: { ...ASKED, why } })],
    ['the mark of its card', 100, (card) => ({ ...ANSWER, asked: { ...ASKED, card } })],
    ['the card of a throw', 100, (card) => ({ ...THROW, card })],
    ['the tile thrown', 10, (tile) => ({ ...THROW, tile })],
    ['the source of a miss', 80, (source) => ({ ...MISS, source })],
    ['the id', 64, (id) => ({ ...MISS, id })],
  ])('may have, for %s, %i letters and no more', (_, most, entryOf) => {
    expect(checkPracticeEntry(entryOf(letters(most))).ok).toBe(true);
    expect(checkPracticeEntry(entryOf(letters(most + 1))).ok).toBe(false);
  });

  test('may have 100 aims and no more', () => {
    const aims = (count: number): object => ({
      ...ANSWER,
      asked: { ...ASKED, aims: Array.from({ length: count }, String) },
    });
    expect(checkPracticeEntry(aims(100)).ok).toBe(true);
    expect(checkPracticeEntry(aims(101)).ok).toBe(false);
  });
});

describe('a sheet', () => {
  const isRead = (change: Partial<Sheet>): boolean => readSheetFile(writeSheetFile(classSheet(change))).ok;
  const PROBLEM: SheetProblem = {
    rack: '',
    gone: '',
    step: 'right',
    seat: 'East',
    remark: '',
    question: '',
    answers: [],
  };
  const [FIRST = PROBLEM] = classSheet().problems as SheetProblem[];
  const withProblem = (change: Partial<SheetProblem>): boolean => isRead({ problems: [{ ...FIRST, ...change }] });
  const withAnswer = (change: Partial<ClassAnswer>): boolean =>
    withProblem({ answers: [{ give: 'F 1b 2c', people: 1, ...change }] });

  test.each<[string, number, (count: number) => boolean]>([
    ['letters of its title', 200, (count) => isRead({ title: letters(count) })],
    ['letters of a version', 40, (count) => isRead({ appVersion: letters(count) })],
    ['letters of a code', 20, (count) => withProblem({ code: letters(count) })],
    ['letters of a remark', 2000, (count) => withProblem({ remark: letters(count) })],
    ['letters of a question', 500, (count) => withProblem({ question: letters(count) })],
    ['letters of tiles', 100, (count) => withAnswer({ give: `F 1b 2c${blanks(count - 7)}` })],
    ['letters of an aim', 200, (count) => withAnswer({ aim: letters(count) })],
    ['people of an answer', 1000, (people) => withAnswer({ people })],
    [
      'answers',
      300,
      (length) => withProblem({ answers: Array.from({ length }, () => ({ give: 'F 1b 2c', people: 1 })) }),
    ],
    ['problems', 30, (length) => isRead({ problems: Array.from({ length }, () => FIRST) })],
  ])('may have, as %s, %i and no more', (_, most, read) => {
    expect(read(most)).toBe(true);
    expect(read(most + 1)).toBe(false);
  });

  test('counts at least one person for an answer', () => {
    expect([withAnswer({ people: 1 }), withAnswer({ people: 0 })]).toEqual([true, false]);
  });

  test('is not looked at beyond 900,000 letters', () => {
    const text = writeSheetFile(classSheet());
    expect(readSheetFile(text.padEnd(900_000)).ok).toBe(true);
    expect(readSheetFile(text.padEnd(900_001)).ok).toBe(false);
  });
});

test('CR-G6, CR-R6: what is promised of practice in numbers', () => {
  expect({ MOST_ITEMS, MOST_WAITING, FEWEST_FOR_TREND, MOST_PROBLEMS, HORIZON_DAYS }).toEqual({
    MOST_ITEMS: 12,
    MOST_WAITING: 20,
    FEWEST_FOR_TREND: 30,
    MOST_PROBLEMS: 30,
    HORIZON_DAYS: 90,
  });
  // From a guess to as good as sure.
  expect(SURENESS).toEqual([0.5, 0.7, 0.9, 0.99]);
});

test('a code has 30 signs at most, its check among them', () => {
  expect(formatCode(31n ** 28n, 1).replaceAll('-', '')).toHaveLength(30);
  expect(() => formatCode(31n ** 29n, 1)).toThrow('too large');
});

test('groups of up to four signs with blanks between are one code, longer ones stand alone', () => {
  expect(codesIn('Ada: KZW XV9 NJTV')).toEqual(['KZW XV9 NJTV']);
  expect(codesIn('KZW9X NJT')).toEqual(['KZW9X', 'NJT']);
});

test.each([
  [0.34, 'This rack is open: Weather is a little ahead of the others.'],
  [0.36, 'This rack leans to Weather.'],
  [0.59, 'This rack leans to Weather.'],
  [0.61, 'This rack clearly leans to Weather.'],
])('of a lean of %d it is said: %s', (share, words) => {
  const line = { section: 'Weather', name: 'Weather, 1st line' } as Target['line'];
  const best = { line, away: 3, reach: 0.2, way: 0, uses: new Uint8Array(36) };
  expect(lessonOf([{ section: 'Weather', share }], { hands: [best], by: null }).leans).toBe(
    `${words} Its best hand is Weather, 1st line, 3 tiles away.`,
  );
});
