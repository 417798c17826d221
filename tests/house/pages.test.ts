import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { testTitles } from './titles.ts';

/** The pages of numbered sentences say no more than the tests do, and no less. */
const HOUSE = resolve(import.meta.dirname, '../..');
const PAGES = {
  EX: 'core/RULES.md',
  LG: 'core/RULES.md',
  TB: 'core/RULES.md',
  MD: 'core/reading/MODEL.md',
  CH: 'core/chance/CHANCE.md',
  FU: 'core/future/FUTURES.md',
  OT: 'core/others/OTHERS.md',
} as const;
const FAMILIES = Object.keys(PAGES) as (keyof typeof PAGES)[];
const ID = /\b(?:EX|LG|TB|MD|CH|FU|OT)-[A-Z]?\d+\b/g;

const titles = testTitles();

/** The ids that a page defines, in its order: `- **EX-1** …` or `- MD-A1. …`. */
function defined(family: keyof typeof PAGES): string[] {
  const page = readFileSync(join(HOUSE, PAGES[family]), 'utf8');
  const ids = [...page.matchAll(/^- (?:\*\*)?([A-Z]{2}-[A-Z]?\d+)(?:\*\*|\.) /gm)].map(([, id = '']) => id);
  return ids.filter((id) => id.startsWith(`${family}-`));
}

describe.each(FAMILIES)('the sentences %s', (family) => {
  const ids = defined(family);

  test('were read', () => expect(ids.length).toBeGreaterThan(2));

  test('run from one without a gap', () => {
    const byLetter = new Map<string, number[]>();
    for (const id of ids) {
      const [, letter = '', number = ''] = /-([A-Z]?)(\d+)$/.exec(id) ?? [];
      byLetter.set(letter, [...(byLetter.get(letter) ?? []), Number(number)]);
    }
    for (const numbers of byLetter.values()) expect(numbers).toEqual(numbers.map((_, place) => place + 1));
  });

  test('are each quoted by a test', () => {
    expect(ids.filter((id) => !titles.some((title) => title.match(ID)?.includes(id)))).toEqual([]);
  });
});

test('an id that is quoted anywhere stands on its page', () => {
  const known = new Set(FAMILIES.flatMap(defined));
  const files = ['core', 'main', 'renderer', 'tests'].flatMap((layer) =>
    readdirSync(join(HOUSE, layer), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(ts|mjs|md)$/.test(name))
      .map((name) => `${layer}/${name}`),
  );
  const quoted = files.flatMap((file) =>
    [...readFileSync(join(HOUSE, file), 'utf8').matchAll(ID)].map(([id]) => ({ file, id })),
  );
  expect(quoted.length).toBeGreaterThan(200);
  expect(quoted.filter(({ id }) => !known.has(id))).toEqual([]);
});
