import { describe, expect, test } from 'vitest';
import jStat from 'jstat';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { FLOWER, JOKER } from '../../core/tiles/kinds.ts';
import { rackOf } from '../../core/warmup/deal-code.ts';
import { DEAL_KINDS, isOfKind, type PlainDealKind } from '../../core/warmup/deal-kinds.ts';
import { findDealSteps, isClose, isTwoWays, shareOfKind } from '../../core/warmup/find-deal.ts';
import { answerSteps } from '../../core/warmup/answer.ts';
import { itemOfDeal, knownOfItem } from '../../core/warmup/item.ts';
import { yardstick, finish, tiles } from './demo.ts';

const PLAIN = DEAL_KINDS.filter((kind): kind is PlainDealKind => kind !== 'two-ways' && kind !== 'close');

/** C(n, k) in whole numbers. */
function choose(from: number, pick: number): bigint {
  let value = 1n;
  for (let step = 0; step < pick; step += 1) value = (value * BigInt(from - step)) / BigInt(step + 1);
  return pick > from ? 0n : value;
}

const share = (count: bigint, size: number): number => Number((count * 10n ** 18n) / choose(152, size)) / 1e18;

/** Racks with nothing repeated, counted another way: j jokers, and different kinds among 34 of four and the flower. */
function scatteredRacks(size: number): bigint {
  let sum = 0n;
  for (let jokers = 0; jokers <= 8; jokers += 1) {
    const rest = size - jokers;
    const without = choose(34, rest) * 4n ** BigInt(rest);
    const withFlower = 8n * choose(34, rest - 1) * 4n ** BigInt(Math.max(0, rest - 1));
    sum += choose(8, jokers) * (without + (rest > 0 ? withFlower : 0n));
  }
  return sum;
}

/** Racks in which no tile lies three times: j jokers, f flowers (at most 2), p pairs and the rest singles. */
function pairsAtMost(size: number): bigint {
  let sum = 0n;
  for (let jokers = 0; jokers <= 8; jokers += 1) {
    for (let flowers = 0; flowers <= 2; flowers += 1) {
      const rest = size - jokers - flowers;
      for (let pairs = 0; 2 * pairs <= rest; pairs += 1) {
        const singles = rest - 2 * pairs;
        if (pairs + singles > 34) continue;
        const shapes = choose(34, pairs) * choose(34 - pairs, singles);
        sum += choose(8, jokers) * choose(8, flowers) * shapes * 6n ** BigInt(pairs) * 4n ** BigInt(singles);
      }
    }
  }
  return sum;
}

describe('the share of deals that are of a kind', () => {
  test.each([13, 14] as const)('%i tiles: nothing repeats, a pair, a pung, against counts in whole numbers', (size) => {
    const scattered = share(scatteredRacks(size), size);
    expect(shareOfKind('scattered', size)).toBeCloseTo(scattered, 13);
    expect(shareOfKind('pair', size)).toBeCloseTo(1 - scattered, 13);
    expect(shareOfKind('pung', size)).toBeCloseTo(1 - share(pairsAtMost(size), size), 13);
  });

  test('k jokers and many flowers follow the hypergeometric law (jStat)', () => {
    for (const [place, kind] of (
      ['no-joker', 'one-joker', 'two-jokers', 'three-jokers', 'four-jokers'] as const
    ).entries()) {
      for (const size of [13, 14] as const) {
        expect(shareOfKind(kind, size)).toBeCloseTo(jStat.hypgeom.pdf(place, 152, 8, size), 9);
      }
    }
    expect(shareOfKind('flowers', 13)).toBeCloseTo(1 - jStat.hypgeom.cdf(2, 152, 8, 13), 9);
  });

  /**
   * 20 kinds and sizes at 10,000 deals each; a share farther off than 5.2 standard errors would be
   * a false alarm once in 5 million, so about once in 250,000 runs of this test with other seeds.
   */
  test('is met by random deals, within 5.2 standard errors', () => {
    const deals = 10_000;
    for (const size of [13, 14] as const) {
      const random = randomFromSeed(61 + size);
      const racks = Array.from({ length: deals }, () => rackOf({ seed: random.bits(), tiles: size }));
      for (const kind of PLAIN) {
        const expected = shareOfKind(kind, size);
        const seen = racks.filter((rack) => isOfKind(kind, rack)).length / deals;
        expect(Math.abs(seen - expected), kind).toBeLessThanOrEqual(
          5.2 * Math.sqrt((expected * (1 - expected)) / deals) + 1e-12,
        );
      }
    }
  });
});

describe('the search for a deal of a kind', () => {
  const found = (kind: (typeof DEAL_KINDS)[number], seed: number, size: 13 | 14 = 13) =>
    finish(findDealSteps({ kind, tiles: size, yardstick }, randomFromSeed(seed)));

  test('finds deals of every kind, the same for the same seed, and says how many it tried', () => {
    for (const kind of DEAL_KINDS) {
      const { deal, tried } = expectValue(found(kind, 5, 14));
      const rack = rackOf(deal);
      expect(rack.size).toBe(14);
      if (kind === 'two-ways') expect(isTwoWays(yardstick, rack)).toBe(true);
      else if (kind === 'close') expect(isClose(yardstick, rack)).toBe(true);
      else expect(isOfKind(kind, rack)).toBe(true);
      expect(tried).toBeGreaterThan(0);
      expect(found(kind, 5, 14)).toEqual({ ok: true, value: { deal, tried } });
    }
  });

  /** False alarm: 5 standard errors, below 1 in a million. */
  test('draws honestly within the kind: with two jokers, flowers come as in any 11 of the other 144 tiles', () => {
    const random = randomFromSeed(8);
    const deals = Array.from({ length: 2000 }, () =>
      rackOf(expectValue(finish(findDealSteps({ kind: 'two-jokers', tiles: 13, yardstick }, random))).deal),
    );
    expect(deals.every((rack) => rack.count(JOKER) === 2)).toBe(true);
    for (const flowers of [0, 1, 2]) {
      const expected = jStat.hypgeom.pdf(flowers, 144, 8, 11);
      const seen = deals.filter((rack) => rack.count(FLOWER) === flowers).length / deals.length;
      expect(Math.abs(seen - expected)).toBeLessThan(5 * Math.sqrt((expected * (1 - expected)) / deals.length));
    }
  });

  /** The number tried is geometric; 5 standard errors of its mean, below 1 in a million. */
  test('tries as many deals as the kind is rare', () => {
    const random = randomFromSeed(9);
    const share = shareOfKind('three-jokers', 13);
    const tries = Array.from(
      { length: 400 },
      () => expectValue(finish(findDealSteps({ kind: 'three-jokers', tiles: 13, yardstick }, random))).tried,
    );
    const mean = tries.reduce((sum, next) => sum + next, 0) / tries.length;
    expect(Math.abs(mean - 1 / share)).toBeLessThan((5 * Math.sqrt(1 - share)) / share / Math.sqrt(tries.length));
  });

  test('gives up with words rather than for ever', () => {
    const none = finish(findDealSteps({ kind: 'four-jokers', tiles: 13, yardstick, most: 3 }, randomFromSeed(1)));
    expect(none).toMatchObject({ ok: false, problem: { code: 'none-found' } });
  });

  test('a close decision has two passes apart that tie, while most passes cost much; others are not', () => {
    const close = expectValue(found('close', 1)).deal;
    const table = finish(
      answerSteps(yardstick, {
        known: expectValue(knownOfItem(itemOfDeal(close))),
        step: 'right',
      }),
    ).options;
    const [best] = table;
    const ties = table.filter(({ verdict }) => verdict === 'best' || verdict === 'equal');
    expect(ties.some(({ give }) => give.every((kind) => best?.give.includes(kind) === false))).toBe(true);
    expect(table.filter(({ verdict }) => verdict === 'costly').length).toBeGreaterThanOrEqual(0.75 * table.length);
    expect(isClose(yardstick, tiles('JJJ EW 0 3b 117c 378d'))).toBe(false);
  });

  test('a rack could go two ways only where both best hands can not be kept', () => {
    expect(isTwoWays(yardstick, tiles('FFFF 1111b 2222b 3b'))).toBe(false);
  });
});
