import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { DEAL_KINDS } from '../../core/warmup/deal-kinds.ts';
import { checkPracticeEntry, ENTRY_FIELDS } from '../../core/warmup/history-file.ts';
import { itemOfDeal } from '../../core/warmup/item.ts';
import { MOST_ANSWERS, MOST_PROBLEMS, PROBLEM_FIELDS, problemOf, SHEET_FIELDS } from '../../core/warmup/sheet.ts';
import { readSheetFile, writeSheetFile } from '../../core/warmup/sheet-file.ts';
import { limitsOf, limitsTold } from '../reference/limits.ts';
import { classSheet as sheet } from './demo.ts';

const page = readFileSync(new URL('../../core/warmup/FORMAT.md', import.meta.url), 'utf8');

describe('the page of the files of practice', () => {
  const named = (text: string | undefined): string[] => [...(text ?? '').matchAll(/`(\w+)`/g)].map(([, name]) => name!);
  const [sheets, entries] = page.split('## The practice history');
  test('it names every field of a sheet, of a problem and of an answer', () => {
    const fields = { ...SHEET_FIELDS.entries, ...PROBLEM_FIELDS.entries };
    expect(named(sheets)).toEqual(expect.arrayContaining([...Object.keys(fields), 'give', 'people']));
  });
  test('it names every limit of a sheet, and of an entry', () => {
    const limits = limitsOf({ ...SHEET_FIELDS.entries, ...PROBLEM_FIELDS.entries });
    const { problems, answers, ...told } = Object.fromEntries(limitsTold(page, 'The sheet'));
    expect(told).toEqual(Object.fromEntries(limits));
    expect([problems, answers]).toEqual([MOST_PROBLEMS, MOST_ANSWERS]);
    const ofEntries = new Map<string, number>();
    for (const fields of Object.values(ENTRY_FIELDS))
      for (const each of limitsOf(fields.entries)) ofEntries.set(...each);
    expect(limitsTold(page, 'The practice history')).toEqual(ofEntries);
    // How many a list may hold is no limit of its schema.
    const answer = {
      type: 'answer',
      id: 'a',
      day: 1,
      kind: 'any',
      step: 'right',
      cost: 0,
      miss: null,
      verdict: 'best',
    };
    const asked = { rack: '', gone: '', seat: 'East', give: '', blind: 0, stops: false, keeps: '', why: '', card: '' };
    const reads = (count: number): boolean =>
      checkPracticeEntry({ ...answer, asked: { ...asked, aims: Array<string>(count).fill('line:a') } }).ok;
    expect(page).toContain('| `aims` | 300 letters each, 100 of them |');
    expect([reads(100), reads(101)]).toEqual([true, false]);
  });
  test('it names every field of what was asked', () => {
    const asked = ENTRY_FIELDS.answer.entries.asked.wrapped.entries;
    const line = entries?.split('\n').find((each) => each.startsWith('`asked` has ')) ?? '';
    expect(named(line).filter((name) => name !== 'asked')).toEqual(expect.arrayContaining(Object.keys(asked)));
  });
  test('it names every field of each type of entry', () => {
    const common = named(entries?.split('| `type`')[0]);
    for (const [type, fields] of Object.entries(ENTRY_FIELDS)) {
      const row = entries?.split('\n').find((line) => line.startsWith(`| \`${type}\``));
      expect([...common, ...named(row)]).toEqual(expect.arrayContaining(Object.keys(fields.entries)));
    }
  });
});

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

  test('CR-V4: fields that this version does not know survive reading and writing', () => {
    const [first, ...rest] = sheet().problems;
    const later = {
      ...sheet({ problems: [{ ...first!, colour: 'grey' } as typeof first & object, ...rest] }),
      room: { wall: 2 },
    };
    expect(JSON.parse(writeSheetFile(expectValue(readSheetFile(JSON.stringify(later)))))).toEqual(later);
  });

  test('CR-V4: one of a newer version is refused with words', () => {
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

  test('CR-D4: cut, flipped or doubled bytes give a sheet or a sentence, never an exception', () => {
    const text = writeSheetFile(sheet());
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(text.length), fc.string({ maxLength: 3 }), (from, to, put) => {
        const read = readSheetFile(text.slice(0, from) + put + text.slice(to));
        if (!read.ok) expect(read.problem.message).toMatch(/[.]$/);
      }),
      { seed: 2, numRuns: 500 },
    );
  });

  test('CR-V1: every example on the page of the practice files opens', () => {
    const sheets = [...page.matchAll(/^```json\n([\s\S]*?)^```$/gm)].map((match) => match[1] ?? '');
    const entries = [...page.matchAll(/^```jsonl\n([\s\S]*?)^```$/gm)].flatMap((match) =>
      (match[1] ?? '').trim().split('\n'),
    );
    expect([sheets.length, entries.length]).toEqual([1, 3]);
    for (const example of sheets) expect(writeSheetFile(expectValue(readSheetFile(example)))).toBe(example);
    for (const entry of entries) expect(checkPracticeEntry(JSON.parse(entry)).ok).toBe(true);
  });

  test('CR-V1: the page names the kinds of deal in the order that codes count on', () => {
    expect(page).toContain(`${DEAL_KINDS.join(', ')}.`);
  });
});

describe('a sheet file with one thing wrong', () => {
  const said = (text: string): string => {
    const read = readSheetFile(text);
    return read.ok ? 'nothing' : read.problem.message;
  };

  test.each([
    ['appVersion', 1, 'must be words, at most 40 letters'],
    ['id', 'a b', 'must be 1 to 64 letters, digits and dashes'],
    ['id', 7, 'must be 1 to 64 letters, digits and dashes'],
    ['title', 'x'.repeat(201), 'must be words, at most 200 letters'],
    ['madeAt', 'yesterday', 'must be a time such as 2026-11-25T19:30:00Z'],
    ['paper', 'legal', 'must be one of letter, a4'],
    ['card', [], 'must be a card'],
    ['card', undefined, 'must be a card'],
    ['problems', {}, 'must be a list of at most 30 problems'],
  ])('CR-J4: "%s" of %s', (field, value, wrong) => {
    expect(said(JSON.stringify({ ...sheet(), [field]: value }))).toBe(`This sheet can't be read: "${field}" ${wrong}.`);
  });

  test.each([
    ['rack', 5, '"rack" must be tiles.'],
    ['rack', 'F '.repeat(51), '"rack" must be tiles.'],
    [
      'rack',
      '5',
      '"rack" is no row of tiles: The 5 at place 1 has no suit: write b (bams), c (craks) or d (dots) after it.',
    ],
    ['rack', 'FF N', 'South has 13 tiles, but these are 3.'],
    ['gone', 'J', 'A joker is never passed: take it off the tiles given.'],
    ['seat', 'Middle', '"seat" must be one of East, South, West, North.'],
    ['answers', 'N 0 1b', '"answers" must be a list of at most 300 answers.'],
    ['answers', Array(301).fill(null), '"answers" must be a list of at most 300 answers.'],
    ['answers', ['N 0 1b'], '"answers" has an answer that is not in order: it is not an answer.'],
    [
      'answers',
      [{ give: 'b', people: 1 }],
      '"answers" has an answer that is not in order: "give" is no row of tiles: The "b" at place 1 has no number before it: write a tile such as 5b, or G, R or 0 for a dragon.',
    ],
    [
      'answers',
      [{ give: 'N', people: 0 }],
      '"answers" has an answer that is not in order: "people" must be a whole number from 1 to 1000.',
    ],
    [
      'answers',
      [{ give: 'N', people: 1001 }],
      '"answers" has an answer that is not in order: "people" must be a whole number from 1 to 1000.',
    ],
  ])('CR-J4: "%s" of the second problem: %s', (field, value, wrong) => {
    const [first, second, third] = sheet().problems;
    const text = JSON.stringify({ ...sheet(), problems: [first, { ...second, [field]: value }, third] });
    expect(said(text)).toBe(`Problem 2 of this sheet is not in order: ${wrong}`);
    expect(readSheetFile(text)).toMatchObject({ problem: { code: 'bad-field', at: 1 } });
  });

  test('CR-J4: a problem that is none', () => {
    const text = JSON.stringify({ ...sheet(), problems: ['FF N'] });
    expect(said(text)).toBe('Problem 1 of this sheet is not in order: it is not a problem.');
  });

  test.each([undefined, 0, '1'])(
    'CR-J4: a version that no sheet has, %j, is not taken for this one',
    (schemaVersion) => {
      expect(said(JSON.stringify({ ...sheet(), schemaVersion }))).toBe('This sheet does not say which version it is.');
    },
  );

  test('CR-J4: a text far larger than any sheet is not looked at', () => {
    const text = writeSheetFile(sheet());
    expect(readSheetFile(text.padEnd(900_000)).ok).toBe(true);
    expect(said(text.padEnd(900_001))).toBe('This file is damaged or is no sheet: choose another one.');
  });

  test('a mark of the byte order in front, as some editors put it, does no harm', () => {
    expect(expectValue(readSheetFile(`\uFEFF${writeSheetFile(sheet())}`))).toEqual(sheet());
  });
});
