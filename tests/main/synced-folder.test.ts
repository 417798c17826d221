import { describe, expect, test, vi } from 'vitest';
import { type Random, randomFromSeed } from '../../core/base/random.ts';
import { expectValue, type Result } from '../../core/base/result.ts';
import { writeGameFile } from '../../core/game/file/write-game-file.ts';
import { cardText, event, FOLDER, gameRecord, openOn } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

vi.setConfig({ testTimeout: 120_000 });

const GAME = `${FOLDER}/games/2026/11/g-1.json`;

describe('CR-D7: a folder that a sync program changes under the app', () => {
  test('a game that came in while Windrow was closed is listed as it now is, not as the index remembers it', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.startGame(gameRecord('g-1')));
    await desk.close();
    await (await openOn(disk)).close();
    disk.now += 60_000;
    disk.put(GAME, writeGameFile(gameRecord('g-1', { place: 'Changed elsewhere' })));
    const again = await openOn(disk);
    expect(expectValue(await again.listGames())).toMatchObject([{ place: 'Changed elsewhere' }]);
    await again.close();
  });

  test('months in which nothing changed are not read again', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.startGame(gameRecord('g-1')));
    await desk.close();
    disk.now += 60_000;
    await (await openOn(disk)).close();
    disk.calls.length = 0;
    await (await openOn(disk)).close();
    expect(disk.calls.filter((call) => call === `read ${GAME}`)).toEqual([]);
  });

  test('a copy that it put beside a game is told of by name, left alone, and no game is lost', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.startGame(gameRecord('g-1')));
    await desk.close();
    const copy = `${FOLDER}/games/2026/11/g-1 (conflicted copy 2026-11-25).json`;
    disk.put(copy, writeGameFile(gameRecord('g-1', { place: 'Elsewhere' })));
    disk.put(`${FOLDER}/games/2026/11/.g-1.json.part`, 'half');
    const again = await openOn(disk);
    expect(expectValue(await again.notices())).toEqual([
      'Another program put "g-1 (conflicted copy 2026-11-25).json" among your games. To see what is in it, bring it in from the Journal.',
    ]);
    expect(expectValue(await again.listGames())).toHaveLength(1);
    await again.close();
    expect(disk.texts().has(copy)).toBe(true);
  });

  test('400 evenings with a sync program at work: no call is lost on the way, nothing that it brought is written over', async () => {
    for (let seed = 1; seed <= 400; seed += 1) await evening(randomFromSeed(seed));
  });
});

/** Twenty calls of a person, a sync program between them; then all that either wrote is still somewhere. */
async function evening(random: Random): Promise<void> {
  const disk = new MemoryDisk();
  const sync = new SyncProgram(disk, random);
  const desk = await openOn(disk);
  const written = new Set<string>();
  for (let turn = 0; turn < 20; turn += 1) {
    disk.now += 1000;
    const id = `g-${random.below(3)}`;
    const mark = `note ${turn}`;
    const game = await desk.openGame(id);
    const place = game.ok ? game.value.events.length : 0;
    const calls: (() => Promise<Result<unknown>>)[] = [
      () => desk.startGame(gameRecord(id, { place: `person ${turn}` })),
      () => desk.appendEvent(id, place, { type: 'noted', text: mark, at: event(0).at }),
      () => desk.saveCard('mine', cardText(`person ${turn}`)),
      () => desk.listCards(),
      () => desk.openCard('mine'),
    ];
    const asked = random.below(calls.length);
    const result = await calls[asked]?.();
    if (result?.ok === false) expect(result.problem.message).toMatch(/^[A-Z].*\.$/);
    if (result?.ok === true && asked === 1) written.add(mark);
    sync.act();
  }
  await desk.close();
  disk.now += 1000;
  const again = await openOn(disk);
  for (const { id } of expectValue(await again.listGames())) await again.openGame(id);
  await again.close();
  const all = [...disk.texts()]
    .filter(([path]) => !path.endsWith('index.jsonl'))
    .map(([, text]) => text)
    .join('\n');
  expect([...sync.brought].filter((mark) => !all.includes(mark))).toEqual([]);
  // What it took away itself may have taken a person's note along.
  if (!sync.tookAway) expect([...written].filter((mark) => !all.includes(mark))).toEqual([]);
}

/** Brings other versions, copies, halves of files; takes files away. */
class SyncProgram {
  readonly #disk: MemoryDisk;
  readonly #random: Random;
  /** A mark of each version that it brought and did not take away again. */
  readonly brought = new Set<string>();
  tookAway = false;
  #turn = 0;

  constructor(disk: MemoryDisk, random: Random) {
    this.#disk = disk;
    this.#random = random;
  }

  act(): void {
    this.#turn += 1;
    const mark = `sync ${this.#turn}!`;
    const game = `${FOLDER}/games/2026/11/g-${this.#random.below(3)}`;
    const card = `${FOLDER}/cards/mine.card.json`;
    switch (this.#random.below(8)) {
      case 0:
        return this.#put(`${game}.json`, writeGameFile(gameRecord('g-1', { place: mark })), mark);
      case 1:
        return this.#put(`${game} (conflicted copy).json`, writeGameFile(gameRecord('g-1', { place: mark })), mark);
      case 2:
        return this.#put(`${game}.json`, writeGameFile(gameRecord('g-1', { place: mark })).slice(0, -40), mark);
      case 3:
        return this.#put(card, cardText(mark), mark);
      case 4:
        return this.#put(card, cardText(mark).slice(0, -10), mark);
      case 5:
        return this.#put(`${FOLDER}/index.jsonl`, 'from another computer', '');
      case 6:
        return this.#put(`${game.replace('/11/', '/12/')}.json`, '{"kind":"windrow.ga', '');
      default:
        return undefined;
    }
  }

  /** What it writes over itself, it has taken away. */
  #put(path: string, text: string, mark: string): void {
    const before = this.#disk.texts().get(path);
    this.#disk.now += 1000;
    this.#disk.put(path, text);
    if (before !== undefined && !path.endsWith('index.jsonl')) {
      this.tookAway = true;
      for (const old of this.brought) if (before.includes(old)) this.brought.delete(old);
    }
    if (mark !== '') this.brought.add(mark);
  }
}
