import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { DEMO_CARD_TEXT } from '../../main/demo-card.ts';
import type { DeskService } from '../../main/desk/service.ts';
import { cardText, FOLDER, gameRecord, MISS, openOn } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

const HISTORY = `${FOLDER}/practice/history.jsonl`;

/** A desk with so many games, each with a name in it. */
async function named(disk: MemoryDisk, count: number): Promise<DeskService> {
  const desk = await openOn(disk);
  for (let number = 0; number < count; number += 1) {
    expectValue(await desk.startGame(gameRecord(`g-${number}`, { players: { North: `Ada ${number}` } })));
  }
  return desk;
}

function hasNamesOn(disk: MemoryDisk): boolean {
  return [...disk.texts().values()].some((text) => text.includes('Ada'));
}

test('other calls are answered while names are taken out of many games', async () => {
  const disk = new MemoryDisk();
  const desk = await named(disk, 60);
  const ended: string[] = [];
  const removing = desk.removeNames().then((answer) => {
    ended.push('names');
    return answer;
  });
  for (let call = 0; call < 5; call += 1) {
    expectValue(await desk.changeGame('g-59', { tags: [`tag ${call}`] }));
    ended.push('change');
  }
  expect(ended).toEqual(['change', 'change', 'change', 'change', 'change']);
  expect(expectValue(await removing)).toBe(60);
  expect(expectValue(await desk.openGame('g-59')).tags).toEqual(['tag 4']);
  await desk.close();
  expect(hasNamesOn(disk)).toBe(false);
});

test('games without names are gone through in pieces, too', async () => {
  const desk = await openOn(new MemoryDisk());
  for (let number = 0; number < 50; number += 1) expectValue(await desk.startGame(gameRecord(`g-${number}`)));
  let isDone = false;
  const removing = desk.removeNames().then((answer) => {
    isDone = true;
    return answer;
  });
  expectValue(await desk.listGames());
  expect(isDone).toBe(false);
  expect(expectValue(await removing)).toBe(0);
});

test('a removed game that is brought back meanwhile loses its names as well', async () => {
  const disk = new MemoryDisk();
  const desk = await named(disk, 10);
  expectValue(await desk.removeGame('g-3'));
  const removing = desk.removeNames();
  expectValue(await desk.restoreGame('g-3'));
  expect(expectValue(await removing)).toBe(10);
  expect(expectValue(await desk.openGame('g-3')).players ?? {}).toEqual({});
});

test('everything deleted meanwhile stays deleted: nothing is written of what was there', async () => {
  const disk = new MemoryDisk();
  const desk = await named(disk, 10);
  const removing = desk.removeNames();
  expectValue(await desk.deleteEverything('delete everything'));
  expect(await removing).toMatchObject({ ok: false, problem: { code: 'deleted' } });
  await desk.close();
  expect(hasNamesOn(disk)).toBe(false);
});

test('closed in the middle, all names go first', async () => {
  const disk = new MemoryDisk();
  const desk = await named(disk, 10);
  const removing = desk.removeNames();
  await desk.listGames();
  await desk.close();
  expect(expectValue(await removing)).toBe(10);
  expect(hasNamesOn(disk)).toBe(false);
  const again = await openOn(disk);
  expect(expectValue(await again.listGames()).flatMap(({ names }) => names)).toEqual([]);
});

test('an answer of practice is added at the end: what is written does not grow with what is there', async () => {
  const disk = new MemoryDisk();
  const entries = Array.from({ length: 3000 }, (_, number) => ({ ...MISS, id: `m-${number}` }));
  disk.put(HISTORY, entries.map((entry) => `${JSON.stringify(entry)}\n`).join(''));
  const desk = await openOn(disk);
  expectValue(await desk.notePractice([{ ...MISS, id: 'first' }]));
  const before = disk.calls.length;
  expectValue(await desk.notePractice([{ ...MISS, id: 'second' }]));
  const calls = disk.calls.slice(before).filter((call) => call.includes('practice'));
  expect(calls.map((call) => call.split(' ')[0])).toEqual(expect.arrayContaining(['openAtEnd', 'write', 'sync']));
  expect(calls.filter((call) => /^(?:createNew|rename|read) /.test(call))).toEqual([]);
  const kept = expectValue(await desk.practiceHistory()).map(({ id }) => id);
  expect(kept.slice(-2)).toEqual(['first', 'second']);
  expect(kept).toHaveLength(3002);
});

test('what is sent twice in two calls is kept once, and a file that another program changed is read anew', async () => {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  expectValue(await desk.notePractice([MISS]));
  expectValue(await desk.notePractice([MISS]));
  disk.now += 5000;
  disk.put(HISTORY, `${JSON.stringify({ ...MISS, id: 'theirs' })}\n`);
  expectValue(await desk.notePractice([{ ...MISS, id: 'mine' }]));
  expect(expectValue(await desk.practiceHistory()).map(({ id }) => id)).toEqual(['theirs', 'mine']);
});

test('a stroke that is not whole does not count, and is kept in a copy before it goes', async () => {
  const disk = new MemoryDisk();
  const half = { ...MISS, id: 'half', more: true };
  disk.put(HISTORY, `${JSON.stringify(MISS)}\n${JSON.stringify(half)}\n`);
  const desk = await openOn(disk);
  expect(expectValue(await desk.practiceHistory()).map(({ id }) => id)).toEqual(['m1']);
  expectValue(
    await desk.notePractice([
      { ...MISS, id: 'm2' },
      { ...MISS, id: 'm3' },
    ]),
  );
  const entries = expectValue(await desk.practiceHistory());
  expect(entries.map(({ id }) => id)).toEqual(['m1', 'm2', 'm3']);
  expect(entries.some((entry) => 'more' in entry)).toBe(false);
  const copy = [...disk.texts()].find(([path]) => path.startsWith(`${HISTORY}.damaged-`));
  expect(copy?.[1]).toContain('"half"');
  expect(expectValue(await desk.notices()).join()).toMatch(/practice history could not be read/);
});

test('a history that goes between two answers is begun anew', async () => {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  expectValue(await desk.notePractice([MISS]));
  await disk.files.remove(HISTORY);
  expectValue(await desk.notePractice([{ ...MISS, id: 'm2' }]));
  expect(expectValue(await desk.practiceHistory()).map(({ id }) => id)).toEqual(['m2']);
});

/** The processor time that something takes, in ms. */
async function cost(work: () => Promise<void>): Promise<number> {
  const before = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

test('the first list of many cards takes a small part of what opening them takes, and shows a half-written one', async () => {
  const disk = new MemoryDisk();
  const ids = Array.from({ length: 60 }, (_, number) => `card-${number}`);
  for (const id of ids) disk.put(`${FOLDER}/cards/${id}.card.json`, DEMO_CARD_TEXT);
  disk.put(`${FOLDER}/cards/odd.card.json`, cardText('Odd').replace('FF 2222a 4444b 6666c', 'what is this'));
  const desk = await openOn(disk);
  const opening = await cost(async () => {
    for (const id of ids) expectValue(await desk.openCard(id));
  });
  let titles: string[] = [];
  const listing = await cost(async () => {
    titles = expectValue(await desk.listCards()).map(({ title }) => title);
  });
  expect(titles).toHaveLength(62);
  expect(titles).toContain('Odd');
  expect(listing).toBeLessThan(opening / 3);
});
