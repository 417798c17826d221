import { describe, expect, it } from 'vitest';
import { type Hazard, HazardCount, othersHaveWon } from '../../core/table/figures.ts';
import { whereabouts } from '../../core/chance/table-figures.ts';
import { incomingClassOf, IncomingCount } from '../../core/table/incoming-rates.ts';
import { RackSampler } from './rack-samples.ts';
import { simulate } from '../../core/table/simulate.ts';
import { randomFromSeed } from '../../core/base/random.ts';
import { JOKER, KIND_COUNT, type Kind, kindOf, KINDS, supplyOf } from '../../core/tiles/kinds.ts';
import { demoCard } from './cards.ts';

const outcome = (winner: number, draws: number) => ({
  winner,
  from: -1,
  way: winner < 0 ? -1 : 0,
  draws,
  discards: draws,
});

describe('how games end', () => {
  it('counts the games that got so far, and those won just there', () => {
    const count = new HazardCount();
    for (const [winner, draws] of [
      [0, 10],
      [2, 10],
      [1, 30],
      [-1, 99],
    ] as const)
      count.note(outcome(winner, draws));
    const { reached, won } = count.hazard();
    expect([reached[0], reached[10], reached[11], reached[30], reached[31], reached[99]]).toEqual([4, 4, 2, 2, 1, 1]);
    expect([won[10], won[30], won[99]]).toEqual([2, 1, 0]);
  });

  it('the chance that another has won, by hand for two steps', () => {
    const hazard: Hazard = { reached: [4, 4, 2], won: [0, 2, 1] };
    const [none, first, second] = othersHaveWon(hazard);
    expect(none).toBe(0);
    expect(first).toBeCloseTo(0.75 * 0.5, 15);
    expect(second).toBeCloseTo(1 - (1 - 0.375) * (1 - 0.375), 15);
  });

  it('stays as it is where no game got', () => {
    expect(othersHaveWon({ reached: [4, 4, 0, 0], won: [0, 2, 0, 0] })).toEqual([0, 0.375, 0.375, 0.375]);
  });

  it('rises from 0, never falls, and stays below 1', () => {
    const hazards = new HazardCount();
    simulate(
      { compiled: demoCard, seed: 3, games: 60, policies: ['soft', 'soft', 'soft', 'soft'] },
      { afterGame: (_, end) => hazards.note(end) },
    );
    const chances = othersHaveWon(hazards.hazard());
    expect(chances[0]).toBe(0);
    expect(chances).toEqual(chances.toSorted((one, other) => one - other));
    expect(chances.at(-1)).toBeGreaterThan(0.3);
    expect(chances.at(-1)).toBeLessThan(1);
  });
});

describe('what comes in', () => {
  it('FU-16: jokers have no class; ends are 1 and 9', () => {
    expect(incomingClassOf(JOKER)).toBeUndefined();
    expect(['F', 'N', '0', '1b', '5c', '9d'].map((code) => incomingClassOf(kindOf(code as 'F')))).toEqual([
      'flower',
      'wind',
      'dragon',
      'end number',
      'inner number',
      'end number',
    ]);
  });

  it('by hand: two passes, each tile under its class and the copies of it that were unseen', () => {
    const count = new IncomingCount();
    const unseen = KINDS.map(() => 0);
    for (const [code, copies] of [
      ['J', 5],
      ['F', 8],
      ['N', 4],
      ['E', 4],
      ['1b', 4],
      ['2b', 2],
      ['3b', 2],
    ] as const)
      unseen[kindOf(code)] = copies;
    count.note('left', unseen, [kindOf('F'), kindOf('2b'), kindOf('2b')]);
    count.note('left', unseen, [kindOf('N')]);
    count.note('courtesy', unseen, []);
    expect(count.cells()).toEqual(
      [
        { step: 'left', class: 'flower', copies: 8, received: 1, expected: (4 * 8) / 24 },
        { step: 'left', class: 'wind', copies: 4, received: 1, expected: (4 * 8) / 24 },
        { step: 'left', class: 'end number', copies: 4, received: 0, expected: (4 * 4) / 24 },
        { step: 'left', class: 'inner number', copies: 2, received: 2, expected: (4 * 4) / 24 },
      ].map((cell) => ({ ...cell, expected: expect.closeTo(cell.expected, 12) as number })),
    );
    expect(() => count.note('left', unseen, [JOKER])).toThrow(/TB-4/);
  });

  it('recovers a known rate: flowers held back by half (chi-square scale, 6 standard errors)', () => {
    const random = randomFromSeed(17);
    const count = new IncomingCount();
    const unseen = KINDS.map(supplyOf);
    const weights: number[] = KINDS.map((kind) => (kind === JOKER ? 0 : supplyOf(kind) * (kind === 1 ? 0.5 : 1)));
    const total = weights.reduce((sum, each) => sum + each, 0);
    const pick = (): Kind => {
      let left = random.fraction() * total;
      return KINDS.find((kind) => (left -= weights[kind]!) < 0) ?? kindOf('9d');
    };
    const passes = 20_000;
    for (let pass = 0; pass < passes; pass += 1) count.note('right', unseen, [pick(), pick(), pick()]);
    const cells = count.cells();
    const ratio = (kindClass: string): number => {
      const own = cells.filter((cell) => cell.class === kindClass);
      const sum = (of: 'received' | 'expected'): number => own.reduce((all, cell) => all + cell[of], 0);
      return sum('received') / sum('expected');
    };
    // Flowers are 8 of 144, so 3 x 20,000 tiles hold about 1,700: 6 standard errors are 0.08.
    expect(Math.abs(ratio('flower') / ratio('inner number') - 0.5)).toBeLessThan(0.08);
    expect(Math.abs(ratio('wind') / ratio('inner number') - 1)).toBeLessThan(0.1);
  });

  it('at the simulated table as many tiles are expected as received, and flowers are held back', () => {
    const count = new IncomingCount();
    simulate(
      { compiled: demoCard, seed: 9, games: 100, policies: ['soft', 'beginner', 'nearest', 'soft'] },
      {
        onPass: (table, seat, step, gave, came) => {
          const { unseen, earlier } = whereabouts(table, seat, gave);
          const others = unseen.map((copies, kind) => copies + earlier[kind]!);
          count.note(step, others, came);
        },
      },
    );
    const cells = count.cells().filter(({ step }) => step === 'right');
    const sum = (of: 'received' | 'expected', kindClass?: string): number =>
      cells
        .filter((cell) => kindClass === undefined || cell.class === kindClass)
        .reduce((all, cell) => all + cell[of], 0);
    expect(sum('received')).toBe(100 * 4 * 3);
    expect(sum('expected')).toBeCloseTo(1200, 6);
    expect(sum('received', 'flower')).toBeLessThan(sum('expected', 'flower') / 2);
  });
});

describe('rack samples', () => {
  const sampler = new RackSampler([20, 40]);
  const tally = simulate(
    { compiled: demoCard, seed: 21, games: 40, policies: ['soft', 'soft', 'soft', 'soft'] },
    sampler.watcher,
  );
  const { samples } = sampler;

  it('every seat is sampled once when play begins, and at most once at each later moment', () => {
    expect(samples.filter(({ draws }) => draws === 0)).toHaveLength(160);
    expect(samples.length).toBeGreaterThan(160 + 160);
    expect(samples.length).toBeLessThanOrEqual(160 * 3);
  });

  it('TB-20: rack, exposures and what lies face up never hold more than the set', () => {
    for (const { rack, exposures, gone } of samples) {
      for (const kind of KINDS) expect(rack[kind]! + gone[kind]!).toBeLessThanOrEqual(supplyOf(kind));
      const shown = exposures.reduce((sum, { size }) => sum + size, 0);
      expect([13, 14]).toContain(rack.reduce((sum, count) => sum + count, 0) + shown);
      expect(rack).toHaveLength(KIND_COUNT);
    }
  });

  it('what became of them adds up to the tally', () => {
    const first = samples.filter(({ draws }) => draws === 0);
    expect(first.filter(({ outcome }) => outcome.won)).toHaveLength(tally.games - tally.wallGames);
    expect(first.reduce((sum, { outcome }) => sum + outcome.drawsToEnd, 0)).toBe(4 * tally.draws);
    for (const { draws, wallLeft, outcome } of samples) {
      expect(wallLeft).toBe(99 - draws);
      expect(outcome.drawsToEnd).toBeLessThanOrEqual(wallLeft);
      expect(outcome.way >= 0).toBe(outcome.decided);
    }
  });
});
