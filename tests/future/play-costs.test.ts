import { describe, expect, test } from 'vitest';
import { finish } from '../../core/base/steps.ts';
import { countPairs, gapOf, type PairCount, PLAY_RULE, PlayDuels } from '../../core/future/play-costs.ts';
import { type Costed, openChoices, withCosts } from '../../core/review/play-costs.ts';
import { PlayGames } from '../../core/review/play-games.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { provisionalChance } from '../../core/chance/card-chance.ts';
import { demoTable } from '../table/cards.ts';
import { play } from '../game/helpers.ts';

const count = (games: number, onlyFirst: number, onlyOther: number): PairCount => ({ games, onlyFirst, onlyOther });
const FULL = PLAY_RULE.looks.at(-1) as number;

describe('the gap between two choices', () => {
  test('is the difference of the shares won, with its standard error', () => {
    const { mean, error } = gapOf(count(400, 60, 40));
    expect(mean).toBeCloseTo(0.05, 12);
    expect(error).toBeCloseTo(Math.sqrt((101 / 400 - 0.0025) / 400), 12);
  });

  test('is never known for sure', () => {
    expect(gapOf(count(128, 0, 0))).toEqual({ mean: 0, error: expect.closeTo(1 / 128, 12) as number });
  });
});

describe('duels with the first choice', () => {
  test('CH-14: three at once, until each is settled, then the next three', () => {
    const duels = new PlayDuels([1, 2, 3, 4]);
    const [one = 0, two = 0] = PLAY_RULE.looks;
    expect(duels.due).toEqual({ others: [1, 2, 3], from: 0, to: one });
    duels.take(duels.due as never, [[count(one, 100, 0), count(one, 12, 10), count(one, 12, 10)]]);
    expect(duels.due).toEqual({ others: [2, 3], from: one, to: two });
    duels.take(duels.due as never, [
      [count(100, 0, 0), count(100, 0, 0)],
      [count(two - one - 100, 0, 0), count(two - one - 100, 90, 0)],
    ]);
    expect(duels.counts.get(2)).toEqual(count(two, 12, 10));
    expect(duels.isSettled(3)).toBe(true);
    expect(duels.due).toEqual({ others: [2], from: two, to: FULL });
    duels.take(duels.due as never, [[count(FULL - two, 0, 0)]]);
    expect(duels.due).toEqual({ others: [4], from: 0, to: one });
    duels.take(duels.due as never, [[count(one, 128, 0)]]);
    expect(duels.due).toBeNull();
    expect(duels.done).toBe(1);
  });
});

describe('a list with what games have told', () => {
  const first: Costed = { chance: 0.314, cost: 0, verdict: 'best', slip: null };
  const open: Costed = { chance: 0.314, cost: 0, verdict: null, slip: null };
  const costed = (list: readonly Costed[], ...counts: [number, PairCount][]): readonly Costed[] =>
    withCosts(list, new Map(counts));

  test('CH-14: a cost beyond what games can tell is said in whole games of a hundred, and the chance agrees with it', () => {
    const [, second] = costed([first, open], [1, count(FULL, 60, 10)]);
    expect(second).toMatchObject({ cost: 0.07, verdict: 'costly' });
    expect(second?.chance).toBeCloseTo(first.chance - 0.07, 12);
  });

  test.each([
    ['within what games can tell', count(128, 20, 12)],
    ['of less than two games in a hundred', count(100_000, 3000, 1700)],
    ['that is none', count(FULL, 50, 60)],
  ])('a difference %s is called equal', (_, counted) => {
    expect(costed([first, open], [1, counted])[1]).toMatchObject({ cost: 0, verdict: 'equal', chance: first.chance });
  });

  test('a choice that spends a joker is not called equal', () => {
    expect(costed([first, { ...open, slip: 'joker' }], [1, count(FULL, 9, 9)])[1]).toMatchObject({ verdict: 'slip' });
  });

  test('one that nothing is known of stays open, a dead one is as it was', () => {
    const dead: Costed = { chance: 0, cost: 0.314, verdict: 'costly', slip: null };
    expect(costed([first, open, open, dead], [1, count(FULL, 60, 10)]).slice(2)).toEqual([open, dead]);
    expect(openChoices([first, open, dead, open])).toEqual([1, 3]);
  });

  test('CH-15: one of the next three that won more beyond doubt leads, and the others are set against it', () => {
    const ahead = count(FULL, 10, 70);
    const list = [first, { ...first }, open, open, { ...open, slip: 'joker' as const }];
    const [lead, was, alike, other, spends] = costed(list, [2, ahead], [3, count(FULL, 40, 40)]);
    expect(lead).toMatchObject({ cost: 0, verdict: 'best', chance: expect.closeTo(0.394, 12) as number });
    for (const each of [was, alike, other]) {
      expect(each).toMatchObject({ cost: 0.08, verdict: 'costly', chance: expect.closeTo(0.314, 12) as number });
    }
    expect(spends).toMatchObject({ verdict: null, cost: 0 });
    expect(costed([first, open, open, open, open], [4, ahead])[0]).toEqual(first);
  });
});

describe('games from a moment', () => {
  const EVENTS: readonly GameEvent[] = [
    { type: 'dealt', seat: 'South', tiles: 'J FF N 0 13b 4578c 22d' },
    { type: 'discarded', seat: 'East', tile: '9c' },
    { type: 'drew', tile: '3b' },
  ];
  const games = (): PlayGames => {
    const found = PlayGames.at({ table: demoTable, chance: provisionalChance('club') }, play(...EVENTS), EVENTS);
    if (found === null) throw new Error('nothing is due');
    return found;
  };

  test('CH-12: are the same by whomever, in whatever parts, beside whatever other choice', () => {
    const whole = finish(games().count({ others: [1, 3], from: 0, to: 40 }));
    const parts = [
      finish(games().count({ others: [3], from: 25, to: 40 })),
      finish(games().count({ others: [3], from: 0, to: 25 })),
    ];
    const duels = new PlayDuels([3]);
    duels.take({ others: [3], from: 0, to: 40 }, parts);
    expect(duels.counts.get(3)).toEqual(whole[1]);
  });

  test('with the first choice twice are the same games', () => {
    expect(finish(games().count({ others: [0], from: 0, to: 60 }))).toEqual([count(60, 0, 0)]);
  });
});

test('games need a first choice', () => {
  expect(() => finish(countPairs({} as never, [], { others: [], from: 0, to: 1 }))).toThrow('first choice');
});
