import { describe, expect, test } from 'vitest';
import type { GameEvent } from '../../core/game/events.ts';
import { type TriedChoice, tryChoice } from '../../core/review/try-choice.ts';
import { finish } from '../../core/base/steps.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { PLAY_RULE } from '../../core/future/play-costs.ts';
import { gameChance, playedGame, review, SMALL } from './helpers.ts';

const GAME: GameEvent[] = [
  { type: 'dealt', seat: 'South', tiles: 'JJ FF NE 0 1389b 25c' },
  { type: 'gave', step: 'right', tiles: 'N E 0' },
  { type: 'received', step: 'right', tiles: '4d 1b 2b' },
  { type: 'drew', tile: '7d' },
  { type: 'discarded', seat: 'South', tile: '9b' },
  // Somebody else's; then one of South that was drawn and thrown without being entered.
  { type: 'discarded', seat: 'West', tile: 'N' },
  { type: 'discarded', seat: 'North', tile: 'E' },
  { type: 'discarded', seat: 'South', tile: '9c' },
];

/** Up to a courtesy in which South asked for two and one came about. */
const COURTESY: GameEvent[] = [
  ...GAME.slice(0, 3),
  { type: 'gave', step: 'across', tiles: '9b 5c 4d' },
  { type: 'received', step: 'across', tiles: '6d 6c 6b' },
  { type: 'gave', step: 'left', tiles: '6d 6c', blind: 1 },
  { type: 'received', step: 'left', tiles: '7d 7c' },
  { type: 'stopped', before: 'left2' },
  { type: 'gave', step: 'courtesy', tiles: '7d', asked: 2, offered: 1 },
  { type: 'received', step: 'courtesy', tiles: '2b' },
];

/** Tries tiles by their text, as the window does. */
function tried(events: readonly GameEvent[], place: number, text: string): TriedChoice | null {
  const tiles = parseTiles(text);
  return tiles.ok
    ? finish(tryChoice(playedGame(events), gameChance(SMALL, PLAY_RULE).measure, place, tiles.value))
    : null;
}

describe('trying another choice', () => {
  const { decisions } = review(GAME);

  test('the choice that was made gives the worth that the look-back tells', () => {
    const [pass, discard] = decisions;
    expect(tried(GAME, 1, 'N E 0')?.average).toBeCloseTo(pass!.chosen.worth, 12);
    expect(tried(GAME, 4, '9b')).toEqual({ average: discard!.chosen.worth, same: null, gain: 0 });
  });

  test('each of the best choices listed gives its worth, and the same incoming tiles are told of a pass', () => {
    for (const { tiles, worth } of decisions[0]!.top) {
      const found = tried(GAME, 1, tiles);
      expect(found?.average).toBeCloseTo(worth, 12);
      expect(found?.same).not.toBeNull();
    }
  });

  test('in a courtesy as many tiles as came about can be tried, no more and no fewer', () => {
    const place = COURTESY.length - 2;
    const courtesy = (text: string): unknown => tried(COURTESY, place, text);
    const { decisions } = review(COURTESY);
    expect(courtesy('7d')).toMatchObject({ average: decisions.at(-1)!.chosen.worth });
    expect(courtesy('7c')).not.toBeNull();
    expect([courtesy(''), courtesy('77c'), courtesy('7c 7d')]).toEqual([null, null, null]);
  });

  test('where tiles may go on unseen, fewer own ones can be tried; the same tiles are told of as many only', () => {
    const place = 5;
    expect(tried(COURTESY, place, '6b 6c')?.same).not.toBeNull();
    expect(tried(COURTESY, place, '6b 6c 6d')).toMatchObject({ same: null });
    expect(tried(COURTESY, place, '')).toMatchObject({ same: null });
  });

  test.each([
    [1, 'N E'],
    [1, 'J N E'],
    [1, 'GGG'],
    [1, 'N E 0 5c'],
    [1, 'zz'],
    [0, 'N'],
    [2, '4d'],
    [4, '5d'],
    [5, 'N'],
    [7, '1b'],
  ])('at event %i "%s" is no choice', (place, tiles) => {
    expect(tried(GAME, place, tiles)).toBeNull();
  });
});
