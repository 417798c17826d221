import { describe, expect, test } from 'vitest';
import { likelyDrawn } from '../../core/game/stage.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { EAST, play, SOUTH } from './helpers.ts';

const threw = (seat: 'East' | 'South' | 'West' | 'North', tile: string): GameEvent => ({
  type: 'discarded',
  seat,
  tile,
});

describe('about how many tiles all seats have drawn', () => {
  test('MD-C9: none before play, so that a reach between passes is that of its beginning; none when East has begun', () => {
    expect(likelyDrawn(play(SOUTH))).toBe(0);
    expect(likelyDrawn(play(EAST, threw('East', '7d')))).toBe(0);
  });

  test('with all discards logged, one for each of them but the first', () => {
    const round = [threw('West', '4b'), threw('North', '4b'), threw('East', '4c')];
    expect(likelyDrawn(play(SOUTH, threw('East', '4c'), ...round.slice(0, 2)))).toBe(2);
    expect(likelyDrawn(play(EAST, threw('East', '7d'), threw('South', '4b'), ...round.slice(0, 1)))).toBe(2);
  });

  test('who logs only own turns: four for each after the first', () => {
    const turn = (tile: string): GameEvent[] => [{ type: 'drew', tile }, threw('South', tile)];
    expect(likelyDrawn(play(SOUTH, ...turn('7d'), ...turn('7d'), ...turn('4c')))).toBe(8);
  });

  test('never more than the wall holds', () => {
    const kinds = [
      '4b',
      '5b',
      '6b',
      '7b',
      '2b',
      '1c',
      '3c',
      '4c',
      '6c',
      '7c',
      '8c',
      '9c',
      '1d',
      '2d',
      '3d',
      '4d',
      '6d',
    ];
    const many = kinds.flatMap((tile) =>
      [0, 1].flatMap((): GameEvent[] => [{ type: 'drew', tile }, threw('South', tile)]),
    );
    expect(likelyDrawn(play(SOUTH, ...many))).toBe(99);
  });
});
