import * as fc from 'fast-check';
import jstat from 'jstat';
import { describe, expect, test } from 'vitest';
import { rateOf, Z95 } from '../../core/base/statistics.ts';
import { type Mean, meanOf, studentQuantile, trendOf } from '../../core/base/intervals.ts';
import { randomFromSeed } from '../../core/base/random.ts';
import { LOTTERY } from '../reference/nist-lottery.ts';

describe('the score interval of a share (Wilson 1927)', () => {
  test('its deviate is that of a statistics library', () => {
    expect(Z95).toBeCloseTo(jstat.normal.inv(0.975, 0, 1), 12);
  });
  test('at each end the score test of the library says 2.5 in 100', () => {
    const counts = fc.integer({ min: 1, max: 5_000 }).chain((of) => fc.tuple(fc.nat(of), fc.constant(of)));
    const property = fc.property(counts, ([hits, of]) => {
      const { low, high } = rateOf(hits, of);
      const tail = (chance: number): number =>
        jstat.normal.cdf(hits, of * chance, Math.sqrt(of * chance * (1 - chance)));
      if (hits > 0) expect(tail(low)).toBeCloseTo(0.975, 9);
      if (hits < of) expect(tail(high)).toBeCloseTo(0.025, 9);
    });
    fc.assert(property, { seed: 3, numRuns: 500 });
  });
  // Newcombe, "Two-sided confidence intervals for the single proportion: comparison of seven methods", Statistics in
  // Medicine 17 (1998), 857-872, table I: the four examples by the score method.
  test.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('of %i in %i is the published %d to %d (Newcombe 1998)', (hits, of, low, high) => {
    const rate = rateOf(hits, of);
    expect([rate.low, rate.high].map((end) => end.toFixed(4))).toEqual([low.toFixed(4), high.toFixed(4)]);
  });
  test('nothing played says nothing', () => {
    expect(rateOf(0, 0)).toEqual({ hits: 0, of: 0, share: null, low: 0, high: 1 });
  });
  test('it stays within nothing and all', () => {
    expect([rateOf(0, 7).low, rateOf(7, 7).high]).toEqual([0, 1]);
  });
});

describe("Student's law (Abramowitz and Stegun 26.7.3 to 26.7.5)", () => {
  test.each([1, 2, 3, 4, 5, 9, 10, 26, 27, 28, 29, 30, 40, 60, 120, 1_000, 100_000])(
    '%i degrees, against a statistics library',
    (freedom) => {
      expect(Math.abs(studentQuantile(freedom) - jstat.studentt.inv(0.975, freedom))).toBeLessThan(1e-6);
    },
  );
  // Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 26.10.
  test.each([
    [30, '2.042'],
    [40, '2.021'],
    [60, '2.000'],
    [120, '1.980'],
  ])('%i degrees, as printed in table 26.10: %s', (freedom, printed) => {
    expect(studentQuantile(freedom).toFixed(3)).toBe(printed);
  });
});

/** The deviation of the values that a mean with its interval tells. */
function deviationIn({ count, interval }: Mean): number {
  const width = (interval?.high ?? NaN) - (interval?.low ?? NaN);
  return ((width / 2) * Math.sqrt(count)) / studentQuantile(count - 1);
}

// Statistical Reference Datasets of NIST, univariate summary statistics; mean and deviation are certified there.
describe('mean and deviation of the data sets of NIST', () => {
  test('Lottery, 218 draws of three digits: 518.958715596330 and 291.699727470969', () => {
    expect(LOTTERY).toHaveLength(218);
    const found = meanOf(LOTTERY);
    expect(found.mean).toBeCloseTo(518.95871559633, 11);
    expect(deviationIn(found)).toBeCloseTo(291.699727470969, 10);
  });
  test('NumAcc3, 1,001 values that differ in the eighth digit: 1000000.2 and 0.1', () => {
    const pairs = Array.from({ length: 500 }, () => [1_000_000.1, 1_000_000.3]);
    const found = meanOf([1_000_000.2, ...pairs.flat()]);
    expect(found.count).toBe(1001);
    expect(found.mean).toBeCloseTo(1_000_000.2, 7);
    expect(deviationIn(found)).toBeCloseTo(0.1, 8);
  });
});

describe('a mean', () => {
  test('has no interval below 30 values', () => {
    expect(meanOf(Array.from({ length: 29 }, (_, at) => at))).toEqual({ count: 29, mean: 14, interval: null });
    expect(meanOf([])).toEqual({ count: 0, mean: null, interval: null });
  });
  test('of 1 to 30: 15.5, and 3.2872 either way', () => {
    // Standard deviation 8.80341, root of 30, and 2.04523 for 29 degrees (jstat 1.9.6, studentt.inv of 0.975).
    const { mean, interval } = meanOf(Array.from({ length: 30 }, (_, at) => at + 1));
    expect(mean).toBe(15.5);
    expect(interval?.high).toBeCloseTo(15.5 + (2.04523 * 8.80341) / Math.sqrt(30), 4);
    expect(interval?.low).toBeCloseTo(15.5 - (2.04523 * 8.80341) / Math.sqrt(30), 4);
  });
});

describe('a trend is claimed only from 30 values on and with an interval that excludes zero', () => {
  test('CR-G6: 29 values on a straight line: none', () => {
    expect(trendOf(Array.from({ length: 29 }, (_, at) => at))).toEqual({ count: 29, slope: null, claim: null });
  });
  test.each([
    [0.5, 'rising'],
    [-0.5, 'falling'],
    [0, null],
  ])('slope %d with a small wobble: %s', (slope, claim) => {
    const wobble = (at: number): number => [0.2, -0.2, -0.2, 0.2][at % 4] as number;
    expect(trendOf(Array.from({ length: 40 }, (_, at) => slope * at + wobble(at))).claim).toBe(claim);
  });
  test('the slope is that of the textbook sum over products', () => {
    const values = [3, 1, 4, 1, 5, 9, 2, 6, 5, 3, 5, 8, 9, 7, 9, 3, 2, 3, 8, 4, 6, 2, 6, 4, 3, 3, 8, 3, 2, 7];
    const n = values.length;
    const [sx, sxx] = [(n * (n - 1)) / 2, ((n - 1) * n * (2 * n - 1)) / 6];
    const sy = values.reduce((sum, y) => sum + y, 0);
    const sxy = values.reduce((sum, y, x) => sum + x * y, 0);
    expect(trendOf(values).slope?.value).toBeCloseTo((n * sxy - sx * sy) / (n * sxx - sx * sx), 12);
  });
  test('on mere noise it is claimed in about 1 of 20 seasons (2,000 seasons; 6 deviations allowed)', () => {
    const random = randomFromSeed(17);
    let claims = 0;
    for (let season = 0; season < 2_000; season += 1) {
      if (trendOf(Array.from({ length: 40 }, () => random.fraction())).claim !== null) claims += 1;
    }
    expect(Math.abs(claims - 100)).toBeLessThan(6 * Math.sqrt(2_000 * 0.05 * 0.95));
  });
});
