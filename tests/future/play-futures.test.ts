import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { shapeRack } from '../../core/future/hidden-racks.ts';
import { RackAways } from '../../core/others/rack-aways.ts';
import { PlayFutures } from '../../core/future/play-futures.ts';
import { PlayRanking } from '../../core/table/play-ranking.ts';
import { PLAYERS_AT, simulate } from '../../core/table/simulate.ts';
import { playerAt, SEAT_COUNT, type Table } from '../../core/table/table.ts';
import { layHand, layMoment, steadyTable } from '../../core/chance/lay.ts';
import type { ShownGroup } from '../../core/table/policy.ts';
import { JOKER, type Kind, kindOf, KINDS, supplyOf } from '../../core/tiles/kinds.ts';
import { checkMoments, momentOf } from '../calibration/play/study.ts';
import { demoCard, demoTable } from '../table/cards.ts';

const AWAYS = RackAways.of(demoTable, 'club');
const meanAway = (drawn: number, groups: number, jokers: number): number => {
  const random = randomFromSeed(5);
  const aways = Array.from({ length: 400 }, () => AWAYS.draw(drawn, groups, jokers, random));
  return aways.reduce((sum, away) => sum + away, 0) / aways.length;
};

describe('how near hidden racks are', () => {
  test('nearer as the game goes on, with a group exposed and with jokers', () => {
    expect(meanAway(60, 0, 0)).toBeLessThan(meanAway(10, 0, 0));
    expect(meanAway(30, 2, 0)).toBeLessThan(meanAway(30, 0, 0));
    expect(meanAway(30, 0, 2)).toBeLessThan(meanAway(30, 0, 0));
  });

  test('is the mean of the games that they were learned from', () => {
    let [sum, seats] = [0, 0];
    const beforeDiscard = (table: Table, seat: number, drawn: number): void => {
      if (drawn !== 45) return;
      for (let step = 1; step < SEAT_COUNT; step += 1) {
        const { hand } = playerAt(table, seat + step);
        if (hand.exposures.length > 0 || hand.counts[JOKER] !== 1) continue;
        sum += hand.least();
        seats += 1;
      }
    };
    simulate({ compiled: demoCard, seed: 31, games: 150, policies: PLAYERS_AT.club }, { beforeDiscard });
    expect(Math.abs(meanAway(45, 0, 1) - sum / seats)).toBeLessThan(0.4);
  });
});

test('CH-13: a rack is shaped as near as wanted, and no tile gets lost', () => {
  const table = steadyTable(demoTable, 'club');
  const random = randomFromSeed(9);
  const none = KINDS.map(() => 0);
  for (const away of [3, 4, 5]) {
    layMoment(table, { seat: 0, rack: none, groups: [], given: none, shown: none, exposures: [], drawn: 30 });
    const { hand } = playerAt(table, 1);
    const hidden = KINDS.filter((kind) => kind !== JOKER).flatMap((kind) => Array<Kind>(supplyOf(kind)).fill(kind));
    const all = hidden.length;
    shapeRack(table, 1, 13, hidden, away, random);
    expect(hand.size + hidden.length).toBe(all);
    expect(hand.size).toBe(13);
    expect(hand.least()).toBeLessThanOrEqual(away);
  }
});

test('CH-13: a dead hand is near to nothing, so its rack is any tiles, and no tile gets lost', () => {
  const table = steadyTable(demoTable, 'club');
  const { hand } = playerAt(table, 1);
  const hidden = KINDS.filter((kind) => kind !== JOKER).flatMap((kind) => Array<Kind>(supplyOf(kind)).fill(kind));
  const wrong: ShownGroup[] = [1, 2, 3].map((number) => ({ kind: kindOf(`${number as 1}d`), size: 3, jokers: 0 }));
  const all = hidden.length;
  layHand(hand, [], wrong);
  expect(hand.isDead).toBe(true);
  const aways = new RackAways();
  aways.note(table, 0, 45);
  // No rack with three groups is known, so what is said is the least.
  expect(aways.draw(45, 3, 0, randomFromSeed(9))).toBe(1);
  shapeRack(table, 1, 4, hidden, 3, randomFromSeed(9));
  expect([hand.size, hand.size + hidden.length]).toEqual([4, all]);
  hand.clear();
});

describe('games from a moment', () => {
  /** A seat on turn of a simulated game, once `drawn` tiles are drawn. */
  function onTurn(drawn: number): {
    readonly futures: PlayFutures;
    readonly choices: ReturnType<PlayRanking['onTurn']>;
  } {
    let found: ReturnType<typeof onTurn> | undefined;
    const ranking = new PlayRanking(demoTable);
    const beforeDiscard = (table: Table, seat: number, now: number): void => {
      if (found !== undefined || now < drawn) return;
      const position = { moment: momentOf(table, seat, now), discarded: null };
      const futures = new PlayFutures(demoTable, 'club', AWAYS, position);
      found = { futures, choices: ranking.onTurn(playerAt(table, seat).view) };
    };
    simulate({ compiled: demoCard, seed: 6, games: 3, policies: PLAYERS_AT.club }, { beforeDiscard });
    if (found === undefined) throw new Error('no game was that long');
    return found;
  }

  test('CH-12: depend on the seed, their number and the choice alone', () => {
    const { futures, choices } = onTurn(24);
    const [first = null, second = null] = choices;
    const played = (choice: typeof first, games: readonly number[]): boolean[] =>
      games.map((game) => futures.wins(choice, 1, game));
    const games = Array.from({ length: 40 }, (_, game) => game);
    const before = played(first, games);
    played(second, games.slice(10));
    expect(played(first, games.toReversed()).toReversed()).toEqual(before);
    expect(new Set(before).size).toBe(2);
  });

  test('an announced win is won', () => {
    const { futures, choices } = onTurn(24);
    const [first] = choices;
    expect(first && futures.wins({ ...first, action: 'win' }, 1, 0)).toBe(true);
  });

  test('CH-13: win as often as the games that the moments belong to', () => {
    // 250 games of about 3.5 moments: the mean gap has a standard error of 1.4 games in a hundred.
    const checks = checkMoments(demoTable, 'club', { games: 250, futures: 2, seed: 78 });
    const gap = checks.reduce((sum, { said, won }) => sum + said - Number(won), 0) / checks.length;
    expect(Math.abs(gap)).toBeLessThan(0.056);
  });
});
