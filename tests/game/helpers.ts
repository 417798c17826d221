import { expect } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import type { GameEvent } from '../../core/game/events.ts';
import type { GameState } from '../../core/game/game-state.ts';
import { stateOf } from '../../core/game/state.ts';

/** 13 tiles of South; every test about play begins with one of these deals. */
export const SOUTH: GameEvent = { type: 'dealt', seat: 'South', tiles: 'JJ FF NE 0 1389b 25c' };
/** The same and a seven dot. */
export const EAST: GameEvent = { type: 'dealt', seat: 'East', tiles: 'JJ FF NE 0 1389b 25c 7d' };

export function play(...events: GameEvent[]): GameState {
  return expectValue(stateOf(events));
}

/** Code and sentence of the last event's refusal; the ones before it must be legal. */
export function refusal(...events: GameEvent[]): [string, string] {
  const result = stateOf(events);
  if (result.ok) throw new Error('this should have been refused');
  const { code, message, at } = result.problem;
  expect(at).toBe(events.length - 1);
  return [code, message.replace(`Event ${events.length} is not possible: `, '')];
}

export const gave = (tiles: string, step: 'right' | 'across' | 'left' = 'right'): GameEvent => ({
  type: 'gave',
  step,
  tiles,
});
export const received = (tiles: string, step: 'right' | 'across' | 'left' = 'right'): GameEvent => ({
  type: 'received',
  step,
  tiles,
});
