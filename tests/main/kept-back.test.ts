import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { cardText, FOLDER, gameRecord, openOn } from './support/desks.ts';
import { fileError, MemoryDisk } from './support/memory-disk.ts';

const DAY = 86_400_000;
const YEAR = 365 * DAY;
const REMOVED = `${FOLDER}/removed`;

/** A disk with a game that was last changed so many days before it was removed. */
async function withRemoved(days: number): Promise<MemoryDisk> {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  expectValue(await desk.startGame(gameRecord('g-1')));
  disk.now += days * DAY;
  expectValue(await desk.removeGame('g-1'));
  await desk.close();
  return disk;
}

/** Whether the game can be brought back at a start so many milliseconds later. */
async function comesBack(disk: MemoryDisk, later: number): Promise<boolean> {
  disk.now += later;
  const desk = await openOn(disk);
  return (await desk.restoreGame('g-1')).ok;
}

describe('a removed game can be brought back for 30 days from its removal', () => {
  test.each([0, 40, 1000])('however old it was: changed %i days before', async (days) => {
    expect(await comesBack(await withRemoved(days), 29.9 * DAY)).toBe(true);
    expect(await comesBack(await withRemoved(days), 30.1 * DAY)).toBe(false);
  });

  test('a clock that is years ahead or behind for one start takes none of these days', async () => {
    for (const wrong of [4 * YEAR, -4 * YEAR]) {
      const disk = await withRemoved(40);
      disk.now += wrong;
      await (await openOn(disk)).close();
      disk.now -= wrong;
      await (await openOn(disk)).close();
      expect(await comesBack(disk, 29 * DAY)).toBe(true);
    }
  });

  test('up to a year its age is believed; beyond that, or a day before its removal, the clock is wrong', async () => {
    expect(await comesBack(await withRemoved(0), 364 * DAY)).toBe(false);
    expect(await comesBack(await withRemoved(0), 366 * DAY)).toBe(true);
    expect(await comesBack(await withRemoved(0), -2 * DAY)).toBe(true);
  });

  test('after such a start its 30 days begin anew, and end', async () => {
    const disk = await withRemoved(0);
    disk.now -= 2 * YEAR;
    await (await openOn(disk)).close();
    disk.now += 31 * DAY;
    await (await openOn(disk)).close();
    expect([...disk.texts().keys()].filter((path) => path.startsWith(REMOVED))).toEqual([]);
  });
});

test('a removed file that may not be touched keeps no start from going on', async () => {
  for (const later of [31 * DAY, -2 * YEAR]) {
    const disk = await withRemoved(0);
    disk.watch = (call, path) => {
      if (path.startsWith(REMOVED) && ['touch', 'remove'].includes(call)) throw fileError('EPERM', path);
      return undefined;
    };
    expect(await comesBack(disk, later)).toBe(true);
  }
});

describe('a game that is removed again', () => {
  test('leaves the version that was removed before in a file of its own', async () => {
    const disk = await withRemoved(0);
    const desk = await openOn(disk);
    expectValue(await desk.startGame(gameRecord('g-1', { place: 'At home', players: { East: 'Ada' } })));
    expectValue(await desk.removeGame('g-1'));
    const kept = [...disk.texts()].filter(([path]) => path.startsWith(REMOVED));
    expect(new Set(kept.map(([, text]) => JSON.parse(text).place))).toEqual(new Set(['At home', 'Lakeside library']));
    expect(kept).toHaveLength(2);
    expect(expectValue(await desk.restoreGame('g-1')).place).toBe('At home');
  });

  test('three times in one second, too', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    for (const place of ['One', 'Two', 'Three', 'Four']) {
      expectValue(await desk.startGame(gameRecord('g-1', { place })));
      expectValue(await desk.removeGame('g-1'));
    }
    const kept = [...disk.texts()].filter(([path]) => path.startsWith(REMOVED));
    expect(kept.map(([, text]) => JSON.parse(text).place)).toHaveLength(4);
  });

  test('and names are taken out of both', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    for (const name of ['Ada', 'Bea']) {
      expectValue(await desk.startGame(gameRecord('g-1', { players: { East: name } })));
      expectValue(await desk.removeGame('g-1'));
      disk.now += 1000;
    }
    expectValue(await desk.startGame(gameRecord('g-3')));
    expectValue(await desk.removeGame('g-3'));
    // Neither another program's file nor a damaged one stands in the way.
    disk.put(`${REMOVED}/notes.txt`, 'of somebody else');
    disk.put(`${REMOVED}/g-2.json`, '{"kind');
    expect(expectValue(await desk.removeNames())).toBe(2);
    expect(disk.texts().get(`${REMOVED}/notes.txt`)).toBe('of somebody else');
    const texts = [...disk.texts().values()].join('');
    expect(texts).not.toMatch(/Ada|Bea/);
  });
});

test('backups of one second that an earlier version made come in the order of their numbers', async () => {
  const disk = new MemoryDisk();
  for (const turn of ['', '-2', '-10']) {
    disk.put(`${FOLDER}/cards/backups/mine/2026-11-20T10-00-00Z${turn}.card.json`, cardText(`Turn ${turn}`));
  }
  const desk = await openOn(disk);
  const turns = expectValue(await desk.listBackups('mine')).map(({ name }) => name.slice(20, -10));
  expect(turns).toEqual(['-10', '-2', '']);
});

test('a card’s newest backup stays, though ten others bear later dates', async () => {
  for (const act of ['save', 'remove'] as const) {
    const disk = new MemoryDisk();
    for (let day = 10; day < 20; day += 1) {
      disk.put(`${FOLDER}/cards/backups/mine/2026-11-${day}T10-00-00Z.card.json`, cardText(`Old ${day}`));
    }
    // Made by hand: there is no such day.
    disk.put(`${FOLDER}/cards/backups/mine/2026-13-01T10-00-00Z.card.json`, cardText('Never'));
    disk.put(`${FOLDER}/cards/mine.card.json`, cardText('Before'));
    disk.now -= 400 * DAY;
    const desk = await openOn(disk);
    expectValue(act === 'save' ? await desk.saveCard('mine', cardText('After')) : await desk.removeCard('mine'));
    const backups = expectValue(await desk.listBackups('mine'));
    expect(backups).toHaveLength(10);
    expect(expectValue(await desk.restoreCard('mine', backups[0]!.name)).title).toBe('Before');
  }
});
