import { expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { writeGameFile } from '../../core/game/file/write-game-file.ts';
import { cardText, EVENTS, event, FOLDER, gameRecord, openOn } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';
import { spoiled } from './support/spoil.ts';

/** Folders to try. */
const FOLDERS = 600;

/** A healthy folder: a folded game, a running game with its log, a card with a backup, preferences, the index. */
async function healthyFolder(): Promise<ReadonlyMap<string, string>> {
  const disk = new MemoryDisk();
  const first = await openOn(disk);
  expectValue(await first.saveCard('mine', cardText('Mine')));
  expectValue(await first.changePreferences({ theme: 'dark' }));
  await first.close();
  const desk = await openOn(disk);
  expectValue(await desk.saveCard('mine', cardText('Mine, mended')));
  expectValue(await desk.startGame(gameRecord('g-1', { events: EVENTS })));
  expectValue(await desk.startGame(gameRecord('g-2')));
  for (const place of [0, 1, 2]) expectValue(await desk.appendEvent('g-2', place, event(place)));
  return disk.texts();
}

test(
  'CR-D4: one spoiled file in a folder of whole ones costs at most itself: no crash, nothing overwritten',
  { timeout: 300_000 },
  async () => {
    const healthy = [...(await healthyFolder())].filter(([path]) => !path.endsWith('in-use.json'));
    expect(healthy.map(([path]) => path.slice(FOLDER.length + 1)).sort()).toEqual([
      expect.stringMatching(/^cards\/backups\/mine\/.*\.card\.json$/),
      'cards/mine.card.json',
      'games/2026/11/g-1.json',
      'games/2026/11/g-2.json',
      'index.jsonl',
      'open/g-2.jsonl',
      'preferences.json',
    ]);
    const random = randomFromSeed(4);
    for (let file = 0; file < FOLDERS; file += 1) {
      const disk = new MemoryDisk();
      for (const [path, text] of healthy) disk.put(path, text);
      const [path, text] = healthy[file % healthy.length] ?? ['', ''];
      const bytes = spoiled(Buffer.from(text), random);
      if (new TextDecoder().decode(bytes) === text) continue;
      disk.put(path, bytes);
      const desk = await openOn(disk);
      for (const { id } of expectValue(await desk.listGames())) expectValue(await desk.openGame(id));
      for (const { id } of expectValue(await desk.listCards())) await desk.openCard(id);
      expectValue(await desk.readPreferences());
      for (const sentence of expectValue(await desk.notices())) expect(sentence).toMatch(/^[A-Z].*\.$/s);
      await desk.close();
      expectKept(disk, path, bytes);
    }
  },
);

/** What stood in a damaged file is still somewhere, unless the file only saves time (the index) or was read whole. */
function expectKept(disk: MemoryDisk, path: string, bytes: Uint8Array): void {
  if (path.endsWith('index.jsonl') || path.includes('/backups/')) return;
  const spoiledText = new TextDecoder().decode(bytes);
  const texts = disk.texts();
  const now = texts.get(path);
  if ([...texts.values()].includes(spoiledText)) return;
  // Not there as it was: then it was a log that could be read and was folded.
  expect(path).toMatch(/open\/g-2\.jsonl$/);
  expect(now).toBeUndefined();
}

test('the index of 1,000 games and their files agree after any line is spoiled', async () => {
  const random = randomFromSeed(11);
  const disk = new MemoryDisk();
  for (let number = 0; number < 1000; number += 1) {
    disk.put(`${FOLDER}/games/2026/11/g-${number}.json`, writeGameFile(gameRecord(`g-${number}`)));
  }
  await (await openOn(disk)).close();
  const index = disk.texts().get(`${FOLDER}/index.jsonl`) ?? '';
  for (let round = 0; round < 20; round += 1) {
    disk.put(`${FOLDER}/index.jsonl`, spoiled(Buffer.from(index), random));
    const desk = await openOn(disk);
    expect(expectValue(await desk.listGames())).toHaveLength(1000);
    await desk.close();
  }
});
