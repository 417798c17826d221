import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { DEFAULT_PREFERENCES, preferencesIn } from '../../main/desk/preferences.ts';
import { FOLDER, openOn } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

const PAGE = readFileSync(join(import.meta.dirname, '../../main/desk/FORMAT.md'), 'utf8');

/** The page's examples in their order. */
const EXAMPLES = [...PAGE.matchAll(/```jsonl?\n([^`]*)```/g)].map(([, text]) => text ?? '');

test('CR-V1: every example of the format page is opened as the page says', async () => {
  const [log = '', progress = '', settings = ''] = EXAMPLES;
  expect(EXAMPLES).toHaveLength(3);
  const disk = new MemoryDisk();
  disk.put(`${FOLDER}/open/g-1.jsonl`, log);
  disk.put(`${FOLDER}/cards/progress/demo.json`, progress);
  disk.put(`${FOLDER}/preferences.json`, settings);
  const desk = await openOn(disk);
  const { window: _, ...wanted } = JSON.parse(settings);
  expect(expectValue(await desk.readPreferences())).toMatchObject(wanted);
  expect(expectValue(await desk.readCardProgress('demo'))).toMatchObject({ answers: [{ lineId: 'runs-1' }] });
  expect(expectValue(await desk.openGame('g-1'))).toMatchObject({ tags: ['Thursday'], events: [{ type: 'dealt' }] });
  expect(expectValue(await desk.listGames())).toMatchObject([{ id: 'g-1', events: 1, seat: 'South' }]);
  expect(expectValue(await desk.notices())).toEqual([]);
});

describe('CR-V1: the table of settings', () => {
  const table = PAGE.split('| field | what it may be | usual |')[1]?.split('\n\n')[0] ?? '';
  const rows = [...table.matchAll(/^\| `(\w+)` \| (.+?) \| (.+?) \|$/gm)].map(
    ([, name = '', may = '', usual = '']) => ({
      name,
      may,
      words: [...may.matchAll(/`([\w-]+)`/g)].map(([, word = '']) => valueOf(word)),
      usual: /^`(.+)`$/.exec(usual)?.[1],
    }),
  );
  /** What a word stands for: `true` and `2` are no texts. */
  function valueOf(word: string): unknown {
    return /^(?:true|false|\d+)$/.test(word) ? JSON.parse(word) : word;
  }
  const opens = (name: string, value: unknown): boolean => {
    const mark = Symbol('default');
    const read = preferencesIn({ [name]: value });
    return (Object.entries(read).find(([field]) => field === name)?.[1] ?? mark) === value;
  };

  test('has every setting, with its usual value; so has the example', () => {
    expect(rows.map(({ name }) => name)).toEqual(Object.keys(DEFAULT_PREFERENCES));
    const { window: _, ...example } = JSON.parse(EXAMPLES.at(-1) ?? '');
    expect(Object.keys(example)).toEqual(Object.keys(DEFAULT_PREFERENCES));
    const told = rows.flatMap(({ name, usual }) => (usual === undefined ? [] : [[name, valueOf(usual)]]));
    expect(DEFAULT_PREFERENCES).toMatchObject(Object.fromEntries(told));
    expect(rows.filter(({ usual }) => usual === undefined).map(({ name }) => name)).toEqual([
      'payment',
      'cautionsSeen',
    ]);
  });

  const choices = rows.filter(({ may, words }) => words.length > 1 && !may.startsWith('a list'));
  test('has every value that a choice may have, and no other', () => {
    expect(choices.length).toBeGreaterThan(9);
    const all = [...choices.flatMap(({ words }) => words), 'other', 0, 3, null];
    for (const { name, words } of choices)
      expect(
        all.filter((value) => opens(name, value)),
        name,
      ).toEqual(all.filter((value) => words.includes(value)));
  });

  test('has the limits of numbers, of the text and of the list', () => {
    const [from, to] = (/from (\d+) to (\d+)/.exec(rows.find(({ name }) => name === 'textSize')?.may ?? '') ?? [])
      .slice(1)
      .map(Number);
    expect([from! - 1, from, 20.5, to, to! + 1].map((size) => opens('textSize', size))).toEqual([
      false,
      true,
      true,
      true,
      false,
    ]);
    expect([-1, 0, 1, 9, 10, 0.5].map((step) => opens('tourStep', step))).toEqual([
      false,
      true,
      true,
      true,
      false,
      false,
    ]);
    expect([0, 1, 80, 81].map((letters) => opens('cardId', 'c'.repeat(letters)))).toEqual([false, true, true, false]);
    const seen = rows.find(({ name }) => name === 'cautionsSeen')?.words ?? [];
    expect(preferencesIn({ cautionsSeen: seen }).cautionsSeen).toEqual(['entry', 'import', 'export']);
    expect(preferencesIn({ cautionsSeen: ['else'] }).cautionsSeen).toEqual([]);
  });
});

test('CR-V1: the page names every place that is written', async () => {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  const places = Object.values({ ...(await import('../../main/desk/places.ts')).placesIn('') });
  for (const place of places.filter((one) => one !== '')) expect(PAGE).toContain(`\`${place.replace(/^\//, '')}`);
  await desk.close();
});
