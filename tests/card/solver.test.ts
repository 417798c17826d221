import * as fc from 'fast-check';
import loadHighs from 'highs';
import { expect, test } from 'vitest';
import { waysOf } from '../../core/card/expand.ts';
import { formatPattern, type Pattern, type Slide } from '../../core/card/pattern.ts';
import { jokersForced } from '../../core/card/way.ts';
import { lineProgram } from '../reference/line-program.ts';
import { pattern, scarcePattern, SEED, slide, starvedPattern } from './arbitrary.ts';

/** Referee: the integer solver HiGHS, by way of the package highs 1.15.3. */
const highs = await loadHighs();

/** The fewest jokers with which the line can be made, or nothing if it can't. */
function bySolver(value: Pattern, first: Slide, second: Slide): number | undefined {
  const solved = highs.solve(lineProgram(value, first, second), { output_flag: false });
  if (solved.Status === 'Infeasible') return undefined;
  expect(solved.Status).toBe('Optimal');
  return Math.round(solved.ObjectiveValue);
}

test(
  'whether a line has a way with 152 tiles and 8 jokers, and its fewest jokers, as an integer solver finds them',
  { timeout: 120_000 },
  () => {
    const lines = [
      ...fc.sample(fc.tuple(scarcePattern, slide, slide), { seed: SEED, numRuns: 160 }),
      ...fc.sample(fc.tuple(starvedPattern, slide, slide), { seed: SEED, numRuns: 80 }),
      ...fc.sample(fc.tuple(pattern, slide, slide), { seed: SEED, numRuns: 60 }),
    ];
    let impossible = 0;
    for (const [value, first, second] of lines) {
      const ways = waysOf(value, first, second);
      const fewest = ways.length === 0 ? undefined : Math.min(...ways.map(jokersForced));
      expect([formatPattern(value), first, second, fewest]).toEqual([
        formatPattern(value),
        first,
        second,
        bySolver(value, first, second),
      ]);
      if (fewest === undefined) impossible += 1;
    }
    expect(lines.length).toBeGreaterThanOrEqual(200);
    expect(impossible).toBeGreaterThan(10);
    expect(impossible).toBeLessThan(lines.length - 100);
  },
);
