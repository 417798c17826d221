import { describe, expect, test } from 'vitest';
import type { GameEvent } from '../../core/game/events.ts';
import type { GameState } from '../../core/game/game-state.ts';
import { adviceSteps, type PlayAdvice } from '../../core/review/advice.ts';
import { discardChoices } from '../../core/review/choices.ts';
import type { Engine } from '../../core/review/worth.ts';
import { formatTiles } from '../../core/tiles/text.ts';
import { play } from '../game/helpers.ts';
import { DEMO, engineOf, SMALL } from '../review/helpers.ts';

function adviceOf(engine: Engine, state: GameState): PlayAdvice {
  const steps = adviceSteps(engine, state);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

const STAIRS: GameEvent = { type: 'dealt', seat: 'South', tiles: 'FF 111b 222b 333b N W' };

describe('what to discard', () => {
  test('every discard is there, in the order of the look-back and with its worth', () => {
    const state = play({ type: 'dealt', seat: 'East', tiles: 'JJ FF NE 0 1389b 25c 7d' });
    const advised = adviceOf(DEMO, state);
    const choices = discardChoices(DEMO, state);
    expect(advised.discards.map(({ tiles, worth }) => [formatTiles(tiles), worth])).toEqual(
      choices.map(({ tiles, worth }) => [formatTiles(tiles), worth]),
    );
    expect(advised.discards[0]?.cost).toBe(0);
    expect(advised.discards[0]?.verdict).toBe('best');
    expect(advised.call).toBeNull();
  });

  test('a tile that no hand wants costs nothing, one of the hand costs much', () => {
    const state = play(STAIRS, { type: 'drew', tile: '9d' });
    const { discards } = adviceOf(SMALL, state);
    const costOf = (tile: string): number | undefined =>
      discards.find(({ tiles }) => formatTiles(tiles) === tile)?.cost;
    expect(costOf('9d')).toBe(0);
    expect(costOf('F')).toBeGreaterThan(0.02);
    expect(discards.at(-1)?.verdict).toBe('costly');
  });
});

describe('a discard on the table', () => {
  const waiting: readonly GameEvent[] = [
    { type: 'dealt', seat: 'South', tiles: 'FF 111b 222b 3333b N' },
    { type: 'discarded', seat: 'East', tile: '1b' },
  ];

  test('a call that helps is named with what letting it go leaves', () => {
    const { call } = adviceOf(SMALL, play(...waiting));
    expect(call?.from).toBe('East');
    expect(call?.choices.map(({ tiles }) => formatTiles(tiles))).toContain('1111b');
    expect(call?.choices.map(({ tiles }) => tiles.size)).toContain(0);
    expect(call?.choices[0]?.hand?.line.id).toBe('s1');
  });

  test('a discarded joker is dead: it can neither be called nor win', () => {
    const advice = adviceOf(SMALL, play(STAIRS, { type: 'discarded', seat: 'East', tile: 'J' }));
    expect(advice).toEqual({ wins: [], discards: [], call: null });
  });

  test('own discards can not be called', () => {
    const state = play(STAIRS, { type: 'discarded', seat: 'South', tile: '9c' });
    expect(adviceOf(SMALL, state).call).toBeNull();
  });
});

describe('a complete hand', () => {
  test('a pair can be called only as the last tile of the winning hand', () => {
    const state = play(
      { type: 'dealt', seat: 'South', tiles: 'F 1111b 2222c 3333d' },
      { type: 'discarded', seat: 'West', tile: 'F' },
    );
    const stairs = adviceOf(SMALL, state);
    expect(stairs.wins.map(({ id }) => id)).toEqual([]);
    const same = play(
      { type: 'dealt', seat: 'South', tiles: 'F 1111b 2222b 3333b' },
      { type: 'discarded', seat: 'West', tile: 'F' },
    );
    expect(adviceOf(SMALL, same).wins.map(({ id }) => id)).toEqual(['s1']);
  });

  test('a concealed hand may not expose before it wins', () => {
    const concealed: GameEvent = { type: 'dealt', seat: 'South', tiles: '11b 22b 33b 44b 55b 66b 7b' };
    const won = adviceOf(SMALL, play(concealed, { type: 'drew', tile: '7b' }));
    expect(won.wins.map(({ id }) => id)).toEqual(['s2']);
  });

  test('laid open to the last tile it has won, and there is no tile to discard', () => {
    const laid = engineOf({
      format: 'windrow.card',
      version: 1,
      title: 'One hand',
      season: '',
      sections: [{ name: 'Only', lines: [{ id: 'open', pattern: 'FFFF NNNN EEE WWW' }] }],
    });
    const called = (tile: string, group: string): GameEvent => ({ type: 'called', seat: 'South', tile, group });
    const thrown = (tile: string): GameEvent => ({ type: 'discarded', seat: 'South', tile });
    const state = play(
      { type: 'dealt', seat: 'South', tiles: 'FFF NNN EE WW 123b' },
      called('F', 'FFFF'),
      thrown('1b'),
      called('N', 'NNNN'),
      thrown('2b'),
      called('E', 'EEE'),
      thrown('3b'),
      called('W', 'WWW'),
    );
    expect(state.rack.size).toBe(0);
    const advice = adviceOf(laid, state);
    expect(advice.wins.map(({ id }) => id)).toEqual(['open']);
    expect(advice).toMatchObject({ discards: [], call: null });
  });

  test('with a group laid open that no hand wants, no hand is left, whatever is discarded', () => {
    const call: GameEvent = { type: 'called', seat: 'South', tile: 'W', group: 'WWW' };
    const state = play({ type: 'dealt', seat: 'South', tiles: 'FF WW 111b 222b 333b' }, call);
    const { discards } = adviceOf(SMALL, state);
    expect(discards).toHaveLength(4);
    for (const discard of discards) expect(discard).toMatchObject({ worth: 0, cost: 0, verdict: 'best', hand: null });
  });

  test('after the result there is nothing to advise', () => {
    const state = play(STAIRS, { type: 'ended', result: 'wall' });
    expect(adviceOf(SMALL, state)).toEqual({ wins: [], discards: [], call: null });
  });
});
