import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { type GameState, NEW_GAME } from '../../core/game/game-state.ts';
import { readGameFile } from '../../core/game/file/read-game-file.ts';
import { writeGameFile } from '../../core/game/file/write-game-file.ts';
import { legalEvents } from '../../core/game/legal.ts';
import { applyEvent, stateOf } from '../../core/game/state.ts';
import { handSize, handView } from '../../core/game/hand-view.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { recordOf } from '../review/helpers.ts';
import { randomGame } from '../review/random-game.ts';

const games = fc.nat(1_000_000).map(randomGame);

/** States as plain data, fields sorted: tile sets compare by their text. */
const plain = (state: GameState): string =>
  JSON.stringify(state, (_, value: unknown) => {
    if (value instanceof Tiles) return value.toString();
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
    return Object.fromEntries(Object.entries(value).toSorted(([one], [other]) => (one < other ? -1 : 1)));
  });

test('the replay of a kept game equals the live state, event by event', () => {
  const property = fc.property(games, (untimed) => {
    const record = recordOf(untimed);
    const { events } = record;
    let live = NEW_GAME;
    for (const [place, event] of events.entries()) {
      live = expectValue(applyEvent(live, event));
      expect(plain(expectValue(stateOf(events.slice(0, place + 1))))).toBe(plain(live));
    }
    const opened = expectValue(readGameFile(writeGameFile(record)));
    expect([plain(opened.state), opened.damage]).toEqual([plain(live), null]);
  });
  fc.assert(property, { seed: 51, numRuns: 300 });
});

test('rack and order of arrival agree, and rack, gone and unseen are the whole set, after any legal event', () => {
  const property = fc.property(games, (events) => {
    for (const place of events.keys()) {
      const state = expectValue(stateOf(events.slice(0, place + 1)));
      expect(Tiles.of(state.arrival).equals(state.rack)).toBe(true);
      const { rack, gone, unseen } = handView(state);
      expect(rack.plus(gone).plus(unseen).equals(Tiles.fullSet)).toBe(true);
      const waiting = state.exchange?.toCome ?? 0;
      expect([13, 14]).toContain(handSize(state) + waiting);
    }
  });
  fc.assert(property, { seed: 53, numRuns: 300 });
});

test('what is told to be legal is accepted, and what is told not to be is refused', () => {
  const property = fc.property(games, fc.nat(), (events, cut) => {
    const state = expectValue(stateOf(events.slice(0, cut % (events.length + 1))));
    const legal = legalEvents(state);
    const drawn = legal.canCome.toKinds()[0];
    if (drawn === undefined || state.seat === null) return;
    expect(applyEvent(state, { type: 'drew', tile: Tiles.of([drawn]).toString() }).ok).toBe(legal.draw);
    expect(applyEvent(state, { type: 'stopped', before: 'left2' }).ok).toBe(legal.stop === 'left2');
    expect(applyEvent(state, { type: 'stopped', before: 'courtesy' }).ok).toBe(legal.stop === 'courtesy');
    expect(applyEvent(state, { type: 'ended', result: 'wall' }).ok).toBe(legal.end);
    for (const { owner, kind } of legal.ownSwaps) {
      const { seat } = state;
      expect(applyEvent(state, { type: 'swapped', seat, owner, tile: Tiles.of([kind]).toString() }).ok).toBe(true);
    }
    if (legal.give !== null) {
      const tiles = Tiles.of(legal.give.givable.toKinds().slice(0, 3)).toString();
      expect(applyEvent(state, { type: 'gave', step: legal.give.step, tiles }).ok).toBe(true);
    }
  });
  fc.assert(property, { seed: 57, numRuns: 400 });
});
