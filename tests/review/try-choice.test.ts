import { describe, expect, test } from 'vitest';
import type { GameEvent } from '../../core/game/events.ts';
import { tryChoice } from '../../core/review/try-choice.ts';
import { review, SMALL_GAUGE } from './helpers.ts';

const GAME: GameEvent[] = [
  { type: 'dealt', seat: 'South', tiles: 'JJ FF NE 0 1389b 25c' },
  { type: 'gave', step: 'right', tiles: 'N E 0' },
  { type: 'received', step: 'right', tiles: '4d 1b 2b' },
  { type: 'drew', tile: '7d' },
  { type: 'discarded', seat: 'South', tile: '9b' },
];

describe('trying another choice', () => {
  const { decisions } = review(GAME);

  test('the choice that was made gives the worth that the look-back tells', () => {
    const [pass, discard] = decisions;
    expect(tryChoice(SMALL_GAUGE, GAME, 1, 'N E 0')?.average).toBeCloseTo(pass!.chosen.worth, 12);
    expect(tryChoice(SMALL_GAUGE, GAME, 4, '9b')).toEqual({ average: discard!.chosen.worth, same: null });
  });

  test('each of the best choices listed gives its worth, and the same incoming tiles are told of a pass', () => {
    for (const { tiles, worth } of decisions[0]!.top) {
      const tried = tryChoice(SMALL_GAUGE, GAME, 1, tiles);
      expect(tried?.average).toBeCloseTo(worth, 12);
      expect(tried?.same).not.toBeNull();
    }
  });

  test.each([
    [1, 'N E'],
    [1, 'J N E'],
    [1, 'GGG'],
    [1, 'zz'],
    [0, 'N'],
    [2, '4d'],
    [4, '5d'],
  ])('at event %i "%s" is no choice', (place, tiles) => {
    expect(tryChoice(SMALL_GAUGE, GAME, place, tiles)).toBeNull();
  });
});
