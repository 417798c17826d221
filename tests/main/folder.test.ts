import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { callDesk } from '../../main/desk/calls.ts';
import { contentOf, FOLDER, gameRecord, MISS, openOn, SESSION, sheetText } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

/** A folder with something of every kind in it, things set aside and left unfinished among them. */
async function fullDisk(): Promise<MemoryDisk> {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  for (const step of SESSION.slice(0, -1)) expectValue(await step(desk));
  expectValue(await desk.keepSheet(sheetText('Thursday')));
  expectValue(await desk.notePractice([MISS]));
  await desk.close();
  disk.put(`${FOLDER}/preferences.json.damaged-2026-11-25T18-00-00Z`, '{');
  disk.put(`${FOLDER}/cards/mine.card.json.damaged-2026-11-25T18-00-00Z`, '{');
  disk.put(`${FOLDER}/games/2026/11/g-3.json.other-2026-11-25T18-00-00Z`, '{');
  disk.put(`${FOLDER}/games/2026/11/g-3.json.n1.unfinished`, '{');
  return disk;
}

/** The paths of the files that are there. */
function paths(disk: MemoryDisk): string[] {
  return [...disk.texts().keys()].filter((path) => path.startsWith(FOLDER)).sort();
}

test('CR-F7: delete all leaves 0 files of ours, and a file of somebody else as it was', async () => {
  const disk = await fullDisk();
  expect(paths(disk).length).toBeGreaterThan(12);
  disk.put(`${FOLDER}/letter.txt`, 'mine');
  disk.put(`${FOLDER}/cards/photo.png`, 'mine');
  const desk = await openOn(disk);
  expectValue(await desk.startGame(gameRecord('g-7')));
  expectValue(await desk.deleteEverything('delete everything'));
  await desk.close();
  expect(paths(disk)).toEqual([`${FOLDER}/cards/photo.png`, `${FOLDER}/letter.txt`]);
});

test('CR-F7: after it, one goes on as at the first start, and what is new is kept', async () => {
  const disk = await fullDisk();
  const fresh = await contentOf(await openOn(new MemoryDisk()));
  const desk = await openOn(disk);
  expectValue(await desk.deleteEverything('delete everything'));
  expect(await contentOf(desk)).toBe(fresh);
  expectValue(await desk.startGame(gameRecord('g-8')));
  await desk.close();
  const again = await openOn(disk);
  expect(expectValue(await again.listGames()).map(({ id }) => id)).toEqual(['g-8']);
});

test('a file that can not be removed is told in words, and nothing that is left is lost', async () => {
  const disk = await fullDisk();
  const desk = await openOn(disk);
  const before = expectValue(await desk.readPreferences());
  disk.watch = (call, path) => {
    if (call === 'remove' && path.endsWith('g-3.json')) throw Object.assign(new Error('held'), { code: 'EBUSY' });
    return undefined;
  };
  expect(await desk.deleteEverything('delete everything')).toMatchObject({
    ok: false,
    problem: { message: expect.stringContaining('Another program holds') },
  });
  disk.watch = () => undefined;
  expect(expectValue(await desk.listGames()).map(({ id }) => id)).toContain('g-3');
  expect(expectValue(await desk.readPreferences())).toEqual(before);
});

test('nothing is deleted unless the call says in full that it is meant', async () => {
  const disk = await fullDisk();
  const desk = await openOn(disk);
  const before = paths(disk);
  for (const given of [[], [true], [''], [{}], [null], ['delete everything', true], null]) {
    expect(await callDesk(desk, 'deleteEverything', given)).toMatchObject({ ok: false });
  }
  expect(paths(disk)).toEqual(before);
});

test('the folder is shown where the system can show it, and otherwise the answer says no', async () => {
  const shown: string[] = [];
  const showFolder = async (folder: string): Promise<boolean> => shown.push(folder) > 0;
  const desk = await openOn(new MemoryDisk(), { showFolder });
  expect(expectValue(await desk.showFolder())).toBe(true);
  expect(shown).toEqual([FOLDER]);
  const other = await openOn(new MemoryDisk());
  expect(expectValue(await other.showFolder())).toBe(false);
});
