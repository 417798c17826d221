import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { POOLED } from '../../core/chance/pooled.ts';
import { REACH_SHAPE } from '../../core/reading/reach-shape.ts';

/** The page of outside sources says no more than the tests do, and the page of measured figures no more than the pages. */
const HOUSE = resolve(import.meta.dirname, '../..');
const PAGE = readFileSync(join(HOUSE, 'tests/REFERENCES.md'), 'utf8');
const [held = '', measured = ''] = PAGE.split('# What was measured');

function rowsOf(text: string): string[][] {
  const lines = text.split('\n').filter((line) => /^\| (?!what \||page \||---)/.test(line));
  return lines.map((line) => line.slice(2, -2).split(' | '));
}

/** A file with its paragraphs on one line each. */
function flat(path: string): string {
  return readFileSync(join(HOUSE, path), 'utf8').replaceAll(/\s+/g, ' ');
}

describe('a source outside', () => {
  const rows = rowsOf(held).map(([what = '', source = '', lookedUp = '', quoted = '', file = '']) => ({
    what,
    source,
    lookedUp,
    quoted: quoted.replaceAll('`', ''),
    file,
  }));

  test('was read from the page', () => {
    expect(rows.length).toBeGreaterThan(30);
    for (const row of rows) expect(Object.values(row).every((cell) => cell !== '')).toBe(true);
  });

  test.each(rows)('$what: $file quotes $quoted', ({ quoted, file }) => {
    expect(existsSync(join(HOUSE, file))).toBe(true);
    // Not by toContain, which would print the whole file.
    expect(flat(file).includes(quoted)).toBe(true);
  });

  test.each(['Newcombe', 'Agresti and Min', 'Cepeda', 'Marsaglia', 'Wilson', 'Abramowitz', 'Brier', 'Barlow'])(
    'that the sources credit has a row: %s',
    (name) => {
      const files = ['core', 'tests'].flatMap((layer) =>
        readdirSync(join(HOUSE, layer), { recursive: true, encoding: 'utf8' })
          .filter((path) => path.endsWith('.ts') && !path.includes('references.test'))
          .map((path) => `${layer}/${path}`),
      );
      expect(files.some((path) => flat(path).includes(name))).toBe(true);
      expect(held.includes(name)).toBe(true);
    },
  );
});

test('the help says of the chance what the calibration found: the worst moment of a card left out, taken up', () => {
  const moments = [...flat('core/chance/CALIBRATION.md').matchAll(/\| [−+]([\d.]+) at \w+ \([−+]/g)].map(([, by]) =>
    Number(by),
  );
  expect(moments.length).toBeGreaterThan(20);
  expect(Math.ceil(Math.max(...moments))).toBe(3);
  expect(flat('renderer/help/NUMBERS.md').includes('for a single moment it is right to about three.')).toBe(true);
});

test('FU-16: the page says of what comes back what was fitted at a club table', () => {
  const { across, left, left2, across2, right2, courtesy } = POOLED.club.table.incoming.returned;
  const later = [left, left2, across2, right2, courtesy];
  const told = `these are ${Math.round(Math.min(...later))} to ${Math.round(Math.max(...later))} times as likely`;
  expect(flat('core/future/FUTURES.md').includes(told)).toBe(true);
  expect(Math.round(10 * across)).toBe(5);
});

test('MD-C5: the page of the model tells the factor of calls that was fitted', () => {
  expect(flat('core/reading/MODEL.md').includes(`as that of *called* is (${REACH_SHAPE.called.toFixed(2)})`)).toBe(
    true,
  );
});

describe('what was measured', () => {
  const rows = rowsOf(measured).map(([page = '', chapter = '', command = '', day = '']) => ({
    page,
    chapter: chapter.trim(),
    command: command.replaceAll('`', ''),
    day,
  }));

  test('was read from the page, with every report of a calibration', () => {
    expect(rows.length).toBeGreaterThan(8);
    const reports = readdirSync(join(HOUSE, 'core'), { recursive: true, encoding: 'utf8' })
      .filter((path) => /(?:CALIBRATION|WORTH)\.md$/.test(path))
      .map((path) => `core/${path.replaceAll('\\', '/')}`);
    expect(rows.map(({ page }) => page)).toEqual(expect.arrayContaining(reports));
  });

  test.each(rows)('$page $chapter says $command, and what it runs is there', ({ page, command, day }) => {
    expect(flat(page).includes(command)).toBe(true);
    expect(day).toMatch(/^\d{4}-\d\d-\d\d$/);
    const { scripts }: { scripts: object } = JSON.parse(readFileSync(join(HOUSE, 'package.json'), 'utf8'));
    const script = /^npm run ([\w:]+)/.exec(command)?.[1];
    const run = /vitest\.config\.ts (\S+)$/.exec(command)?.[1];
    if (script !== undefined) expect(Object.keys(scripts)).toContain(script);
    else expect(existsSync(join(HOUSE, `${run}.test.ts`))).toBe(true);
  });

  test.each(rows.filter(({ chapter }) => chapter !== 'the whole page'))(
    '$page tells the day of $chapter itself',
    ({ page, day }) => {
      const [year, month, date] = day.split('-').map(Number);
      const words = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });
      expect(flat(page).includes(words.format(new Date(year!, month! - 1, date)))).toBe(true);
    },
  );
});
