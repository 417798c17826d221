import { describe, expect, test } from 'vitest';
import type { GameEvent } from '../../core/game/events.ts';
import { type TriedChoice, tryChoice } from '../../core/review/try-choice.ts';
import { USUAL_RULE } from '../../core/plan/race.ts';
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

/** Few futures: what is tested here holds for any number of them. */
const RACE = { ...USUAL_RULE, looks: [2], blockSize: 64 };
const CHANCE = gameChance(SMALL, PLAY_RULE);

/** Tries tiles by their text, as the window does. */
function tried(events: readonly GameEvent[], place: number, text: string): TriedChoice | null {
  const tiles = parseTiles(text);
  const measure = { ...CHANCE.measure, race: RACE };
  return tiles.ok ? finish(tryChoice(playedGame(events), measure, place, tiles.value)) : null;
}

/** The same game with another pass to the right. */
function passing(tiles: string): GameEvent[] {
  return GAME.slice(0, 3).map((event) => (event.type === 'gave' ? { ...event, tiles } : event));
}

describe('trying another choice', () => {
  const { decisions } = review(GAME);

  test('the choice that was made gains nothing on itself', () => {
    const pass = tried(GAME, 1, 'N E 0')!;
    expect(pass.tried).toEqual(pass.made);
    expect(pass.gain).toBe(0);
    const { worth } = decisions[1]!.chosen;
    const discard = { average: worth, same: null };
    expect(tried(GAME, 4, '9b')).toEqual({ tried: discard, made: discard, gain: 0 });
  });

  test('what a pass really led to is the chance that the course of the game tells', () => {
    const game = playedGame(GAME);
    const { tried: other, made } = tried(GAME, 1, 'FF 2c')!;
    expect(made.same).toBe(CHANCE.at(game.before(3), GAME.slice(0, 3)));
    const instead = passing('FF 2c');
    expect(other.same).toBe(CHANCE.at(playedGame(instead).before(3), instead));
    expect(made.same).not.toBe(made.average);
  });

  test('a pass is set against another on the same futures: whichever was made, the two chances are the same', () => {
    const [kept, torn] = ['N E 5c', 'FF 2c'];
    const one = tried(passing(kept), 1, torn)!;
    const other = tried(passing(torn), 1, kept)!;
    expect(one.tried).toEqual(other.made);
    expect(one.made).toEqual(other.tried);
    expect(one.gain).toBeLessThan(0);
    expect(one.gain).toBeCloseTo(one.tried.average - one.made.average, 12);
    expect(one.gain).toBeCloseTo(-other.gain, 12);
  });

  test('passes that mirror each other in two suits are as good as each other, and neither gains', () => {
    const mirrored: GameEvent[] = [
      { type: 'dealt', seat: 'South', tiles: 'JJ FF NE 0 1389b 5c 5d' },
      { type: 'gave', step: 'right', tiles: 'N E 5c' },
    ];
    const { tried: other, made, gain } = tried(mirrored, 1, 'N E 5d')!;
    expect(gain).toBe(0);
    expect(other.average).toBeCloseTo(made.average, 1);
    expect(other.same).toBeNull();
  });

  test('in a courtesy as many tiles as came about can be tried, no more and no fewer', () => {
    const place = COURTESY.length - 2;
    const courtesy = (text: string): unknown => tried(COURTESY, place, text);
    expect(courtesy('7d')).not.toBeNull();
    expect(courtesy('7c')).not.toBeNull();
    expect([courtesy(''), courtesy('77c'), courtesy('7c 7d')]).toEqual([null, null, null]);
  });

  test('where tiles may go on unseen, fewer own ones can be tried; the same tiles are told of as many only', () => {
    const place = 5;
    expect(tried(COURTESY, place, '6b 6c')?.tried.same).not.toBeNull();
    expect(tried(COURTESY, place, '6b 6c 6d')).toMatchObject({ tried: { same: null } });
    expect(tried(COURTESY, place, '')).toMatchObject({ tried: { same: null } });
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
