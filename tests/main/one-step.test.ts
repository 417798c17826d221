import { describe, expect, test, vi } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { callDesk } from '../../main/desk/calls.ts';
import type { Desk } from '../../main/desk/desk.ts';
import { GameSession } from '../../renderer/session/game-session.ts';
import { formatLayout } from '../../renderer/session/layout.ts';
import { cardText, EVENTS, gameRecord, openOn } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

/** How many events were applied and how many texts of tiles were parsed since the last reset. */
const work = vi.hoisted(() => ({ events: 0, texts: 0 }));

vi.mock(import('../../core/game/state.ts'), async (original) => {
  const real = await original();
  return {
    ...real,
    applyEvent: (...given) => {
      work.events += 1;
      return real.applyEvent(...given);
    },
    replay: (events) => {
      work.events += events.length;
      return real.replay(events);
    },
  };
});

vi.mock(import('../../core/tiles/text.ts'), async (original) => {
  const real = await original();
  const counted =
    <Given extends readonly unknown[], Value>(parse: (...given: Given) => Value) =>
    (...given: Given): Value => {
      work.texts += 1;
      return parse(...given);
    };
  return { ...real, parseTiles: counted(real.parseTiles), parseTileList: counted(real.parseTileList) };
});

/** A session as in the window, on a real desk, with the names of the calls that it made. */
function sessionOn(desk: Desk): { session: GameSession; calls: string[] } {
  const calls: string[] = [];
  const watched = new Proxy(desk, {
    get: (target, name) => {
      if (typeof name === 'string') calls.push(name);
      return Reflect.get(target, name);
    },
  });
  const world = {
    desk: watched,
    appVersion: '0',
    zone: 'UTC',
    now: () => '2026-11-25T19:00:00Z',
    newId: () => 'game-1',
  };
  return { session: new GameSession(world, JSON.parse(cardText('Played'))), calls };
}

async function saved(session: GameSession): Promise<void> {
  await expect.poll(() => session.saved.status).toBe('saved');
}

function syncsOf(disk: MemoryDisk): number {
  return disk.calls.filter((call) => call.startsWith('sync')).length;
}

describe('one step of a game', () => {
  test('appending the n-th event applies that event and no other', async () => {
    const desk = await openOn(new MemoryDisk());
    expectValue(await desk.startGame(gameRecord('g-1')));
    for (const [place, event] of EVENTS.entries()) {
      Object.assign(work, { events: 0, texts: 0 });
      expectValue(await desk.appendEvent('g-1', place, event));
      expect(work.events).toBe(1);
      // Its own tiles, and those of the deal, whose jokers the journal's list shows.
      expect(work.texts).toBeLessThanOrEqual(2);
    }
  });

  test('how the rack then lies may stand with an event and with its undo, or be left out', async () => {
    const desk = await openOn(new MemoryDisk());
    expectValue(await desk.startGame(gameRecord('g-1')));
    const laidOut = async (): Promise<unknown> => expectValue(await desk.openGame('g-1')).arrangement;
    expectValue(await callDesk(desk, 'appendEvent', ['g-1', 0, EVENTS[0], 'FF | N']));
    expect(await laidOut()).toBe('FF | N');
    expectValue(await callDesk(desk, 'appendEvent', ['g-1', 1, EVENTS[1]]));
    expect(await laidOut()).toBe('FF | N');
    expectValue(await callDesk(desk, 'dropEvent', ['g-1', 1, 'N | FF']));
    expect(await laidOut()).toBe('N | FF');
    for (const wrong of [5, null, 'x'.repeat(201)]) {
      expect(await callDesk(desk, 'appendEvent', ['g-1', 1, EVENTS[1], wrong])).toMatchObject({ ok: false });
    }
  });

  test('a received tile is one call of the desk and one flush', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    const { session, calls } = sessionOn(desk);
    expectValue(session.apply({ type: 'dealt', seat: 'South', tiles: 'FF N 0 13b 4578c 22d1d' }));
    expectValue(session.apply({ type: 'gave', step: 'right', tiles: 'N 0 1b' }));
    await saved(session);
    calls.length = 0;
    const before = syncsOf(disk);
    expectValue(session.apply({ type: 'received', step: 'right', tiles: '1d' }));
    await saved(session);
    expect(calls).toEqual(['appendEvent']);
    expect(syncsOf(disk) - before).toBe(1);
    const kept = expectValue(await desk.openGame('game-1'));
    expect(kept.events).toEqual(session.events);
    expect(kept.arrangement).toBe(formatLayout(session.layout));
  });
});
