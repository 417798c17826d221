import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { LINE_DEFAULTS } from '../../core/card/document.ts';
import { readCardFile, writeCardFile } from '../../core/card/file.ts';
import { readGameFile } from '../../core/game/file/read-game-file.ts';
import { readCollection } from '../../core/journal/collection.ts';
import { readSheetFile } from '../../core/warmup/sheet-file.ts';
import { readAnswerCode } from '../../core/warmup/answer-code.ts';
import { itemOfCode } from '../../core/warmup/problem-code.ts';

/** CR-V1: each example on a page about files is a file that opens. */
const core = resolve(import.meta.dirname, '../../core');
const page = readFileSync(join(core, 'card/FORMAT.md'), 'utf8');

test('CR-V1: every example on the page of the card file opens without a problem', () => {
  const examples = [...page.matchAll(/^```json\n([\s\S]*?)^```$/gm)].map((match) => match[1] ?? '');
  expect(examples.length).toBeGreaterThan(0);
  for (const example of examples) {
    const read = readCardFile(example);
    expect(read).toMatchObject({ ok: true, value: { problems: [] } });
  }
});

test('CR-V1: the groups on that page stand in patterns that open', () => {
  const table = page.split('| group | meaning |\n')[1]?.split('\n\n')[0] ?? '';
  const groups = [...table.matchAll(/^\| (.+?) \|/gm)].flatMap((row) => [...(row[1] ?? '').matchAll(/`([^`]+)`/g)]);
  const named = groups.map((match) => match[1] ?? '');
  expect(named.length).toBeGreaterThan(10);
  for (const group of named) {
    const tiles = group.replace(/(bam|crak|dot|[abc]?[='`]?)$/, '').length;
    const filling = ['FFFFFF', 'FFFFF', 'FFFF', 'FFF', 'FF', 'F'];
    const pattern = [group, ...fill(14 - tiles, filling)].join(' ');
    const file = {
      format: 'windrow.card',
      version: 1,
      title: 't',
      season: 's',
      sections: [{ name: 'n', lines: [{ id: 'l', pattern }] }],
    };
    const read = readCardFile(JSON.stringify(file));
    const problems = read.ok
      ? read.value.problems.filter(({ column }) => column >= 1 && column <= group.length)
      : [read.problem];
    expect(problems, pattern).toEqual([]);
  }
});

/** Groups that hold `tiles` tiles in all. */
function fill(tiles: number, groups: readonly string[]): string[] {
  const group = groups.find((one) => one.length <= tiles);
  return group === undefined ? [] : [group, ...fill(tiles - group.length, groups)];
}

describe('CR-V1: the table of the fields of a line', () => {
  const table = page.split('| field of a line |')[1]?.split('\n\n')[0] ?? '';
  const rows = [...table.matchAll(/^\| `(\w+)` \| (.+?) \| (.+?) \|$/gm)].map(([, name = '', may = '', left = '']) => ({
    name,
    most: Number(/(?:to|most) ([\d,]+)/.exec(may)?.[1]?.replaceAll(',', '')),
    left: left.replaceAll('`', ''),
  }));
  const mostOf = (name: string): number => rows.find((row) => row.name === name)?.most ?? NaN;
  const whole = { id: 'a', pattern: 'FF 111a 222a 333b 444b' };

  function problemsWith(...lines: readonly object[]): string[] {
    const file = { format: 'windrow.card', version: 1, title: '', season: '', sections: [{ name: 'n', lines }] };
    const read = readCardFile(JSON.stringify(file));
    return read.ok ? read.value.problems.map(({ code }) => code) : [read.problem.code];
  }

  test('names every field that is written in an order of its own, and what it is when left out', () => {
    const written = { ...whole, ...LINE_DEFAULTS, or: [], aaa: 1 };
    const document = { format: 'windrow.card', version: 1, sections: [{ lines: [written] }] } as const;
    const text = writeCardFile(document);
    const line: object = JSON.parse(text).sections[0].lines[0];
    // Fields that are not known come last.
    expect([...rows.map(({ name }) => name), 'aaa']).toEqual(Object.keys(line));
    const left = rows.filter(({ name }) => name in LINE_DEFAULTS).map((row) => [row.name, row.left]);
    const values = Object.entries(LINE_DEFAULTS).map(([name, value]) => [name, value === '' ? 'empty' : String(value)]);
    expect(Object.fromEntries(left)).toEqual(Object.fromEntries(values));
    for (const { name } of rows.filter((row) => row.left === 'never'))
      expect(problemsWith({ ...whole, [name]: undefined })).toEqual([`missing-${name}`]);
  });

  test.each([
    ['id', (most: number) => 'i'.repeat(most)],
    ['note', (most: number) => 'n'.repeat(most)],
    ['points', (most: number) => most],
    ['or', (most: number) => Array<string>(most).fill('NNNN EEEE WWWW SS')],
  ])('the limit of %s is true: at it a line opens, beyond it not', (name, make) => {
    const most = mostOf(name);
    expect(most).toBeGreaterThan(0);
    expect(problemsWith({ ...whole, [name]: make(most) })).toEqual([]);
    expect(problemsWith({ ...whole, [name]: make(most + 1) })).toEqual(['wrong-field']);
  });

  test('what else it says is true: whole points from 0, four slides, marks of true and false, ids that differ', () => {
    for (const points of [-1, 2.5, '25']) expect(problemsWith({ ...whole, points })).toEqual(['wrong-field']);
    expect(problemsWith({ ...whole, points: 0 })).toEqual([]);
    for (const name of ['slide', 'slide2']) {
      for (const slide of [0, 1, 2, 3]) expect(problemsWith({ ...whole, [name]: slide })).toEqual([]);
      for (const slide of [-1, 4, '1']) expect(problemsWith({ ...whole, [name]: slide })).toEqual(['wrong-field']);
    }
    for (const name of ['distinct', 'concealed'])
      expect(problemsWith({ ...whole, [name]: 1 })).toEqual(['wrong-field']);
    expect(problemsWith(whole, { ...whole, pattern: 'NNNN EEEE WWWW SS' })).toEqual(['duplicate-id']);
  });
});

describe('a file larger than its page says is left alone unread', () => {
  const isOpen = (read: { readonly ok: boolean }): boolean => read.ok;
  const files = [
    ['core/card/FORMAT.md', (text: string) => isOpen(readCardFile(text))],
    ['core/game/FORMAT.md', (text: string) => isOpen(readGameFile(text))],
    ['core/warmup/FORMAT.md', (text: string) => isOpen(readSheetFile(text))],
    ['core/journal/FORMAT.md', (text: string) => isOpen(readCollection(text))],
  ] as const;

  test.each(files)('%s', (path, opens) => {
    const form = readFileSync(resolve(core, '..', path), 'utf8');
    const most = Number(/more than ([\d,]+) letters/.exec(form)?.[1]?.replaceAll(',', ''));
    const example = /^```json\n([\s\S]*?)^```$/m.exec(form)?.[1] ?? '';
    expect(most).toBeGreaterThan(example.length);
    // Blanks at the end belong to the text. The largest form is not parsed whole here, which would take a gigabyte.
    const within = Math.min(most, 10_000_000);
    expect(opens(example.padEnd(within, ' '))).toBe(true);
    expect(opens(example.padEnd(most + 1, ' '))).toBe(false);
  });
});

test('each code that a page or a comment shows is read: of a deal, of a problem, of an answer to it', () => {
  const { card } = expectValue(readCardFile(readFileSync(resolve(core, '../assets/demo.card.json'), 'utf8')));
  const answered = expectValue(itemOfCode('662-222-22B'));
  const files = ['core', 'main', 'renderer'].flatMap((layer) =>
    readdirSync(resolve(core, '..', layer), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(ts|md)$/.test(name))
      .map((name) => resolve(core, '..', layer, name)),
  );
  const codes = files.flatMap((file) =>
    [...readFileSync(file, 'utf8').matchAll(/\b[2-9A-HJKMNP-Z]{3}(?:-[2-9A-HJKMNP-Z]{2,4}){2,}\b/g)].map(
      ([code]) => code,
    ),
  );
  expect(codes.length).toBeGreaterThanOrEqual(7);
  const unread = codes.filter((code) => !itemOfCode(code).ok && !readAnswerCode(code, [answered], card).ok);
  expect(unread).toEqual([]);
});

test('every page of rules and forms is named in DEVELOPERS.md', () => {
  const guide = readFileSync(resolve(core, '../DEVELOPERS.md'), 'utf8');
  const pages = readdirSync(core, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.md'));
  expect(pages.length).toBeGreaterThan(2);
  const paths = pages.map((name) => `core/${name.replaceAll('\\', '/')}`);
  expect(paths.filter((path) => !guide.includes(path))).toEqual([]);
});
