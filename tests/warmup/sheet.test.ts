import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rateOf } from '../../core/base/rate.ts';
import { expectValue } from '../../core/base/result.ts';
import { DEAL_KINDS } from '../../core/warmup/deal-kinds.ts';
import { checkPracticeEntry } from '../../core/warmup/history-file.ts';
import { itemOfDeal } from '../../core/warmup/item.ts';
import {
  addAnswer,
  type JudgedPass,
  MOST_PROBLEMS,
  moveProblem,
  problemOf,
  type Sheet,
  spreadOf,
} from '../../core/warmup/sheet.ts';
import { readSheetFile, writeSheetFile } from '../../core/warmup/sheet-file.ts';
import { DEMO_TEXT, tiles } from './demo.ts';

const page = readFileSync(new URL('../../core/warmup/FORMAT.md', import.meta.url), 'utf8');

function sheet(changes: Partial<Sheet> = {}): Sheet {
  return {
    kind: 'windrow.sheet',
    schemaVersion: 1,
    appVersion: '0.1.0',
    id: 'thursday',
    title: 'Thursday class',
    madeAt: '2026-11-25T10:00:00Z',
    zone: 'UTC',
    paper: 'letter',
    card: JSON.parse(DEMO_TEXT),
    problems: [1, 2, 3].map((seed) => problemOf(itemOfDeal({ seed, tiles: 13, kind: 'any' }))),
    ...changes,
  };
}

describe('a sheet file', () => {
  test('gives back the same sheet, and equal sheets give equal bytes', () => {
    fc.assert(
      fc.property(
        fc.string(),
        fc.array(
          fc.record({ seed: fc.nat(), remark: fc.string({ maxLength: 60 }), people: fc.integer({ min: 1, max: 40 }) }),
          { maxLength: MOST_PROBLEMS },
        ),
        (title, made) => {
          const problems = made.map(({ seed, remark, people }) => ({
            ...problemOf(itemOfDeal({ seed, tiles: seed % 2 === 0 ? 13 : 14, kind: 'any' })),
            remark,
            answers: [{ give: 'F 1b 2c', people }],
          }));
          const one = sheet({ title: title.slice(0, 200), problems });
          const text = writeSheetFile(one);
          const read = expectValue(readSheetFile(text));
          expect(read).toEqual(one);
          expect(writeSheetFile(read)).toBe(text);
        },
      ),
      { seed: 1, numRuns: 60 },
    );
  });

  test('V4: fields that this version does not know survive reading and writing', () => {
    const [first, ...rest] = sheet().problems;
    const later = {
      ...sheet({ problems: [{ ...first!, colour: 'grey' } as typeof first & object, ...rest] }),
      room: { wall: 2 },
    };
    expect(JSON.parse(writeSheetFile(expectValue(readSheetFile(JSON.stringify(later)))))).toEqual(later);
  });

  test('V4: one of a newer version is refused with words', () => {
    const text = JSON.stringify({ ...sheet(), schemaVersion: 2 });
    expect(readSheetFile(text)).toMatchObject({ ok: false, problem: { code: 'newer-version' } });
  });

  test.each([
    ['', 'unreadable'],
    ['{', 'unreadable'],
    ['[]', 'unreadable'],
    ['{"kind":"windrow.game"}', 'foreign'],
    [JSON.stringify({ ...sheet(), paper: 'legal' }), 'bad-field'],
    [JSON.stringify({ ...sheet(), problems: Array(31).fill(sheet().problems[0]) }), 'bad-field'],
    [JSON.stringify({ ...sheet(), problems: [{ ...sheet().problems[0], rack: 'FF' }] }), 'bad-field'],
    [
      JSON.stringify({ ...sheet(), problems: [{ ...sheet().problems[0], answers: [{ give: 'Q', people: 1 }] }] }),
      'bad-field',
    ],
  ])('refuses what is no sheet, with a sentence (%#)', (text, code) => {
    const read = readSheetFile(text);
    expect(read).toMatchObject({ ok: false, problem: { code } });
    if (!read.ok) expect(read.problem.message).toMatch(/[.]$/);
  });

  test('D4: cut, flipped or doubled bytes give a sheet or a sentence, never an exception', () => {
    const text = writeSheetFile(sheet());
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(text.length), fc.string({ maxLength: 3 }), (from, to, put) => {
        const read = readSheetFile(text.slice(0, from) + put + text.slice(to));
        if (!read.ok) expect(read.problem.message).toMatch(/[.]$/);
      }),
      { seed: 2, numRuns: 500 },
    );
  });

  test('V1: every example on the page of the practice files opens', () => {
    const sheets = [...page.matchAll(/^```json\n([\s\S]*?)^```$/gm)].map((match) => match[1] ?? '');
    const entries = [...page.matchAll(/^```jsonl\n([\s\S]*?)^```$/gm)].flatMap((match) =>
      (match[1] ?? '').trim().split('\n'),
    );
    expect([sheets.length, entries.length]).toEqual([1, 3]);
    for (const example of sheets) expect(writeSheetFile(expectValue(readSheetFile(example)))).toBe(example);
    for (const entry of entries) expect(checkPracticeEntry(JSON.parse(entry)).ok).toBe(true);
  });

  test('V1: the page names the kinds of deal in the order that codes count on', () => {
    expect(page).toContain(`${DEAL_KINDS.join(', ')}.`);
  });
});

describe('a sheet', () => {
  test('problems move up and down, and stay at the ends', () => {
    const ids = (one: Sheet): string[] => one.problems.map(({ code }) => code ?? '');
    const [a, b, c] = ids(sheet());
    expect(ids(moveProblem(sheet(), 0, 1))).toEqual([b, a, c]);
    expect(ids(moveProblem(sheet(), 2, -1))).toEqual([a, c, b]);
    expect(moveProblem(sheet(), 0, -1).problems).toEqual(sheet().problems);
    expect(moveProblem(sheet(), 2, 1).problems).toEqual(sheet().problems);
  });
});

describe('the answers of a class', () => {
  const judged: JudgedPass[] = [
    { give: 'N 1b 9c', cost: 0, halfWidth: 0.004, now: 0, verdict: 'best' },
    { give: 'N 1b 2b', cost: 0.004, halfWidth: 0.006, now: 0.01, verdict: 'equal' },
    { give: 'FF 1b', cost: 0.06, halfWidth: 0.02, now: 0, verdict: 'costly' },
    { give: 'GR 1b', cost: 0.07, halfWidth: null, now: 0.07, verdict: 'costly' },
  ];

  test('ties count as right, passes nobody chose are left out, and the best one is always there', () => {
    const spread = spreadOf(
      [
        { give: '2b N 1b', people: 5 },
        { give: 'F 1b F', people: 3 },
      ],
      judged,
    );
    expect(spread.people).toBe(8);
    expect(spread.right).toEqual(rateOf(5, 8));
    expect(spread.rows.map(({ give, people }) => [give, people])).toEqual([
      ['N 1b 2b', 5],
      ['FF 1b', 3],
      ['N 1b 9c', 0],
    ]);
  });

  test('no answers, no share', () => {
    expect(spreadOf([], judged)).toMatchObject({ people: 0, right: { share: null } });
  });

  test('the same pass in another order is counted together, and can be taken back', () => {
    const [problem] = sheet().problems;
    const once = addAnswer(problem!, tiles('N 1b 9c'), 'N 1b 9c', 2);
    const twice = addAnswer(once, tiles('9c 1b N'), '9c 1b N', 3);
    expect(twice.answers).toEqual([{ give: 'N 1b 9c', people: 5 }]);
    expect(addAnswer(twice, tiles('9c 1b N'), '', -5).answers).toEqual([]);
  });
});
