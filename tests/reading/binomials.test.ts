import jstat from 'jstat';
import { expect, test } from 'vitest';
import { binomial, binomialChance } from '../../core/reading/binomials.ts';
import { choose } from '../reference/plain-reading.ts';

test('binomial coefficients are those of whole-number arithmetic to 152 half-units in the last place', () => {
  for (let from = 0; from <= 152; from += 1) {
    for (let pick = 0; pick <= from; pick += 1) {
      const exact = Number(choose(from, pick));
      expect(Math.abs(binomial(from, pick) - exact)).toBeLessThanOrEqual(2e-14 * exact);
    }
  }
});

test('hands of cards are as many as every handbook has it: C(52,13) = 635,013,559,600 and C(52,5) = 2,598,960', () => {
  // Published with all books on bridge and on poker; also in sequence A010992 of the OEIS, as C(52,39).
  expect(binomial(52, 13)).toBe(635_013_559_600);
  expect(binomial(52, 5)).toBe(2_598_960);
  expect([choose(52, 13), choose(52, 5)]).toEqual([635_013_559_600n, 2_598_960n]);
});

test('there is no way to choose less than nothing, or more than there are', () => {
  for (const from of [0, 1, 7, 151, 152]) {
    for (const beyond of [1, 2, 10]) {
      expect(binomial(from, -beyond)).toBe(0);
      expect(binomial(from, from + beyond)).toBe(0);
    }
  }
});

test('the chance of so many hits is that of a general library (jstat)', () => {
  for (const trials of [0, 1, 5, 20, 99]) {
    for (const chance of [0.01, 0.3, 0.5, 0.97]) {
      for (let hits = 0; hits <= trials; hits += 3) {
        expect(binomialChance(trials, hits, chance)).toBeCloseTo(jstat.binomial.pdf(hits, trials, chance), 11);
      }
    }
  }
});
