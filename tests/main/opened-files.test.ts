import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { writeGameFile } from '../../core/game/file/write-game-file.ts';
import type { DeskService } from '../../main/desk/service.ts';
import { BROUGHT_IN } from '../../main/shell/channels.ts';
import { setUpFiles, takeIn } from '../../main/shell/set-up-files.ts';
import { cardText, EVENTS, event, gameRecord, openOn } from './support/desks.ts';
import { ElectronStub } from './support/electron-stub.ts';
import { MemoryDisk } from './support/memory-disk.ts';

let folder = '';
let desk: DeskService;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'windrow-opened-'));
  desk = await openOn(new MemoryDisk());
});
afterEach(async () => {
  await rm(folder, { recursive: true });
});

async function put(name: string, content: string | Uint8Array): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, content);
  return path;
}

describe('a file that Windrow is opened with is taken in beside what is kept', () => {
  test('a card, once; the file stays as it was', async () => {
    const path = await put('spring.card.json', cardText('Spring'));
    expect(expectValue(await takeIn(desk, path))).toMatch(/^The card "Spring" is now among your cards\./);
    expect(expectValue(await takeIn(desk, path))).toBe('The card "Spring" is among your cards already.');
    expect(expectValue(await desk.listCards()).map(({ title }) => title)).toEqual(['Demo', 'Spring']);
    expect(await readFile(path, 'utf8')).toBe(cardText('Spring'));
  });

  test('a game, once; of another version both are kept', async () => {
    const path = await put('g-1.windrow-game.json', writeGameFile(gameRecord('g-1', { events: EVENTS })));
    expect(expectValue(await takeIn(desk, path))).toBe('The game is now in your journal.');
    expect(expectValue(await takeIn(desk, path))).toBe('This game is in your journal already.');
    await put('g-1.windrow-game.json', writeGameFile(gameRecord('g-1', { place: 'Elsewhere' })));
    expect(expectValue(await takeIn(desk, path))).toBe('Two versions of this game are now in your journal.');
    expect(expectValue(await desk.listGames())).toHaveLength(2);
  });

  test('a game of 3,000 notes, which is far larger than any card', async () => {
    const { at } = event(0);
    const notes = Array.from({ length: 3000 }, () => ({ at, type: 'noted' as const, text: 'x'.repeat(400) }));
    const game = gameRecord('g-1', { events: [event(0), ...notes] });
    const path = await put('g-1.windrow-game.json', writeGameFile(game));
    expect(expectValue(await takeIn(desk, path))).toBe('The game is now in your journal.');
    expect(expectValue(await desk.openGame('g-1')).events).toHaveLength(3001);
  });

  test.each([
    ['empty.card.json', ''],
    ['foreign.card.json', '{"format":"other"}'],
    ['deep.card.json', `${'['.repeat(50_000)}${']'.repeat(50_000)}`],
    ['newer.windrow-game.json', '{"kind":"windrow.game","schemaVersion":9}'],
    ['hostile.windrow-game.json', '{"kind":"windrow.game","schemaVersion":1,"__proto__":{"polluted":1}}'],
    ['damaged.windrow-game.json', JSON.stringify(gameRecord('g-1', { events: [event(0), event(2)] }))],
    ['huge.card.json', '1'.repeat(1_000_000)],
    ['huge.windrow-game.json', '1'.repeat(13_000_000)],
  ])('as an attack: %s is refused with one sentence, and nothing is kept', async (name, text) => {
    const before = [expectValue(await desk.listCards()), expectValue(await desk.listGames())];
    const refused = await takeIn(desk, await put(name, text));
    expect(refused).toMatchObject({ ok: false, problem: { message: expect.stringMatching(/^[A-Z].*\.$/) } });
    expect([expectValue(await desk.listCards()), expectValue(await desk.listGames())]).toEqual(before);
    expect(Reflect.get({}, 'polluted')).toBeUndefined();
  });

  test('a card of 900,000 bytes is the largest, a game of 24,000,000 the largest that is looked at', async () => {
    const card = cardText('Large');
    expect(await takeIn(desk, await put('a.card.json', card.padEnd(900_001)))).toMatchObject({ ok: false });
    expect(await takeIn(desk, await put('a.card.json', card.padEnd(900_000)))).toMatchObject({ ok: true });
    const wordsFor = async (bytes: number): Promise<string> => {
      const taken = await takeIn(desk, await put('a.windrow-game.json', ' '.repeat(bytes)));
      return taken.ok ? '' : taken.problem.message;
    };
    expect(await wordsFor(24_000_001)).toMatch(/^This file is far larger than any card or game\./);
    expect(await wordsFor(24_000_000)).toMatch(/^This file is far larger than any game:/);
  });

  test('one that is not there is told in words', async () => {
    expect(await takeIn(desk, join(folder, 'none.card.json'))).toMatchObject({
      ok: false,
      problem: { message: expect.stringMatching(/^The folder of none\.card\.json is gone/) },
    });
  });
});

test('it is opened at the start, by a second start, and by macOS before the app is ready; other arguments are nothing', async () => {
  const electron = new ElectronStub();
  const one = await put('one.card.json', cardText('One'));
  const two = await put('two.card.json', cardText('Two'));
  await put('three.card.json', cardText('Three'));
  const start = setUpFiles(electron.parts(), [one, '--inspect', '/etc/passwd', join(folder, 'none.card.json')]);
  let prevented = false;
  electron.app.emit('open-file', { preventDefault: () => (prevented = true) }, two);
  expect(prevented).toBe(true);
  const window = electron.parts().createWindow({});
  start({ desk, window });
  electron.app.emit('second-instance', {}, ['windrow', 'three.card.json'], folder);
  await expect.poll(() => electron.messages.length).toBe(3);
  await expect.poll(() => electron.errors.length).toBe(1);
  for (const title of ['One', 'Two', 'Three']) expect(electron.messages.join()).toContain(`"${title}" is now`);
  // Each that was taken in is told to the window, so that its lists are no older than the desk.
  expect(electron.windows[0]?.webContents.told).toEqual(Array.from({ length: 3 }, () => BROUGHT_IN));
});

test('one that comes while the window closes is taken in, and nothing is asked of a window that is gone', async () => {
  const electron = new ElectronStub();
  const path = await put('late.card.json', cardText('Late'));
  const start = setUpFiles(electron.parts(), []);
  const window = electron.parts().createWindow({});
  start({ desk, window });
  electron.windows[0]?.destroy();
  electron.app.emit('open-file', { preventDefault: () => undefined }, path);
  await expect.poll(async () => expectValue(await desk.listCards()).length).toBe(2);
  // A box on a window that is gone would be an unhandled rejection, which fails the run.
  expect([electron.messages, electron.windows[0]?.webContents.told]).toEqual([[], []]);
});
