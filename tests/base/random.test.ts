import jstat from 'jstat';
import { describe, expect, test } from 'vitest';
import { type Random, randomFromSeed, randomFromState, shuffle } from '../../core/base/random.ts';
import { type BitMatrix, solve, squared, step, stepMatrix, times, words } from './bit-matrix.ts';
import { chiSquareTail } from '../reference/chi-square.ts';

/** The scrambler of xoshiro128** undone: the second state word that gave an output. */
function secondWord(output: number): bigint {
  const unscaled = (BigInt(output) * inverse(9n)) & 0xffff_ffffn;
  const unrotated = ((unscaled >> 7n) | (unscaled << 25n)) & 0xffff_ffffn;
  return (unrotated * inverse(5n)) & 0xffff_ffffn;
}

/** The inverse of an odd number modulo 2^32, by Newton's iteration. */
function inverse(odd: bigint): bigint {
  let guess = odd;
  for (let round = 0; round < 5; round += 1) guess = (guess * (2n - odd * guess)) & 0xffff_ffffn;
  return guess;
}

/** The state before the next draw, found from what the stream gives alone. */
function stateOf(stream: Random): bigint {
  const equations: bigint[] = [];
  const right: bigint[] = [];
  let columns: BitMatrix = Array.from({ length: 128 }, (_, bit) => 1n << BigInt(bit));
  for (let draw = 0; draw < 8; draw += 1) {
    const word = secondWord(stream.bits());
    for (let bit = 0n; bit < 32n; bit += 1n) {
      equations.push(
        columns.reduce((row, column, place) => row | (((column >> (32n + bit)) & 1n) << BigInt(place)), 0n),
      );
      right.push((word >> bit) & 1n);
    }
    columns = columns.map(step);
  }
  const state = solve(equations, right);
  if (state === undefined) throw new Error('the state is not determined');
  return state;
}

/** The matrix of 2^exponent steps. */
function power(exponent: number): BitMatrix {
  let matrix = stepMatrix();
  for (let round = 0; round < exponent; round += 1) matrix = squared(matrix);
  return matrix;
}

describe('xoshiro128** (Blackman and Vigna 2018)', () => {
  test('gives what the published engine and scrambler give', () => {
    let state = stateOf(randomFromSeed(2026));
    const stream = randomFromSeed(2026);
    for (let draw = 0; draw < 1000; draw += 1) {
      const scaled = (words(state)[1] * 5n) & 0xffff_ffffn;
      const rotated = ((scaled << 7n) | (scaled >> 25n)) & 0xffff_ffffn;
      expect(stream.bits()).toBe(Number((rotated * 9n) & 0xffff_ffffn));
      state = step(state);
    }
  });

  test('gives the published outputs from the state 1, 2, 3, 4 (tests of the Rust package rand_xoshiro)', () => {
    // Made there with the authors' reference code, version 1.1.
    const published = [
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ];
    const stream = randomFromState([1, 2, 3, 4]);
    expect(published.map(() => stream.bits())).toEqual(published);
  });

  test('a jump is 2^64 steps and a long jump 2^96, by repeated squaring over GF(2)', () => {
    const stream = randomFromSeed(7);
    const start = stateOf(randomFromSeed(7));
    expect(stateOf(stream.jumped())).toBe(times(power(64), start));
    expect(stateOf(stream.longJumped())).toBe(times(power(96), start));
    expect(stateOf(stream)).toBe(start);
  });

  test('all bits of a seed count', () => {
    const seeds = [0, 1, 2, 2 ** 31, 2 ** 32, 2 ** 32 + 1, 2 ** 40, 2 ** 52, Number.MAX_SAFE_INTEGER];
    expect(new Set(seeds.map((seed) => stateOf(randomFromSeed(seed)))).size).toBe(seeds.length);
  });
});

describe('draws', () => {
  test('the referee: 16.919 with 9 degrees of freedom has a tail of 0.05 (tables of the chi-square distribution)', () => {
    expect(1 - jstat.chisquare.cdf(16.918977604620448, 9)).toBeCloseTo(0.05, 12);
  });

  test('below(n) stays below n and is even over its values (chi-square, false alarm 1e-6)', () => {
    for (const bound of [1, 2, 3, 36, 152]) {
      const stream = randomFromSeed(bound);
      const draws = 2000 * bound;
      const counts = Array<number>(bound).fill(0);
      for (let draw = 0; draw < draws; draw += 1) counts[stream.below(bound)]! += 1;
      expect(counts.reduce((sum, count) => sum + count, 0)).toBe(draws);
      if (bound > 1) expect(chiSquareTail(counts, 2000)).toBeGreaterThan(1e-6);
    }
  });

  test('a fraction lies in [0, 1)', () => {
    const stream = randomFromSeed(3);
    const fractions = Array.from({ length: 10_000 }, () => stream.fraction());
    expect(Math.min(...fractions)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...fractions)).toBeLessThan(1);
  });

  test('every order of four things is equally likely after a shuffle (chi-square, false alarm 1e-6)', () => {
    const stream = randomFromSeed(11);
    const counts = new Map<string, number>();
    for (let round = 0; round < 24_000; round += 1) {
      const order = shuffle(['a', 'b', 'c', 'd'], stream).join('');
      counts.set(order, (counts.get(order) ?? 0) + 1);
    }
    expect(counts.size).toBe(24);
    expect(chiSquareTail([...counts.values()], 1000)).toBeGreaterThan(1e-6);
  });
});
