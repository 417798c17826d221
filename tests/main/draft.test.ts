import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { shuffledSet } from '../../core/tiles/deal.ts';
import type { Desk } from '../../main/desk/desk.ts';
import { GameSession } from '../../renderer/session/game-session.ts';
import { addTile, formatLayout } from '../../renderer/session/layout.ts';
import { cardText, FOLDER, gameRecord, openOn } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

const DRAFT = `${FOLDER}/draft.json`;
const TYPED = gameRecord('g-1', { arrangement: 'FF N', players: { North: 'the host' } });

/** A session as in the window, on a real desk. */
function sessionOn(desk: Desk, newId = 'game-1'): GameSession {
  const world = { desk, appVersion: '0', zone: 'UTC', now: () => '2026-11-25T19:00:00Z', newId: () => newId };
  return new GameSession(world, JSON.parse(cardText('Played')));
}

async function saved(session: GameSession): Promise<void> {
  await expect.poll(() => session.saved.status).toBe('saved');
}

function type(session: GameSession): void {
  for (const kind of shuffledSet(randomFromSeed(7)).slice(0, 3)) session.lay(addTile(session.layout, kind));
}

describe('tiles typed before the deal is complete', () => {
  test('make no game of 0 events: neither a file nor a line in the journal', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    const session = sessionOn(desk);
    type(session);
    await saved(session);
    expect(expectValue(await desk.listGames())).toEqual([]);
    await desk.close();
    expect([...disk.texts().keys()].filter((path) => /games|open/.test(path))).toEqual([]);
  });

  test('are there after a restart, with all that is known of the game, and go on from there', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    const session = sessionOn(desk);
    type(session);
    session.describe({ place: 'Lakeside library', evening: 'thursday' });
    await saved(session);
    await desk.close();
    const again = await openOn(disk);
    const draft = expectValue(await again.readDraft());
    expect(draft).toMatchObject({ id: 'game-1', events: [], place: 'Lakeside library', evening: 'thursday' });
    const next = sessionOn(again, 'another');
    if (draft !== null) next.open(draft, 'draft');
    expect(next.untouched).toBe(false);
    expect(formatLayout(next.layout)).toBe(formatLayout(session.layout));
    type(next);
    await saved(next);
    expect(expectValue(await again.readDraft())?.arrangement).toBe(formatLayout(next.layout));
    expectValue(next.apply({ type: 'dealt', seat: 'South', tiles: 'FF N 0 13b 4578c 22d1d' }));
    await saved(next);
    expect(expectValue(await again.listGames())).toMatchObject([
      { id: 'game-1', events: 1, place: 'Lakeside library' },
    ]);
    expect(expectValue(await again.readDraft())).toBeNull();
    expect(disk.texts().has(DRAFT)).toBe(false);
  });

  test('stay when another game is started', async () => {
    const desk = await openOn(new MemoryDisk());
    expectValue(await desk.keepDraft(TYPED));
    expectValue(await desk.startGame(gameRecord('g-2')));
    expect(expectValue(await desk.readDraft())).toEqual(TYPED);
  });

  test('a crash right after the deal leaves the game and no draft of it', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.keepDraft(TYPED));
    disk.watch = (call) => {
      if (call === 'remove') throw Object.assign(new Error('held'), { code: 'EBUSY' });
      return undefined;
    };
    expectValue(await desk.startGame(TYPED));
    expect(disk.texts().has(DRAFT)).toBe(true);
    expect(expectValue(await desk.readDraft())).toBeNull();
  });

  test('names of players go from them, too', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.keepDraft(TYPED));
    expect(expectValue(await desk.removeNames())).toBe(1);
    expect(expectValue(await desk.removeNames())).toBe(0);
    expect(disk.texts().get(DRAFT)).not.toContain('the host');
  });

  test('CR-J4: a file of them that can not be read is set aside, never written over', async () => {
    const disk = new MemoryDisk();
    disk.put(DRAFT, '{"kind":"windrow.ga');
    const desk = await openOn(disk);
    expectValue(await desk.keepDraft(TYPED));
    expect(expectValue(await desk.notices()).join()).toMatch(/typed before a deal could not be read/);
    const kept = [...disk.texts()].find(([path]) => path.startsWith(`${DRAFT}.damaged-`));
    expect(kept?.[1]).toBe('{"kind":"windrow.ga');
    expect(expectValue(await desk.readDraft())).toEqual(TYPED);
  });

  test('what is no game is refused with words, and nothing is written', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expect(await desk.keepDraft({ ...TYPED, zone: 5 as never })).toMatchObject({ ok: false });
    expect(disk.texts().has(DRAFT)).toBe(false);
  });
});
