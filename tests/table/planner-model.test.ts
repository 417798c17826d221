import { describe, expect, it } from 'vitest';
import { PASS_STEPS } from '../../core/exchange/steps.ts';
import { passReader, playReader } from '../../core/table/policies/planner.ts';
import { randomFromSeed } from '../../core/base/random.ts';
import { growTree } from '../reference/grown-tree.ts';

describe("the planner's models", () => {
  it('in play are one for every ten tiles drawn, the last for all that is left', () => {
    expect(playReader(90)).toBe(playReader(99));
    expect(playReader(89)).not.toBe(playReader(90));
    expect(new Set([99, 89, 79, 69, 59, 49, 39, 29, 19, 9].map(playReader)).size).toBe(10);
    expect(playReader(0)).toBe(playReader(9));
  });

  it('count own draws, shares of the draws of others, and jokers more often: worked out for a full wall', () => {
    const { moments } = playReader(99).reach.model;
    // 53, 64 or 75 tiles are drawn by all four until the end; 138 are unseen.
    expect(moments).toHaveLength(3);
    for (const [place, draws] of [53, 64, 75].entries()) {
      const { weight, drawn, called, last, joker } = moments[place]!;
      const own = draws / 4 / 138;
      expect(weight).toBeCloseTo(1 / 3, 15);
      expect(drawn).toBeCloseTo(own, 15);
      expect(called).toBeCloseTo(0.45 * 3 * own, 15);
      expect(last).toBeCloseTo(0.15 * 3 * own, 15);
      expect(joker).toBeCloseTo(1.5 * own, 15);
    }
  });

  it('before a pass count three more own draws for each pass that may still come', () => {
    const own = (step: (typeof PASS_STEPS)[number]): number => 138 * passReader(step).reach.model.moments[1]!.drawn;
    expect(PASS_STEPS.map((step) => Math.round(own(step) - 16))).toEqual([12, 9, 6, 9, 6, 3, 0]);
  });

  it('are remembered until they have grown beyond 6,000 nodes', () => {
    const reader = playReader(99);
    const random = randomFromSeed(3);
    while (reader.tree.size < 6_000) {
      expect(playReader(99)).toBe(reader);
      growTree(reader.tree, random, 200);
    }
    expect(playReader(99)).not.toBe(reader);
  });
});
