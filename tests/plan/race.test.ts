import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { normalExceededBy, normalShare } from '../../core/base/statistics.ts';
import { blockSteps, type Contest, type RaceRule, USUAL_RULE } from '../../core/plan/race.ts';
import { Race, type Standing } from '../../core/plan/race-run.ts';
import { bytesOf, coins, finished, raceInShards, raceOf, spreads } from './race-problems.ts';

const SEEDS = Array.from({ length: 1000 }, (_, place) => place + 1);
/** The looks that these expectations are worked out for. */
const LONG: RaceRule = { ...USUAL_RULE, looks: [8, 24, 64], halfWidth: 0.005 };
const ONE_LOOK: RaceRule = { ...USUAL_RULE, looks: [8], blockSize: 32, halfWidth: 0 };

const standing = (standings: readonly Standing[], place: number): Standing => standings[place]!;

describe('the normal law', () => {
  // Source: jstat 1.9.6, a general-purpose library.
  it('agrees with a library from -6 to 6', () => {
    for (let x = -6; x <= 6; x += 0.25) expect(normalShare(x)).toBeCloseTo(jstat.normal.cdf(x, 0, 1), 12);
    expect([normalShare(-9), normalShare(9)]).toEqual([0, 1]);
  });

  it('is exceeded by 2.5 in 100 beyond 1.959964, and by others as a library says', () => {
    expect(normalExceededBy(0.025)).toBeCloseTo(1.959963984540054, 10);
    for (const tail of [0.4, 0.05, 0.001, 1e-5, 1e-8])
      expect(normalShare(-normalExceededBy(tail)) / tail).toBeCloseTo(1, 6);
  });
});

describe('CR-G2: intervals hold 95 times in 100, over 1,000 seeds on problems with a known answer', () => {
  /** Shares of races in which the interval of the value, and of the loss, holds the truth. */
  function coverage(contest: Contest, rule: RaceRule, means: readonly number[]): { value: number; loss: number } {
    let [value, loss] = [0, 0];
    for (const seed of SEEDS) {
      const { standings, best } = raceOf(contest, { ...rule, seed });
      const first = standing(standings, 0).deciding.value;
      const other = standing(standings, 1 - best).deciding.loss;
      const truth = means[best]! - means[1 - best]!;
      if (first.low <= means[0]! && means[0]! <= first.high) value += 1;
      if (other.low <= truth && truth <= other.high) loss += 1;
    }
    return { value: value / SEEDS.length, loss: loss / SEEDS.length };
  }

  const problems: readonly (readonly [string, Contest, readonly number[]])[] = [
    ['games won by chance, 30 against 20 in a hundred', coins([0.3, 0.2]), [0.3, 0.2]],
    ['games won by chance, seldom', coins([0.08, 0.02]), [0.08, 0.02]],
    ['values spread about a mean', spreads([0.32, 0.3]), [0.32, 0.3]],
  ];

  it.each(problems)('%s: value and loss at one look', (_, contest, means) => {
    const { value, loss } = coverage(contest, ONE_LOOK, means);
    expect(value).toBeGreaterThanOrEqual(0.929);
    expect(value).toBeLessThanOrEqual(0.971);
    expect(loss).toBeGreaterThanOrEqual(0.929);
    expect(loss).toBeLessThanOrEqual(0.971);
  });

  it('values keep it when the race may end at any of three looks, and losses hold at least as often', () => {
    const rule = { ...USUAL_RULE, looks: [4, 8, 16] };
    const { value, loss } = coverage(coins([0.3, 0.2]), rule, [0.3, 0.2]);
    expect(value).toBeGreaterThanOrEqual(0.929);
    expect(value).toBeLessThanOrEqual(0.971);
    expect(loss).toBeGreaterThanOrEqual(0.929);
  });
});

describe('CR-G4: verdicts', () => {
  const rule = { ...USUAL_RULE, looks: [2, 4, 8] };

  /** The share of 1,000 races that call any of the candidates costly. */
  function alarms(contest: Contest): number {
    const races = SEEDS.map((seed) => raceOf(contest, { ...rule, seed }));
    return races.filter(({ standings }) => standings.some(({ verdict }) => verdict === 'costs')).length / races.length;
  }

  it('FU-12: of six equal choices any is called costly in at most 5 of 100 races', () => {
    expect(alarms(coins([0.3, 0.3, 0.3, 0.3, 0.3, 0.3]))).toBeLessThanOrEqual(0.05);
    expect(alarms(spreads([0.3, 0.3, 0.3, 0.3]))).toBeLessThanOrEqual(0.05);
  });

  it('a choice ten points worse is found out in at least 95 of 100 races, and the best never is', () => {
    const races = SEEDS.slice(0, 200).map((seed) => raceOf(spreads([0.4, 0.3, 0.36]), { ...rule, seed }));
    expect(races.filter(({ standings }) => standings[1]?.verdict === 'costs').length).toBeGreaterThanOrEqual(190);
    expect(races.every(({ standings }) => standings[0]?.verdict !== 'costs')).toBe(true);
  });

  it('FU-13: a certain loss under half a point is no error', () => {
    const { standings } = raceOf(spreads([0.304, 0.3]), { ...rule, looks: [100], blockSize: 64 });
    expect(standing(standings, 1).deciding.loss.low).toBeGreaterThan(0);
    expect(standing(standings, 1).verdict).toBe('as good');
  });

  it('FU-13: a loss over half a point that the interval does not exceed is no error', () => {
    const { standings } = raceOf(coins([0.32, 0.3], 0), { ...rule, looks: [2], seed: 5 });
    const losses = standings.map(({ deciding }) => deciding.loss);
    expect(Math.max(...losses.map(({ mean }) => mean))).toBeGreaterThan(0.005);
    expect(standings.some(({ verdict }) => verdict === 'costs')).toBe(false);
  });

  it('the loss of a figure that should be small counts the other way round', () => {
    const { standings, best } = raceOf(spreads([0.3, 0.4]), ONE_LOOK);
    expect(best).toBe(1);
    const away = standing(standings, 0).others[0]!;
    expect(away.loss.mean).toBeCloseTo(away.value.mean - standing(standings, 1).others[0]!.value.mean, 12);
    expect(away.loss.mean).toBeGreaterThan(0);
  });
});

describe('CR-G7: same seed, same answer, byte for byte', () => {
  const rule = { ...USUAL_RULE, looks: [4, 8, 16], halfWidth: 0.001 };
  const make = (): Contest => spreads([0.31, 0.3, 0.25, 0.31]);
  const whole = bytesOf(raceOf(make(), rule));

  it.each([1, 2, 8])('FU-10: for %i shards, answers coming in the wrong order', (shards) => {
    expect(bytesOf(raceInShards(make, rule, shards))).toBe(whole);
  });

  it('after a cancelled block and a new start on the same contest', () => {
    const contest = make();
    const steps = blockSteps(contest, rule, 3, [0, 1, 2, 3]);
    for (let sample = 0; sample < 5; sample += 1) steps.next();
    expect(bytesOf(raceOf(contest, rule))).toBe(whole);
  });

  it('another seed gives another answer', () => {
    expect(bytesOf(raceOf(make(), { ...rule, seed: 2 }))).not.toBe(whole);
  });

  it('streams of blocks and futures are all different', () => {
    const seen = new Set<number>();
    const contest: Contest = {
      candidates: 1,
      figures: [{ name: 'first draw', kind: 'mean', better: 'more' }],
      sample: (_, random) => seen.add(random.bits()),
    };
    for (const block of [0, 1, 2, 3]) finished(blockSteps(contest, { seed: 1, blockSize: 16 }, block, [0]));
    expect(seen.size).toBe(64);
  });
});

describe('CR-G9: sampling stops by a rule fixed beforehand', () => {
  it('FU-11: looks only where the rule says: every number of futures is that of a look', () => {
    const rule = { ...USUAL_RULE, looks: [3, 5, 11], blockSize: 8, halfWidth: 0 };
    for (const seed of SEEDS.slice(0, 50)) {
      const { standings, rule: told } = raceOf(coins([0.5, 0.4, 0.1, 0.45]), { ...rule, seed });
      for (const { samples } of standings) expect([24, 40, 88]).toContain(samples);
      expect(told).toEqual({ ...rule, seed });
    }
  });

  it('what is due before the first look is the same whatever comes out, however clear it is', () => {
    const sure = new Race(coins([1, 0]), LONG);
    const even = new Race(coins([0.5, 0.5]), LONG);
    expect(sure.due).toEqual(even.due);
    expect(sure.due?.blocks).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
  });

  it('ends decided when one candidate is left, and those out are sampled no more', () => {
    const { ended, standings, samples } = raceOf(coins([0.9, 0.1, 0.1]), LONG);
    expect(ended).toBe('decided');
    expect(standings.map((each) => each.samples)).toEqual([256, 256, 256]);
    expect(samples).toBe(768);
  });

  it('ends by the half-width when what is open is known well enough, and tells it', () => {
    const { ended, halfWidth } = raceOf(spreads([0.3, 0.3]), { ...USUAL_RULE, looks: [16, 1000], halfWidth: 0.02 });
    expect(ended).toBe('half-width');
    expect(halfWidth).toBeLessThanOrEqual(0.02);
    expect(halfWidth).toBeGreaterThan(0);
  });

  it('ends by the budget otherwise', () => {
    const { ended, standings } = raceOf(coins([0.3, 0.3]), { ...USUAL_RULE, looks: [1, 2] });
    expect(ended).toBe('budget');
    expect(standing(standings, 0).samples).toBe(64);
  });
});

describe('the numbers of a race, worked out by hand', () => {
  /** Candidate 0 gives 1, 1, 0, 1 in turn, candidate 1 gives 1, 0, 0, 0. */
  function script(kind: 'share' | 'mean'): Contest {
    const turns = [
      [1, 1, 0, 1],
      [1, 0, 0, 0],
    ];
    const place = [0, 0];
    return {
      candidates: 2,
      figures: [{ name: 'scripted', kind, better: 'more' }],
      sample: (candidate, _, into) => {
        into[0] = turns[candidate]![place[candidate]! % 4]!;
        place[candidate] = place[candidate]! + 1;
      },
    };
  }
  const rule: RaceRule = { ...USUAL_RULE, looks: [1], blockSize: 4 };

  it('FU-15, means: gaps 0, 1, 0, 1 have mean 1/2 and standard error sqrt(1/4 / 3)', () => {
    const { standings } = raceOf(script('mean'), rule);
    const { mean, error, low, high } = standing(standings, 1).deciding.loss;
    expect(mean).toBe(0.5);
    expect(error).toBeCloseTo(Math.sqrt(1 / 12), 12);
    expect((high - low) / 2).toBeCloseTo(1.959963984540054 * error, 9);
    expect(standing(standings, 0).deciding.value.error).toBeCloseTo(Math.sqrt(3 / 16 / 3), 12);
  });

  it('FU-15, shares: with half a pair more in each cell, mean 2/6, squares 3/6 over 6 pairs (Agresti and Min 2005)', () => {
    const { standings } = raceOf(script('share'), rule);
    const { mean, error, low, high } = standing(standings, 1).deciding.loss;
    expect(mean).toBe(0.5);
    expect(error).toBeCloseTo(Math.sqrt((3 / 6 - 1 / 9) / 5), 12);
    expect(standing(standings, 0).deciding.value.mean).toBe(3 / 4);
    expect(standing(standings, 0).deciding.value.error).toBeCloseTo(Math.sqrt((3 / 4) * (1 / 4) * (1 / 4)), 12);
    expect((low + high) / 2).toBeCloseTo(2 / 6, 12);
    // Wilson (1927) for 3 of 4, from the formula: 30.1 % to 95.4 %.
    expect(standing(standings, 0).deciding.value.low).toBeCloseTo(0.30064, 4);
    expect(standing(standings, 0).deciding.value.high).toBeCloseTo(0.95441, 4);
  });

  it('the smaller value is best where less is better, and of equal ones the earlier', () => {
    const fixed = (values: readonly number[]): Contest => ({
      candidates: values.length,
      figures: [{ name: 'fixed', kind: 'mean', better: 'less' }],
      sample: (candidate, _, into) => (into[0] = values[candidate]!),
    });
    expect(raceOf(fixed([3, 1, 2]), rule).best).toBe(1);
    expect(raceOf(fixed([2, 1, 1]), rule).best).toBe(1);
  });

  it('FU-13: a loss of exactly the smallest one costs, one of exactly nothing does not', () => {
    const [worse, better] = [1, 0];
    const exact = raceOf(script('mean'), { ...rule, blockSize: 400, smallestLoss: 0.5 });
    expect(standing(exact.standings, worse).deciding.loss.mean).toBe(0.5);
    expect(standing(exact.standings, worse).verdict).toBe('costs');
    const none: Contest = { ...script('mean'), sample: (_, __, into) => (into[0] = 0.25) };
    const { standings } = raceOf(none, { ...rule, smallestLoss: 0 });
    expect(standings.map(({ verdict }) => verdict)).toEqual(['best', 'as good']);
    expect(standing(standings, better).deciding.loss.low).toBe(0);
  });

  it('a contest needs a figure that decides', () => {
    const nothing: Contest = { candidates: 1, figures: [], sample: () => undefined };
    expect(() => raceOf(nothing, rule)).toThrow('decides');
  });
});
