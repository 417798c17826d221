import { expect, it } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { type GameState, NEW_GAME } from '../../core/game/game-state.ts';
import { stateOf } from '../../core/game/state.ts';
import { PassDraft } from '../../renderer/session/pass-draft.ts';
import { Store } from '../../renderer/session/store.ts';

const DEALT: GameEvent = { type: 'dealt', seat: 'South', tiles: 'FF N 0 13b 4578c 22d1d' };
const passed = (step: 'right' | 'across' | 'left'): GameEvent[] => [
  { type: 'gave', step, tiles: 'N 0 1b' },
  { type: 'received', step, tiles: 'N 0 1b' },
];
const FIRST_LEFT: readonly GameEvent[] = [DEALT, ...passed('right'), ...passed('across')];
const COURTESY: readonly GameEvent[] = [...FIRST_LEFT, ...passed('left'), { type: 'stopped', before: 'left2' }];

/** A session at a state of a game. */
class Stand extends Store {
  id = 'g-1';
  state: GameState = NEW_GAME;

  be(events: readonly GameEvent[], id = 'g-1'): void {
    this.id = id;
    this.state = expectValue(stateOf(events));
    this.notify();
  }
}

function begun(events: readonly GameEvent[]): { readonly stand: Stand; readonly draft: PassDraft } {
  const stand = new Stand();
  stand.be(events);
  return { stand, draft: new PassDraft(stand) };
}

it('tiles that go unseen are as many fewer of the rack, where some may, and are forgotten with the pass', () => {
  const { stand, draft } = begun(FIRST_LEFT);
  expect([draft.blind, draft.wanted]).toEqual([0, 3]);
  draft.say({ blind: 2 });
  expect([draft.blind, draft.wanted]).toEqual([2, 1]);
  stand.be([...FIRST_LEFT, { type: 'noted', text: 'the same pass is due' }]);
  expect([draft.blind, draft.wanted]).toEqual([2, 1]);
  stand.be([...FIRST_LEFT, ...passed('left')]);
  expect([draft.blind, draft.wanted]).toEqual([0, 3]);
  stand.be(FIRST_LEFT);
  expect(draft.blind).toBe(0);
});

it('a courtesy is agreed on once both have said a number: the smaller counts', () => {
  const { stand, draft } = begun(COURTESY);
  expect(draft.wanted).toBeNull();
  draft.say({ asked: 2 });
  expect(draft.wanted).toBeNull();
  draft.say({ offered: 1 });
  expect([draft.asked, draft.offered, draft.wanted]).toEqual([2, 1, 1]);
  draft.say({ offered: 0 });
  expect(draft.wanted).toBe(0);
  stand.be(COURTESY, 'g-2');
  expect([draft.asked, draft.offered, draft.wanted]).toEqual([null, null, null]);
});

it('no pass is due before the deal', () => {
  expect(begun([]).draft.wanted).toBeNull();
});
