import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { GAME_FILE_LIMITS } from '../../core/game/file/read-game-file.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { cardText, FOLDER, gameRecord, openOn } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

/** A card that nests so deep, itself counted. */
function nested(depth: number): object {
  let inner: object = {};
  for (let level = 2; level < depth; level += 1) inner = { inner };
  return { ...JSON.parse(cardText('Deep')), inner };
}

/** A card with a field that reaches into the language. */
const REACHING = JSON.parse(cardText('Reaching').replace('{', '{"__proto__": {"a": 1},')) as object;

async function readAgain(disk: MemoryDisk, id: string): Promise<boolean> {
  const desk = await openOn(disk);
  const opened = await desk.openGame(id);
  expect(expectValue(await desk.notices())).toEqual([]);
  await desk.close();
  return opened.ok;
}

describe('a game is taken only if it can be read back', () => {
  const given: readonly (readonly [string, GameRecord, boolean])[] = [
    ['with the deepest card that is read', gameRecord('g-1', { card: nested(40) }), true],
    ['with a card that is deeper', gameRecord('g-1', { card: nested(60) }), false],
    ['with a card so deep that it could not be written', gameRecord('g-1', { card: nested(5000) }), false],
    ['with a field that no game has', gameRecord('g-1', { card: REACHING }), false],
    ['larger than any', gameRecord('g-1', { card: { long: 'x'.repeat(GAME_FILE_LIMITS.letters) } }), false],
  ];

  test.each(given)('begun %s', async (_, record, taken) => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expect((await desk.startGame(record)).ok).toBe(taken);
    await desk.close();
    expect(await readAgain(disk, 'g-1')).toBe(taken);
    expect([...disk.texts().keys()].some((path) => path.includes('damaged'))).toBe(false);
  });

  test.each(given)('brought in %s', async (_, record, taken) => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expect((await desk.importGames([record])).ok).toBe(taken);
    await desk.close();
    expect(await readAgain(disk, 'g-1')).toBe(taken);
  });
});

test('a game that grows is refused the step that would make it larger than what is read; all before that is there', async () => {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  // Nearly as large as any from the start, so that few steps do.
  const card = { long: 'x'.repeat(GAME_FILE_LIMITS.letters - 100_000) };
  expectValue(await desk.startGame(gameRecord('g-1', { card })));
  const text = 'warm rolls '.repeat(900);
  const at = '2026-11-25T18:00:01Z';
  let noted = 0;
  let answer = await desk.appendEvent('g-1', noted, { type: 'noted', text, at });
  for (; answer.ok && noted < 20; answer = await desk.appendEvent('g-1', noted, { type: 'noted', text, at }))
    noted += 1;
  expect(answer).toMatchObject({ problem: { code: 'too-large', message: expect.stringMatching(/Start a new game/) } });
  expectValue(await desk.changeGame('g-1', { place: 'Home' }));
  await desk.close();
  const again = await openOn(disk);
  const { events, place } = expectValue(await again.openGame('g-1'));
  expect([events.length, place]).toEqual([noted, 'Home']);
  const file = [...disk.texts()].find(([path]) => path.startsWith(`${FOLDER}/games/`));
  expect(file?.[1].length).toBeGreaterThan(GAME_FILE_LIMITS.letters - 2 * text.length);
});
