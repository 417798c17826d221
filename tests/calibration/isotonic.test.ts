import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { type Block, blocksOf, type Case, pooled } from './isotonic.ts';
import { bandsOf, brier, brierGain, meanGap, tenthsOf } from './figures.ts';

const random = randomFromSeed(51);
const cases = (count: number): Case[] =>
  Array.from({ length: count }, () => {
    const predicted = random.fraction();
    return { predicted, won: random.fraction() < predicted };
  });

describe('the monotone fit', () => {
  // Barlow, Bartholomew, Bremner and Brunk, "Statistical Inference under Order Restrictions" (1972), section 1.2.
  test('is the max-min of the means over all stretches around a block, for 300 random lists', () => {
    for (let round = 0; round < 300; round += 1) {
      const blocks: Block[] = Array.from({ length: 1 + random.below(9) }, (_, place) => {
        return { count: 1 + random.below(5), predicted: place, share: random.fraction() };
      });
      const fitted = pooled(blocks).flatMap(({ count, share }) => Array<number>(count).fill(share));
      const wanted = blocks.flatMap(({ count }, place) => Array<number>(count).fill(maxMin(blocks, place)));
      expect(fitted).toHaveLength(wanted.length);
      for (const [place, value] of fitted.entries()) expect(value).toBeCloseTo(wanted[place] as number, 12);
    }
  });

  test('rises strictly, and keeps the number of cases and their sum', () => {
    const blocks = blocksOf(cases(500), 40);
    const fitted = pooled(blocks);
    const shares = fitted.map(({ share }) => share);
    expect(new Set(shares).size).toBe(shares.length);
    expect(shares).toEqual(shares.toSorted((one, other) => one - other));
    const sum = (of: readonly Block[]): number => of.reduce((all, { count, share }) => all + count * share, 0);
    expect(sum(fitted)).toBeCloseTo(sum(blocks), 9);
  });
});

describe('the figures', () => {
  test('tenths hold as many racks each, rising; bands hold those of their ten points', () => {
    const some = cases(1_000);
    const tenths = tenthsOf(some);
    expect(tenths.map(({ racks }) => racks)).toEqual(Array(10).fill(100));
    expect(tenths.reduce((sum, { won }) => sum + won.hits, 0)).toBe(some.filter(({ won }) => won).length);
    const bands = bandsOf(some);
    expect(bands.reduce((sum, { racks }) => sum + racks, 0)).toBe(1_000);
    for (const [band, { predicted }] of bands.entries()) {
      expect(predicted).toBeGreaterThanOrEqual(band / 10);
      expect(predicted).toBeLessThan((band + 1) / 10);
    }
  });

  test('blocks of equal weight split the weight, not the cases', () => {
    const blocks = blocksOf(cases(4_000), 4, ({ predicted }) => predicted);
    const weights = blocks.map(({ count, predicted }) => count * predicted);
    const whole = weights.reduce((sum, each) => sum + each, 0);
    for (const weight of weights) expect(Math.abs(weight / whole - 0.25)).toBeLessThan(0.001);
    expect((blocks[0] as Block).count).toBeGreaterThan((blocks[3] as Block).count);
  });

  test('the gap of two groups by hand', () => {
    const some = [false, false, false, true].map((won) => ({ predicted: 0.05, won }));
    const others = [true, true].map((won) => ({ predicted: 0.85, won }));
    expect(meanGap(bandsOf([...some, ...others]))).toBeCloseTo((4 * 0.2 + 2 * 0.15) / 6, 12);
  });

  test('the Brier score by hand, and its gain over a rival', () => {
    const sure = [
      { predicted: 1, won: true },
      { predicted: 0, won: false },
    ];
    const unsure = sure.map((each) => ({ ...each, predicted: 0.5 }));
    expect(brier(sure)).toBe(0);
    expect(brier(unsure)).toBe(0.25);
    expect(brierGain(sure, unsure)).toEqual({ gain: 0.25, error: 0 });
  });

  // 400 lists; each group's share leaves its 95 % interval in about one of twenty (more is a false alarm once in 10^6).
  test('when the predictions are true, nearly every tenth lies in its interval', () => {
    let outside = 0;
    for (let round = 0; round < 400; round += 1) {
      for (const { predicted, won } of tenthsOf(cases(400)))
        if (predicted < won.low || predicted > won.high) outside += 1;
    }
    expect(outside / 4_000).toBeLessThan(0.067);
    expect(outside / 4_000).toBeGreaterThan(0.01);
  });
});

function maxMin(blocks: readonly Block[], place: number): number {
  let most = -Infinity;
  for (let from = 0; from <= place; from += 1) {
    let least = Infinity;
    for (let to = place; to < blocks.length; to += 1) least = Math.min(least, meanOf(blocks.slice(from, to + 1)));
    most = Math.max(most, least);
  }
  return most;
}

function meanOf(blocks: readonly Block[]): number {
  const count = blocks.reduce((sum, each) => sum + each.count, 0);
  return blocks.reduce((sum, each) => sum + each.count * each.share, 0) / count;
}
