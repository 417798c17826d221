import { readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { linesOf } from '../../core/card/card.ts';
import { checkCard, summarizeCard } from '../../core/card/check.ts';
import { addLine, changeLine, moveLine } from '../../core/card/edit.ts';
import { type CardDocument, nameOfLine } from '../../core/card/document.ts';
import { readCard, readCardFile, writeCardFile } from '../../core/card/file.ts';
import { understoodLines } from '../../core/card/line.ts';
import { formatPattern } from '../../core/card/pattern.ts';
import { anyText, pattern, SEED, slide, unknownFields } from './arbitrary.ts';

const GOOD = 'FF 2222a 44a 666a 888a';

function cardText(sections: unknown, other: object = {}): string {
  return JSON.stringify({
    format: 'windrow.card',
    version: 1,
    title: 'Small card',
    season: 'Autumn',
    sections,
    ...other,
  });
}

/** The processor's time, so that other work on the machine does not count. */
function busyMs(since: NodeJS.CpuUsage): number {
  return process.cpuUsage(since).user / 1_000;
}

function problemsOf(sections: unknown): [string, string, string, number][] {
  const { problems } = expectValue(readCardFile(cardText(sections)));
  return problems.map(({ code, section, id, column }) => [code, section, id, column]);
}

const line = fc
  .tuple(pattern, slide, slide, fc.boolean(), fc.integer({ min: 0, max: 100 }), anyText, unknownFields)
  .map(([value, first, second, concealed, points, note, unknown]) => ({
    ...unknown,
    pattern: formatPattern(value),
    slide: first,
    slide2: second,
    concealed,
    points,
    note,
  }));

const card = fc
  .tuple(
    anyText,
    anyText,
    unknownFields,
    fc.array(fc.tuple(anyText, unknownFields, fc.array(line, { maxLength: 2 })), { maxLength: 3 }),
  )
  .map(([title, season, unknown, sections]) => ({
    ...unknown,
    format: 'windrow.card' as const,
    version: 1 as const,
    title,
    season,
    sections: sections.map(([name, extra, lines], section) => ({
      ...extra,
      name,
      lines: lines.map((fields, place) => ({ ...fields, id: `${section}-${place}` })),
    })),
  }));

describe('a card file', () => {
  test('only id and pattern are required in a line; slide is 0, slide2 is 1, points are 25', () => {
    const text = cardText([{ name: 'Only', lines: [{ id: 'one', pattern: "FFFF NEWS 11a' 2222b" }] }]);
    const { card: read, problems } = expectValue(readCardFile(text));
    expect(problems).toEqual([]);
    expect(read.sections[0]?.lines[0]).toMatchObject({
      id: 'one',
      section: 'Only',
      concealed: false,
      points: 25,
      note: '',
    });
    expect(read.sections[0]?.lines[0]?.ways).toHaveLength(9 * 6);
  });

  test('is written and read back to an equal document, unknown fields at every level among it', () => {
    fc.assert(
      fc.property(card, (document) => {
        const text = writeCardFile(document);
        const read = readCardFile(text);
        if (!read.ok) expect(read.problem.code).toBe('too-many-ways');
        else {
          expect(JSON.parse(JSON.stringify(read.value.document))).toEqual(JSON.parse(JSON.stringify(document)));
          expect(read.value.problems).toEqual([]);
          expect(writeCardFile(read.value.document)).toBe(text);
        }
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  test('unknown fields survive read, edit and write', () => {
    fc.assert(
      fc.property(unknownFields, unknownFields, unknownFields, (top, middle, low) => {
        const text = cardText([{ ...middle, name: 'One', lines: [{ ...low, id: 'a', pattern: GOOD }] }], top);
        const { document } = expectValue(readCardFile(text));
        const edited = changeLine(document, { section: 0, line: 0 }, { points: 40 });
        const expected: unknown = JSON.parse(text.replace('"id":"a"', '"points":40,"id":"a"'));
        expect(JSON.parse(writeCardFile(edited))).toEqual(expected);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  test('reads the same from its plain document as from its text', () => {
    fc.assert(
      fc.property(card, (document) => {
        const text = writeCardFile(document);
        expect(readCard(JSON.parse(text))).toEqual(readCardFile(text));
      }),
      { seed: SEED, numRuns: 100 },
    );
    for (const other of [undefined, null, 5, 'FF', [], {}, { format: 'windrow.card', version: 2 }])
      expect(readCard(other).ok).toBe(false);
  });

  test('a byte order mark does no harm, and none is written', () => {
    const text = cardText([]);
    expect(readCardFile(`\uFEFF${text}`).ok).toBe(true);
    expect(writeCardFile(expectValue(readCardFile(`\uFEFF${text}`)).document).codePointAt(0)).toBe('{'.codePointAt(0));
  });
});

describe('a problem tells section, line id and column, and the rest of the card opens', () => {
  test('a bad line among good ones', () => {
    const lines = [
      { id: 'a', pattern: GOOD },
      { id: 'b', pattern: 'FF 2222q 44a 666 888a' },
      { id: 'c', pattern: GOOD },
    ];
    expect(problemsOf([{ name: 'Stairs', lines }])).toEqual([
      ['unexpected-suffix', 'Stairs', 'b', 8],
      ['missing-suit', 'Stairs', 'b', 17],
    ]);
    const { card: read } = expectValue(readCardFile(cardText([{ name: 'Stairs', lines }])));
    expect(linesOf(read).map(({ id }) => id)).toEqual(['a', 'c']);
  });

  test('a line whose groups do not hold 14 tiles says how many', () => {
    const { problems } = expectValue(readCardFile(cardText([{ name: 'S', lines: [{ id: 'a', pattern: 'FF 222a' }] }])));
    expect(problems[0]).toMatchObject({
      section: 'S',
      id: 'a',
      column: 8,
      message: expect.stringContaining('5 tiles, not 14'),
    });
  });

  test('the summary lists good lines with their ways and problems with section, id, column and message', () => {
    const lines = [
      { id: 'a', pattern: GOOD },
      { id: 'b', pattern: 'FF' },
    ];
    const file = expectValue(readCardFile(cardText([{ name: 'S', lines }])));
    expect(summarizeCard(file)).toEqual({
      title: 'Small card',
      season: 'Autumn',
      ways: 3,
      lines: [{ id: 'a', section: 'S', pattern: GOOD, ways: 3 }],
      problems: [{ section: 'S', id: 'b', column: 3, message: 'The groups hold 2 tiles, not 14: add 12 more.' }],
    });
    expect(understoodLines(file.document).map(({ id, place }) => [id, place])).toEqual([
      ['a', { section: 0, line: 0 }],
    ]);
  });

  test('a section without a name is named by its place', () => {
    const { card: read } = expectValue(readCardFile(cardText([{ lines: [{ id: 'a', pattern: GOOD }] }])));
    expect(read.sections[0]?.name).toBe('Section 1');
    expect(problemsOf([{ name: 5, lines: [] }])).toEqual([['wrong-field', 'Section 1', '', 0]]);
  });

  test('a line is named by its section and its place as printed, and by the section alone where it is the only line', () => {
    const good = Array.from({ length: 23 }, (_, place) => ({ id: `id-${place + 1}`, pattern: GOOD }));
    // The second line can't be used, and still counts.
    const lines = good.map((each, place) => (place === 1 ? { ...each, pattern: 'FF' } : each));
    const { card: read, document } = expectValue(
      readCardFile(cardText([{ name: 'Stairs', lines }, { lines: [{ id: 'alone', pattern: GOOD }] }])),
    );
    const nameOf = (id: string): string | undefined => linesOf(read).find((each) => each.id === id)?.name;
    const ends = [1, 3, 4, 11, 12, 13, 21, 22, 23].map((place) => nameOf(`id-${place}`)?.replace('Stairs, ', ''));
    expect(ends.join()).toBe('1st line,3rd line,4th line,11th line,12th line,13th line,21st line,22nd line,23rd line');
    expect(nameOf('alone')).toBe('Section 2');
    for (const { id, name } of linesOf(read)) expect(nameOfLine(document, id)).toBe(name);
    expect(nameOfLine(document, 'id-2')).toBe('Stairs, 2nd line');
    expect(nameOfLine(document, 'nowhere')).toBeUndefined();
  });

  test('after a line is moved or put in, every line is named by its new place, in problems too', () => {
    const lines = ['a', 'b', 'c'].map((id) => ({ id, pattern: id === 'b' ? 'FF' : GOOD }));
    const { document } = expectValue(readCardFile(cardText([{ name: 'Stairs', lines }])));
    const names = (changed: CardDocument): string[] => {
      const { card: read, problems } = expectValue(checkCard(changed));
      return [...linesOf(read), ...problems].map(({ id, name }) => `${id}: ${name}`);
    };
    expect(names(document)).toEqual(['a: Stairs, 1st line', 'c: Stairs, 3rd line', 'b: Stairs, 2nd line']);
    const moved = moveLine(document, { section: 0, line: 2 }, { section: 0, line: 0 });
    expect(names(moved)).toEqual(['c: Stairs, 1st line', 'a: Stairs, 2nd line', 'b: Stairs, 3rd line']);
    const longer = addLine(moved, { section: 0, line: 1 }, { id: 'd', pattern: GOOD });
    expect(names(longer).join()).toBe(
      'c: Stairs, 1st line,d: Stairs, 2nd line,a: Stairs, 3rd line,b: Stairs, 4th line',
    );
  });

  test('an id that stands twice: the first line stays', () => {
    const sections = [
      { name: 'One', lines: [{ id: 'a', pattern: GOOD }] },
      { name: 'Two', lines: [{ id: 'a', pattern: GOOD }] },
    ];
    expect(problemsOf(sections)).toEqual([['duplicate-id', 'Two', 'a', 0]]);
  });

  test('an id that stands twice is told with both places, so that the line can be found', () => {
    const lines = ['a', 'b', 'a', 'a'].map((id) => ({ id, pattern: GOOD }));
    const { problems } = expectValue(readCardFile(cardText([{ name: 'One', lines }])));
    expect(problems.map(({ message }) => message)).toEqual([
      'The id "a" stands at line 1 of One and again at line 3 of One: give line 3 of One another one.',
      'The id "a" stands at line 1 of One and again at line 4 of One: give line 4 of One another one.',
    ]);
  });

  test.each([
    [{ pattern: GOOD }, 'missing-id'],
    [{ id: 7, pattern: GOOD }, 'missing-id'],
    [{ id: ' ', pattern: GOOD }, 'missing-id'],
    [{ id: 'x'.repeat(200), pattern: GOOD }, 'wrong-field'],
    [{ id: 'a' }, 'missing-pattern'],
    [{ id: 'a', pattern: 14 }, 'missing-pattern'],
    [{ id: 'a', pattern: GOOD, slide: 4 }, 'wrong-field'],
    [{ id: 'a', pattern: GOOD, slide2: '1' }, 'wrong-field'],
    [{ id: 'a', pattern: GOOD, concealed: 1 }, 'wrong-field'],
    [{ id: 'a', pattern: GOOD, points: -5 }, 'wrong-field'],
    [{ id: 'a', pattern: GOOD, points: 2.5 }, 'wrong-field'],
    [{ id: 'a', pattern: GOOD, points: null }, 'wrong-field'],
    [{ id: 'a', pattern: GOOD, note: {} }, 'wrong-field'],
  ])('%j: %s', (fields, code) => {
    expect(problemsOf([{ name: 'S', lines: [fields] }]).map(([found]) => found)).toEqual([code]);
  });

  test.each([
    ['sections that are a text', 'lines?'],
    ['a section that is a number', [5]],
    ['lines that are no list', [{ name: 'S', lines: { id: 'a', pattern: GOOD } }]],
    ['a line that is null', [{ name: 'S', lines: [null] }]],
  ])('%s become a line that shows them, so that nothing is lost', (_, sections) => {
    const { problems, document } = expectValue(readCardFile(cardText(sections)));
    expect(problems.length).toBeGreaterThan(0);
    expect(document.sections.flatMap(({ lines }) => lines)).toHaveLength(1);
  });

  test('a title that is no text is a problem, a missing one is not', () => {
    expect(expectValue(readCardFile(cardText([], { title: 3 }))).problems[0]).toMatchObject({
      code: 'wrong-title',
      section: '',
      id: '',
    });
    expect(expectValue(readCardFile(cardText([], { title: undefined }))).problems).toEqual([]);
  });
});

describe('a file is refused as a whole, with a reason, only if nothing of it can be used', () => {
  test.each([
    ['', 'not-a-card'],
    ['5', 'not-a-card'],
    ['null', 'not-a-card'],
    ['[]', 'not-a-card'],
    ['{"format":"windrow.card","version":1,"sections":[', 'not-a-card'],
    [JSON.stringify({ format: 'other', version: 1 }), 'not-a-card'],
    [JSON.stringify({ format: 'windrow.card', version: 2 }), 'newer-version'],
    [JSON.stringify({ format: 'windrow.card', version: '1' }), 'unknown-version'],
    [JSON.stringify({ format: 'windrow.card' }), 'unknown-version'],
    [' '.repeat(5_000_000), 'too-large'],
    ['['.repeat(1_000_000), 'not-a-card'],
    [cardText([], { x: JSON.parse(`${'['.repeat(60)}${']'.repeat(60)}`) as unknown }), 'not-a-card'],
    ['"'.repeat(1_000_000), 'not-a-card'],
  ])('%#: %.40s', (text, code) => {
    const read = readCardFile(text);
    expect(read.ok ? '' : read.problem.code).toBe(code);
  });

  const many = (count: number, text: string): unknown[] =>
    Array.from({ length: count }, (_, place) => ({ id: `l${place}`, pattern: text, slide: 1 }));

  test('300 lines open, 301 are refused', () => {
    expect(readCardFile(cardText([{ name: 'S', lines: many(300, GOOD) }])).ok).toBe(true);
    const read = readCardFile(cardText([{ name: 'S', lines: many(301, GOOD) }]));
    expect(read.ok ? '' : read.problem.code).toBe('too-many-lines');
  });

  test('100 sections open, 101 are refused', () => {
    const empty = (count: number) => Array.from({ length: count }, (_, place) => ({ name: `S${place}`, lines: [] }));
    expect(readCardFile(cardText(empty(100))).ok).toBe(true);
    const read = readCardFile(cardText(empty(101)));
    expect(read.ok ? '' : read.problem.code).toBe('too-many-sections');
  });

  test('50,000 ways open, more are refused before they are written out', () => {
    // 12 ordered winds × 9 × 9 shifts × 6 suit pairs = 5,832 ways a line
    const big = "ww xxx 1111a 11111b'";
    expect(
      expectValue(readCardFile(cardText([{ name: 'S', lines: many(8, big) }]))).card.sections[0]?.lines[7]?.ways,
    ).toHaveLength(5_832);
    const started = process.cpuUsage();
    const read = readCardFile(cardText([{ name: 'S', lines: many(300, big) }]));
    expect(read.ok ? '' : read.problem.code).toBe('too-many-ways');
    expect(busyMs(started)).toBeLessThan(1_000);
  });

  test('300 lines that cost the most and have no way open within a second', () => {
    const costly = "1bam 1bam 1bam 1bam 1bam 1a 1b' 1c D w x FFF";
    const started = process.cpuUsage();
    const read = readCardFile(cardText([{ name: 'S', lines: many(300, costly) }]));
    expect(read.ok ? read.value.card.sections[0]?.lines[0]?.ways : undefined).toEqual([]);
    expect(busyMs(started)).toBeLessThan(1_000);
  });
});

describe('the demo card', () => {
  const text = readFileSync(new URL('../../assets/demo.card.json', import.meta.url), 'utf8');
  const { card: demo, document, problems } = expectValue(readCardFile(text));

  test('has at least 48 lines in 8 sections with at least 900 ways, and no problem', () => {
    const summary = summarizeCard({ card: demo, problems });
    expect(problems).toEqual([]);
    expect(summary.lines.length).toBeGreaterThanOrEqual(48);
    expect(demo.sections.length).toBeGreaterThanOrEqual(8);
    expect(summary.ways).toBeGreaterThanOrEqual(900);
    expect(summary.ways).toBe(summary.lines.reduce((sum, { ways }) => sum + ways, 0));
    expect(summary.lines.every(({ ways }) => ways > 0)).toBe(true);
  });

  test('uses every part of the grammar, pairs-only and concealed hands, quints and points', () => {
    const patterns = linesOf(demo)
      .map((one) => one.pattern)
      .join(' ');
    for (const part of [
      /F/,
      /NEWS/,
      /ww/,
      /xx/,
      /N/,
      /GG/,
      /RR/,
      /00/,
      /\bD+\b/,
      /Da/,
      /Db/,
      /Dc/,
      /bam/,
      /crak/,
      /dot/,
      /=/,
      /'/,
      /([1-9])\1{4}/,
      /([1-9])\1{5}/,
    ]) {
      expect(patterns).toMatch(part);
    }
    const fields = document.sections.flatMap(({ lines }) => lines);
    expect(new Set(fields.map(({ slide: first }) => first))).toEqual(new Set([0, 1, 2, 3]));
    expect(new Set(fields.map(({ slide2: second }) => second)).size).toBeGreaterThan(1);
    expect(fields.some(({ concealed }) => concealed === true)).toBe(true);
    expect(Math.min(...linesOf(demo).map(({ points }) => points))).toBe(4);
    expect(Math.max(...linesOf(demo).map(({ points }) => points))).toBe(15);
  });

  test('is written as it stands', () => expect(writeCardFile(document)).toBe(text));
});

describe('a line printed with "or", and numbers that differ', () => {
  const OR = { id: 'twins-1', pattern: "FF 11a 11b 11c 55a' 55b' 55c'", or: ['FFFF 1111a 111b 111c'], slide: 1 };

  test('are read, counted together, and written back in their place', () => {
    const text = cardText([{ name: 'Twins', lines: [{ ...OR, distinct: true }] }]);
    const { card, document, problems } = expectValue(readCardFile(text));
    expect(problems).toEqual([]);
    // 36 pairs of numbers, and 9 numbers with the kong in one of three suits.
    expect(linesOf(card)[0]?.ways).toHaveLength(36 + 27);
    expect(understoodLines(document)).toMatchObject([{ ways: 63, distinct: true, or: [{ length: 4 }] }]);
    const written = writeCardFile(document);
    expect(Object.keys(JSON.parse(written).sections[0].lines[0])).toEqual(['id', 'pattern', 'or', 'slide', 'distinct']);
    expect(expectValue(readCardFile(written)).document).toEqual(document);
  });

  test.each([
    ['a further form with a fault', { ...OR, or: ['FFFF 1111a 111b', 'FF 11q'] }, 'In "or" 1: '],
    ['no list', { ...OR, or: 'FFFF 1111a 111b 111c' }, "The list of further patterns of this line can't be read"],
    ['a list of other things', { ...OR, or: [5] }, "The list of further patterns of this line can't be read"],
    ['a list without end', { ...OR, or: Array(11).fill(OR.pattern) }, 'use a list of 10 texts at most'],
    ['a mark that is no yes or no', { ...OR, distinct: 'yes' }, 'The mark of different numbers'],
  ])('%s is a problem of that line alone, in one sentence', (_, bad, words) => {
    const lines = [bad, { id: 'good', pattern: GOOD }];
    const { card, problems } = expectValue(readCardFile(cardText([{ name: 'Twins', lines }])));
    expect(problems[0]).toMatchObject({ section: 'Twins', id: 'twins-1', message: expect.stringContaining(words) });
    expect(linesOf(card).map(({ id }) => id)).toEqual(['good']);
  });
});
