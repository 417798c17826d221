import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { DEFAULT_POINT_RULES } from '../../core/game/point-rules.ts';
import { callDesk } from '../../main/desk/calls.ts';
import { EVENTS, event, gameRecord, openOn } from '../main/support/desks.ts';
import { MemoryDisk } from '../main/support/memory-disk.ts';

test('CR-F6: names can be removed from all games in one action: no file holds them any more', async () => {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  const players = { West: 'Heron' };
  expectValue(await desk.startGame(gameRecord('g-1', { players, events: EVENTS.slice(0, 2) })));
  expectValue(await desk.startGame(gameRecord('g-2', { players })));
  expectValue(await desk.startGame(gameRecord('g-3')));
  expectValue(await desk.startGame(gameRecord('g-4', { players })));
  expectValue(await desk.appendEvent('g-1', 2, event(2)));
  expectValue(await desk.removeGame('g-4'));
  expect(expectValue(await desk.removeNames())).toBe(3);
  expect([...disk.texts()].filter(([, text]) => text.includes('Heron'))).toEqual([]);
  expect(expectValue(await desk.openGame('g-1')).events).toHaveLength(3);
  expect(expectValue(await desk.openGame('g-1')).players).toBeUndefined();
  expect(expectValue(await desk.removeNames())).toBe(0);
  expectValue(await desk.restoreGame('g-4'));
  expect(expectValue(await desk.openGame('g-4')).players).toBeUndefined();
});

test('the rules of payment are kept with the settings and with a game, and nonsense is refused', async () => {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  const payment = { ...DEFAULT_POINT_RULES, scheme: 'fixed' as const, stake: 10, limit: 40 };
  expect(expectValue(await desk.readPreferences()).payment).toEqual(DEFAULT_POINT_RULES);
  expect(expectValue(await desk.changePreferences({ payment })).payment).toEqual(payment);
  expectValue(await desk.startGame(gameRecord('g-1')));
  expectValue(await desk.changeGame('g-1', { payment }));
  await desk.close();
  const later = await openOn(disk);
  expect(expectValue(await later.readPreferences()).payment).toEqual(payment);
  expect(expectValue(await later.openGame('g-1')).payment).toEqual(payment);
  const wrong = [{ payment: { ...payment, stake: -1 } }];
  expect(await callDesk(later, 'changePreferences', wrong)).toMatchObject({ problem: { code: 'wrong-arguments' } });
});
