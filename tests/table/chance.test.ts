import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { gameStreams, playGame } from '../../core/table/game.ts';
import { simulate, type SimulationTask, summarize } from '../../core/table/simulate.ts';
import { layTable, makeTable } from '../../core/table/table.ts';
import { addTallies, EMPTY_TALLY } from '../../core/table/tally.ts';
import { soft } from '../../core/table/policies/by-weight.ts';
import { JOKER, KIND_COUNT, KINDS, SET_SIZE, supplyOf } from '../../core/tiles/kinds.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { countedWords } from '../../renderer/words/counted.ts';
import { choose, quotient } from '../reference/plain-reading.ts';
import { demoCard, demoTable } from './cards.ts';

const fourSoft = (): ReturnType<typeof soft>[] => Array.from({ length: 4 }, () => soft(demoTable));

/** False alarms of each test here: one in a million. */
const ALPHA = 1e-6;
const DEALS = 20_000;

/** Pearson's chi-square, upper tail from jstat. */
function unevenTail(counts: readonly number[], expected: readonly number[]): number {
  const statistic = counts.reduce((sum, count, place) => sum + (count - expected[place]!) ** 2 / expected[place]!, 0);
  return 1 - jstat.chisquare.cdf(statistic, counts.length - 1);
}

/** The chance of so many jokers in so many tiles of the set, by exact binomials. */
function jokerChance(count: number, tiles: number): number {
  return quotient(choose(8, count) * choose(144, tiles - count), choose(152, tiles));
}

function dealt(): { first: number[][]; jokers: number[][]; neighbours: number } {
  const table = makeTable(demoTable, fourSoft());
  const streams = gameStreams(2026, 0);
  const places = [0, 13, 75, 151];
  const first = places.map(() => Array<number>(KIND_COUNT).fill(0));
  const jokers = [0, 1, 2, 3].map(() => Array<number>(9).fill(0));
  let neighbours = 0;
  for (let deal = 0; deal < DEALS; deal += 1) {
    layTable(table, streams.next().value);
    for (const [row, place] of places.entries()) first[row]![table.wall[place]!]! += 1;
    for (const [seat, { hand }] of table.players.entries()) jokers[seat]![hand.counts[JOKER]!]! += 1;
    for (let place = 1; place < SET_SIZE; place += 1) if (table.wall[place] === table.wall[place - 1]) neighbours += 1;
  }
  return { first, jokers, neighbours };
}

describe('the shuffle and the deal', () => {
  const { first, jokers, neighbours } = dealt();

  it('TB-1: at any place of the wall each kind is as likely as the set holds it (chi-square)', () => {
    const expected = KINDS.map((kind) => (DEALS * supplyOf(kind)) / SET_SIZE);
    for (const counts of first) expect(unevenTail(counts, expected)).toBeGreaterThan(ALPHA);
  });

  it('TB-1: like tiles lie side by side as often as chance has it', () => {
    // 151 pairs of places, each alike with chance Σ s(s-1) / (152·151); the pairs are nearly
    // independent, and 6 standard deviations leave room for their small correlation.
    const chance =
      KINDS.reduce((sum, kind) => sum + supplyOf(kind) * (supplyOf(kind) - 1), 0) / (SET_SIZE * (SET_SIZE - 1));
    const pairs = DEALS * (SET_SIZE - 1);
    expect(Math.abs(neighbours - pairs * chance)).toBeLessThan(6 * Math.sqrt(pairs * chance * (1 - chance)));
  });

  it('TB-2: a deal has as many jokers as the hypergeometric law says, by hand and by jstat: 48.0, 37.9, 12.0, 2.0, 0.2 %', () => {
    // C(8, n) · C(144, 13 - n) / C(152, 13) in whole numbers: 8 jokers of 152 tiles, 13 of them dealt.
    const byHand = [0, 1, 2, 3, 4].map((count) => jokerChance(count, 13));
    expect(byHand.map((chance) => (100 * chance).toFixed(1))).toEqual(['48.0', '37.9', '12.0', '2.0', '0.2']);
    for (const [seat, counts] of jokers.entries()) {
      const tiles = seat === 0 ? 14 : 13;
      const chances = counts.map((_, count) => jokerChance(count, tiles));
      for (const [count, chance] of chances.entries())
        expect(jstat.hypgeom.pdf(count, SET_SIZE, 8, tiles)).toBeCloseTo(chance, 12);
      const few = [0, 1, 2, 3].map((count) => chances[count]! * DEALS);
      const rest = DEALS - few.reduce((sum, each) => sum + each, 0);
      const many = counts.slice(4).reduce((sum, each) => sum + each, 0);
      expect(unevenTail([...counts.slice(0, 4), many], [...few, rest])).toBeGreaterThan(ALPHA);
    }
  });

  it('the window says the mean number of jokers in a deal of 13: 13 · 8 / 152 = 0.684', () => {
    const mean = Array.from({ length: 9 }, (_, count) => count * jokerChance(count, 13)).reduce(
      (sum, each) => sum + each,
    );
    expect(mean).toBeCloseTo((13 * 8) / 152, 12);
    expect(countedWords.jokers.words.join(' ')).toContain(`13 tiles holds ${mean.toFixed(1)} jokers on average`);
  });

  it('TB-20: the wall holds the whole set', () => {
    const table = makeTable(demoTable, fourSoft());
    layTable(table, randomFromSeed(8));
    expect(Tiles.of(table.wall).equals(Tiles.fullSet)).toBe(true);
    expect(table.players.map(({ hand }) => hand.size)).toEqual([14, 13, 13, 13]);
    expect(table.next).toBe(53);
  });
});

describe('TB-22: every game has a stream of its own', () => {
  const task: SimulationTask = {
    compiled: demoCard,
    seed: 11,
    games: 24,
    policies: ['soft', 'nearest', 'beginner', 'soft'],
  };

  it('one worker and eight shards, added in any order, give identical bytes', () => {
    const whole = simulate(task);
    const shards = Array.from({ length: 8 }, (_, shard) => simulate({ ...task, first: 3 * shard, games: 3 }));
    const forward = shards.reduce(addTallies, EMPTY_TALLY);
    const backward = shards.toReversed().reduce(addTallies, EMPTY_TALLY);
    expect(JSON.stringify(forward)).toBe(JSON.stringify(whole));
    expect(JSON.stringify(backward)).toBe(JSON.stringify(whole));
    expect(JSON.stringify(simulate(task))).toBe(JSON.stringify(whole));
  });

  it('another seed gives other games', () => {
    expect(JSON.stringify(simulate({ ...task, seed: 12 }))).not.toBe(JSON.stringify(simulate(task)));
  });

  it('a stream is the same whether one starts at its game or comes to it, over blocks of 1,024', () => {
    const from = (first: number): number => gameStreams(5, first).next().value.bits();
    const walk = gameStreams(5, 1000);
    const walked = Array.from({ length: 1100 }, () => walk.next().value.bits());
    for (const place of [0, 1, 23, 24, 25, 1047, 1048, 1049]) expect(walked[place]).toBe(from(1000 + place));
    expect(new Set(walked).size).toBeGreaterThan(1095);
  });
});

describe('TB-24: equal policies', () => {
  const tally = simulate({ compiled: demoCard, seed: 404, games: 1000, policies: ['soft', 'soft', 'soft', 'soft'] });
  const decided = tally.games - tally.wallGames;

  it('South, West and North win equally often (chi-square)', () => {
    const won = tally.bySeat.slice(1).map((seat) => seat.won);
    const mean = won.reduce((sum, each) => sum + each, 0) / 3;
    expect(unevenTail(won, [mean, mean, mean])).toBeGreaterThan(ALPHA);
  });

  it('East, with a tile more, wins at least its share less five standard errors', () => {
    expect(tally.bySeat[0]!.won / decided).toBeGreaterThan(0.25 - 5 * Math.sqrt((0.25 * 0.75) / decided));
  });

  it('the four places of a policy win equally often (chi-square)', () => {
    const won = tally.byPlayer.map((player) => player.won);
    expect(
      unevenTail(
        won,
        won.map(() => decided / 4),
      ),
    ).toBeGreaterThan(ALPHA);
  });

  it('the summary counts every game and every seat once', () => {
    const summary = summarize(tally);
    expect(summary.games).toBe(1000);
    expect(summary.won + summary.wallGames).toBe(1000);
    expect(summary.byAway.reduce((sum, { players }) => sum + players, 0)).toBe(4 * 1000);
    expect(summary.byAway.reduce((sum, { won }) => sum + won, 0)).toBe(summary.won);
    expect(summary.selfDrawn).toBeLessThanOrEqual(summary.won);
    expect(summary.drawsPerGame).toBeLessThanOrEqual(99);
  });

  it('who begins play nearer to a hand wins more often, from 3 to 7 away', () => {
    const rates = [3, 4, 5, 6, 7].map((away) => tally.byAway[away]!.won / tally.byAway[away]!.players);
    expect(rates).toEqual(rates.toSorted((one, other) => other - one));
  });
});

describe('TB-23: likings', () => {
  it('no suit is discarded more than another over many games (chi-square)', () => {
    const table = makeTable(
      demoTable,
      Array.from({ length: 4 }, () => soft(demoTable)),
    );
    const streams = gameStreams(88, 0);
    // One count a game, so that the counts are independent: the suit of the last discarded number tile.
    const suits = [0, 0, 0];
    for (let game = 0; game < 200; game += 1) {
      table.trace = [];
      playGame(table, streams.next().value);
      const last = table.trace.findLast((event) => event.type === 'discarded' && event.tile >= 9);
      if (last?.type === 'discarded') suits[Math.floor((last.tile - 9) / 9)]! += 1;
    }
    const mean = suits.reduce((sum, each) => sum + each, 0) / 3;
    expect(unevenTail(suits, [mean, mean, mean])).toBeGreaterThan(ALPHA);
  });
});
