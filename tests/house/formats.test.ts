import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
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
  const table = page.split('| --- | --- |')[1]?.split('\n\n')[0] ?? '';
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
