import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { createDeskService, type DeskService } from '../../main/desk/service.ts';
import { cardText, FOLDER, gameRecord, openOn, optionsOn } from './support/desks.ts';
import { type CallName, fileError, MemoryDisk } from './support/memory-disk.ts';

const CARD = `${FOLDER}/cards/mine.card.json`;
const LOCK = `${FOLDER}/in-use.json`;

/** Another program takes the file away just before we make this call about it for so many times. */
function takeAway(disk: MemoryDisk, call: CallName, path: string, turn = 1): void {
  let made = 0;
  disk.watch = (name, at) => {
    if (name === call && at === path && (made += 1) === turn) void disk.files.remove(path);
    return undefined;
  };
}

/** A folder with a card and a game, let go. */
async function usedDisk(): Promise<MemoryDisk> {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  expectValue(await desk.saveCard('mine', cardText('Mine')));
  expectValue(await desk.startGame(gameRecord('g-1')));
  await desk.close();
  return disk;
}

async function cardIds(desk: DeskService): Promise<string[]> {
  return expectValue(await desk.listCards()).map(({ id }) => id);
}

describe('a file that another program takes away between two looks at it counts as not there', () => {
  test.each([
    ['info', 1],
    ['info', 2],
    ['read', 1],
  ] as const)('a card, before its %s number %i', async (call, turn) => {
    const disk = await usedDisk();
    const desk = await openOn(disk);
    takeAway(disk, call, CARD, turn);
    expect(await cardIds(desk)).toEqual(['demo']);
    expect(await desk.openCard('mine')).toMatchObject({ problem: { code: 'not-found' } });
    expect(expectValue(await desk.notices())).toEqual([]);
  });

  test('the index, after it was read: the games are listed, and it is made again', async () => {
    const disk = await usedDisk();
    takeAway(disk, 'info', `${FOLDER}/index.jsonl`, 2);
    const desk = await openOn(disk);
    expect(expectValue(await desk.listGames()).map(({ id }) => id)).toEqual(['g-1']);
    expect(disk.texts().get(`${FOLDER}/index.jsonl`)).toContain('"g-1"');
  });

  test('a month of games: they are off the list, and listed again once it is back', async () => {
    const disk = await usedDisk();
    const month = `${FOLDER}/games/2026/11`;
    disk.watch = (_, path) => {
      if (path === month || path.startsWith(`${month}/`)) throw fileError('ENOENT', path);
      return undefined;
    };
    const desk = await openOn(disk);
    expect(expectValue(await desk.listGames())).toEqual([]);
    await desk.close();
    disk.watch = () => undefined;
    expect(expectValue(await (await openOn(disk)).listGames())).toHaveLength(1);
  });

  test('findings: the next ones are kept together with those before', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    const row = { id: 'g-1', key: 'k', figures: { aways: [], aimed: null }, choices: null };
    expectValue(await desk.keepFindings([row]));
    await disk.files.remove(`${FOLDER}/findings/all.jsonl`);
    expectValue(await desk.keepFindings([{ ...row, id: 'g-2' }]));
    await desk.close();
    const again = expectValue(await (await openOn(disk)).readFindings(null));
    expect(again.map(({ id }) => id)).toEqual(['g-1', 'g-2']);
  });
});

describe('CR-J6: the lock of another copy', () => {
  const other = JSON.stringify({ process: 7, computer: 'here', mark: 'x' });

  test.each(['info', 'read'] as const)('that goes just before its %s is no lock any more', async (call) => {
    const disk = new MemoryDisk();
    disk.put(LOCK, other);
    takeAway(disk, call, LOCK);
    const desk = expectValue(await createDeskService(optionsOn(disk)));
    expect(JSON.parse(disk.texts().get(LOCK) ?? '')).toMatchObject({ process: 100 });
    await desk.close();
  });

  test.each([
    ['in the place of ours', other, 0],
    ['without a trace', undefined, 90_001],
  ])(
    'that took over while we were asleep (%s): nothing more is written, and its lock stays',
    async (_, theirs, sleep) => {
      const disk = await usedDisk();
      let beat = (): void => undefined;
      const every = (_milliseconds: number, call: () => void): (() => void) => {
        beat = call;
        return () => undefined;
      };
      const desk = await openOn(disk, { every });
      expectValue(await desk.changeGame('g-1', { place: 'Home' }));
      await disk.files.remove(LOCK);
      if (theirs !== undefined) disk.put(LOCK, theirs);
      disk.now += sleep;
      const before = disk.texts();
      beat();
      expect(await desk.changeGame('g-1', { place: 'Away' })).toMatchObject({
        problem: {
          code: 'in-use',
          message:
            'Another copy of Windrow may have used this folder meanwhile. Close this one, then start Windrow again.',
        },
      });
      expect(expectValue(await desk.openGame('g-1')).place).toBe('Home');
      await desk.close();
      expect(disk.texts()).toEqual(before);
      expect(await desk.listGames()).toMatchObject({
        problem: { code: 'closed', message: 'Windrow has been closed: open it again.' },
      });
    },
  );
});

test('a close without a save before it folds nothing into a folder that another copy has taken', async () => {
  const disk = await usedDisk();
  const desk = await openOn(disk);
  expectValue(await desk.changeGame('g-1', { place: 'Home' }));
  disk.put(LOCK, JSON.stringify({ process: 7, computer: 'here', mark: 'x' }));
  const before = disk.texts();
  await desk.close();
  expect(disk.texts()).toEqual(before);
});

describe('what goes away at the worst moment', () => {
  test('the folder, between the look at its lock and the save: it is not made anew', async () => {
    const disk = await usedDisk();
    const desk = await openOn(disk);
    const open = `${FOLDER}/open`;
    disk.watch = (name, at) => {
      if (name === 'info' && at === open) {
        disk.watch = () => undefined;
        void disk.files.rename(FOLDER, `${FOLDER}-moved`);
      }
      return undefined;
    };
    expect(await desk.changeGame('g-1', { place: 'Away' })).toMatchObject({ problem: { code: 'missing' } });
    expect([...disk.texts().keys()].filter((path) => path.startsWith(`${FOLDER}/`))).toEqual([]);
  });

  test('a removed game, between the list of them and the look at its time', async () => {
    const disk = await usedDisk();
    const desk = await openOn(disk);
    expectValue(await desk.removeGame('g-1'));
    await desk.close();
    takeAway(disk, 'info', `${FOLDER}/removed/g-1.json`);
    const again = await openOn(disk);
    expect(expectValue(await again.notices())).toEqual([]);
  });
});
