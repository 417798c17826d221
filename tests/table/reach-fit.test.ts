import { describe, expect, test } from 'vitest';
import { areFirstTerms, reachModelFor, type StageTerms, termsAt } from '../../core/reading/reach-model.ts';
import { endsAfter, fitReachModel, fitTerms } from '../../core/table/reach-fit.ts';
import { cardOf, demoCard } from './cards.ts';

/** A law of when another has won, rising to 0.7 at the end of the wall. */
const LAW = Array.from({ length: 100 }, (_, drawn) => (0.7 * drawn * drawn) / 9801);

describe('MD-C4. five equally likely numbers of tiles still to be drawn', () => {
  test('by hand: half have won at 20 tiles, the others play to the end', () => {
    const won = Array.from({ length: 100 }, (_, drawn) => (drawn >= 20 ? 0.5 : 0));
    expect(endsAfter(won, 0)).toEqual([20, 20, 59.5, 99, 99]);
    expect(endsAfter(won, 10)).toEqual([10, 10, 49.5, 89, 89]);
    expect(endsAfter(won, 30)).toEqual([69, 69, 69, 69, 69]);
  });

  test('their mean is that of the law, to the rounding', () => {
    for (const drawn of [0, 10, 50, 90]) {
      const left = 1 - (LAW[drawn] as number);
      let mean = 0;
      for (let at = drawn + 1; at <= 99; at += 1) {
        const by = at === 99 ? 1 : (LAW[at] as number);
        mean += ((at - drawn) * (by - (LAW[at - 1] as number))) / left;
      }
      const ends = endsAfter(LAW, drawn);
      expect(ends).toHaveLength(5);
      expect(ends).toEqual(ends.toSorted((one, other) => one - other));
      expect(Math.abs(ends.reduce((sum, end) => sum + end, 0) / 5 - mean)).toBeLessThan(0.051);
    }
  });
});

describe('MD-C5. with so many tiles drawn, the chances are shares of own and of others’ draws over the hidden tiles', () => {
  const shape = { own: 0.5, called: 0.8, last: 0.4, joker: 2, calibration: [] };
  test('by hand, with 61 tiles in the wall and so 100 hidden', () => {
    const { moments } = reachModelFor({ ends: [20, 40], wallLeft: 61, source: '' }, shape);
    expect(moments).toEqual([
      { weight: 0.5, drawn: 0.025, called: 0.12, last: 0.06, joker: 0.1 },
      { weight: 0.5, drawn: 0.05, called: 0.24, last: 0.12, joker: 0.2 },
    ]);
  });

  test('nothing is certain to come, however high the share', () => {
    const { moments } = reachModelFor({ ends: [60], wallLeft: 61, source: '' }, { ...shape, called: 9 });
    expect(moments[0]?.called).toBe(0.98);
  });
});

describe('MD-C8. during play the moments are those of the games that got so far', () => {
  // Played in a test, not beside it, so that a mutation run sees which test looks at it.
  const fitted = (): { readonly stages: StageTerms; readonly progress: readonly number[] } => {
    const steps = fitTerms(demoCard, 5, 100);
    const progress: number[] = [];
    let step = steps.next();
    for (; step.done !== true; step = steps.next()) progress.push(step.value);
    return { stages: step.value, progress };
  };

  test('every ten tiles a stage; nobody draws more than the wall still holds', () => {
    const { stages } = fitted();
    expect(stages.map(({ wallLeft }) => wallLeft)).toEqual([99, 89, 79, 69, 59, 49, 39, 29, 19, 9]);
    for (const { ends, wallLeft } of stages) for (const end of ends) expect(end).toBeLessThanOrEqual(wallLeft);
    expect(termsAt(stages, 9)).toBe(stages[0]);
    expect(termsAt(stages, 10)).toBe(stages[1]);
    expect(termsAt(stages, 99)).toBe(stages[9]);
  });

  test('the work tells how far it is, and gives the same for the same seed', () => {
    const { stages, progress } = fitted();
    expect(progress).toEqual(progress.toSorted((one, other) => one - other));
    expect(progress.length).toBeGreaterThan(4);
    expect(progress.at(-1)).toBeLessThanOrEqual(1);
    expect(fitReachModel(demoCard, 5, 100)).toEqual(reachModelFor(termsAt(stages, 0)));
    expect(fitReachModel(demoCard, 6, 100)).not.toEqual(reachModelFor(termsAt(stages, 0)));
  });

  test('only the terms of the first model need no new reading', () => {
    const first = { ends: [32.9, 51.3, 63.6, 75.6, 94.1], wallLeft: 99, source: 'elsewhere' };
    expect(areFirstTerms(first)).toBe(true);
    expect(areFirstTerms({ ...first, wallLeft: 89 })).toBe(false);
    expect(areFirstTerms({ ...first, ends: [33, 51.2, 63.6, 75.6, 94.1] })).toBe(true);
    expect(areFirstTerms({ ...first, ends: [33.1, 51.3, 63.6, 75.6, 94.1] })).toBe(false);
    expect(areFirstTerms({ ...first, ends: [32.9, 51.3, 63.6, 75.6] })).toBe(false);
  });

  test('a card with which nobody can win: everybody plays to the end of the wall', () => {
    const hopeless = cardOf({ id: 'a', pattern: 'NEWS NEWS NEWS GG' });
    expect(hopeless.wayCount).toBe(1);
    for (const end of termsAt(finished(fitTerms(hopeless, 1, 20)), 0).ends) expect(end).toBeGreaterThan(90);
  });
});

function finished<Value>(steps: Generator<unknown, Value>): Value {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
