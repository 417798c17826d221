import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { StudyAnswer } from '../../core/card/study.ts';
import { expectValue } from '../../core/base/result.ts';
import { PROGRESS_FIELDS, COLLECTED_CARD, readCollection, writeCollection } from '../../core/journal/collection.ts';
import type { Desk } from '../../main/desk/desk.ts';
import { bringIn } from '../../renderer/backup/bring-in.ts';
import { gatherEverything } from '../../renderer/backup/gather.ts';
import { DEFAULT_PREFERENCES } from '../../main/desk/preferences.ts';
import { PreferenceStore } from '../../renderer/session/preference-store.ts';
import { cardText, contentOf, gameRecord, MISS, openOn, sheetText } from '../main/support/desks.ts';
import { MemoryDisk } from '../main/support/memory-disk.ts';

const told = (): void => undefined;

async function backupOf(desk: Desk): Promise<string> {
  return expectValue(await gatherEverything(desk, '0.1.0', told));
}

async function restore(desk: Desk, text: string): ReturnType<typeof bringIn> {
  const preferences = new PreferenceStore(desk, DEFAULT_PREFERENCES);
  return await bringIn({ desk, preferences }, expectValue(readCollection(text)), told);
}

async function fullDesk(): ReturnType<typeof openOn> {
  const desk = await openOn(new MemoryDisk());
  expectValue(await desk.saveCard('mine', cardText('Mine')));
  expectValue(await desk.saveCardProgress('mine', { confirmed: ['a'], answers: [], meant: ['m'] }));
  expectValue(await desk.startGame(gameRecord('g-1')));
  expectValue(await desk.startGame(gameRecord('g-2', { players: { North: 'Heron' } })));
  expectValue(await desk.keepSheet(sheetText('Thursday')));
  expectValue(await desk.notePractice([MISS]));
  expectValue(await desk.changePreferences({ theme: 'dark', textSize: 26, cardId: 'mine' }));
  return desk;
}

test('CR-F2: everything of one desk in one file makes an empty desk equal to it', async () => {
  const first = await fullDesk();
  const second = await openOn(new MemoryDisk());
  expect(expectValue(await restore(second, await backupOf(first)))).toEqual({
    added: 2,
    copied: 0,
    same: 0,
    cards: 1,
    sheets: 1,
    settings: true,
  });
  expect(await contentOf(second)).toBe(await contentOf(first));
});

test('CR-F4: bringing the same file in again, or into its own desk, changes nothing', async () => {
  const desk = await fullDesk();
  const before = await contentOf(desk);
  const text = await backupOf(desk);
  for (const _ of [1, 2]) {
    expect(expectValue(await restore(desk, text))).toMatchObject({ added: 0, copied: 0, cards: 0, sheets: 0 });
    expect(await contentOf(desk)).toBe(before);
  }
});

test('CR-F4: nothing here is written over: other cards and sheets of the same name stay, and so do the settings', async () => {
  const theirs = await backupOf(await fullDesk());
  const desk = await openOn(new MemoryDisk());
  expectValue(await desk.saveCard('mine', cardText('Mine, but another')));
  expectValue(await desk.keepSheet(sheetText('Thursday, but another')));
  expectValue(await desk.changePreferences({ theme: 'light' }));
  const brought = expectValue(await restore(desk, theirs));
  expect(brought).toMatchObject({ cards: 1, sheets: 1, settings: false });
  expect(expectValue(await desk.openCard('mine')).text).toBe(cardText('Mine, but another'));
  const cards = expectValue(await desk.listCards());
  expect(cards.map(({ title }) => title).sort()).toEqual(['Demo', 'Mine', 'Mine, but another']);
  const sheets = expectValue(await desk.listSheets());
  expect(sheets.map(({ title }) => title).sort()).toEqual(['Thursday', 'Thursday, but another']);
  expect(expectValue(await desk.readPreferences()).theme).toBe('light');
  const own = cards.find(({ title }) => title === 'Mine');
  expect(expectValue(await desk.readCardProgress(own?.id ?? '')).confirmed).toEqual(['a']);
  expect(expectValue(await restore(desk, theirs))).toMatchObject({ added: 0, copied: 0, cards: 0, sheets: 0 });
});

test('of more answers of study than a card can have, on both sides together, the newest stay', async () => {
  const answersOf = (first: number, count: number): StudyAnswer[] =>
    Array.from({ length: count }, (_, at) => ({ lineId: 'a', ask: 'points', right: true, day: first + 2 * at }));
  const withAnswers = async (first: number): ReturnType<typeof openOn> => {
    const desk = await openOn(new MemoryDisk());
    expectValue(await desk.saveCard('mine', cardText('Mine')));
    expectValue(await desk.saveCardProgress('mine', { confirmed: [], answers: answersOf(first, 4000) }));
    return desk;
  };
  const desk = await withAnswers(0);
  expectValue(await restore(desk, await backupOf(await withAnswers(1))));
  const { answers } = expectValue(await desk.readCardProgress('mine'));
  expect(answers.map(({ day }) => day)).toEqual(Array.from({ length: 6000 }, (_, at) => 2000 + at));
});

test('more than a hundred entries of the practice history come in whole', async () => {
  const desk = await openOn(new MemoryDisk());
  const practice = Array.from({ length: 201 }, (_, at) => ({ ...MISS, id: `miss-${at}` }));
  const others = { sheets: [], practice, progress: [], preferences: {} };
  const text = writeCollection({ appVersion: '1', savedAt: '', games: [], cards: [], others });
  const sizes: number[] = [];
  const watched: Desk = {
    ...desk,
    notePractice: (entries) => {
      sizes.push(entries.length);
      return desk.notePractice(entries);
    },
  };
  expectValue(await restore(watched, text));
  expect(expectValue(await desk.practiceHistory())).toHaveLength(201);
  // No more at once than the desk's door lets through.
  expect(sizes).toEqual([100, 100, 1]);
});

const anyOthers = fc.record({
  sheets: fc.array(fc.string(), { maxLength: 3 }),
  practice: fc.array(
    fc.record({ id: fc.stringMatching(/^[a-z0-9]{1,9}$/), cost: fc.double({ min: 0, max: 1, noNaN: true }) }),
    { maxLength: 4 },
  ),
  progress: fc.array(
    fc.record({
      cardId: fc.string(),
      confirmed: fc.array(fc.string(), { maxLength: 3 }),
      answers: fc.array(
        fc.record({
          lineId: fc.string(),
          ask: fc.constant('points' as const),
          right: fc.boolean(),
          day: fc.nat(),
        }),
        { maxLength: 2 },
      ),
    }),
    { maxLength: 2 },
  ),
  preferences: fc.dictionary(fc.stringMatching(/^[a-z]{1,8}$/), fc.jsonValue({ maxDepth: 1 })),
});

test('CR-F2: sheets, practice, progress and settings round-trip through the file (1,000 random stores)', () => {
  fc.assert(
    fc.property(anyOthers, (drawn) => {
      const others = { ...drawn, practice: drawn.practice.map((entry) => ({ ...MISS, ...entry })) };
      const text = writeCollection({ appVersion: '1', savedAt: '', games: [], cards: [], others });
      const plain: unknown = JSON.parse(JSON.stringify(others));
      expect(expectValue(readCollection(text)).others).toEqual(plain);
    }),
    { numRuns: 1000, seed: 9 },
  );
});

test('what is not in order in them is left out, and the rest is read', () => {
  const text = writeCollection({ appVersion: '1', savedAt: '', games: [], cards: [] }).replace(
    '"games"',
    '"sheets":[7,"a"],"practice":[{}],"progress":[{"cardId":"x"}],"preferences":[],"games"',
  );
  expect(expectValue(readCollection(text)).others).toEqual({
    sheets: ['a'],
    practice: [],
    progress: [],
    preferences: {},
  });
});

test('the page of the file with everything names what the file holds, and every field of it', () => {
  const page = readFileSync(new URL('../../core/journal/FORMAT.md', import.meta.url), 'utf8');
  const others = { sheets: [], practice: [], progress: [], preferences: {} };
  const file = writeCollection({ appVersion: '0.1.0', savedAt: '', games: [], cards: [], others });
  const fields = { ...JSON.parse(file), ...PROGRESS_FIELDS.entries, ...COLLECTED_CARD.entries };
  expect(Object.keys(fields).filter((name) => !page.includes(`\`${name}\``))).toEqual([]);
});
