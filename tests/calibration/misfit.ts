import jstat from 'jstat';
import type { Case } from './isotonic.ts';

/** How far what came lies from what was said, in one figure. */
export interface Misfit {
  /** The sum over groups of the squares of what came less what was said, each in its own standard errors. */
  readonly statistic: number;
  /** The chance of so large a sum, or a larger one, if all was said truly but for the error that is allowed. */
  readonly tail: number;
}

export interface Allowance {
  /** The standard error of what is said itself, in each group. */
  readonly model: number;
  /** How many times the variance of a sum is that of cases that come true each by itself; 1 unless they hang together. */
  readonly spread: number;
}

/**
 * Holds what was said of groups of cases to what came. The variance of a group is exactly that of its chances, times the
 * spread, and the square of the model's own error; the sum then follows the chi-square law, with a degree of freedom for
 * each group.
 */
export function misfitOf(groups: readonly (readonly Case[])[], allowed: Allowance): Misfit {
  const statistic = groups.reduce((sum, cases) => sum + squareOff(cases, allowed), 0);
  return { statistic, tail: 1 - jstat.chisquare.cdf(statistic, groups.length) };
}

function squareOff(cases: readonly Case[], { model, spread }: Allowance): number {
  const mean = (of: (each: Case) => number): number => cases.reduce((sum, each) => sum + of(each), 0) / cases.length;
  const variance = mean(({ predicted }) => predicted * (1 - predicted)) / cases.length;
  return mean(({ predicted, won }) => Number(won) - predicted) ** 2 / (spread * variance + model ** 2);
}

/** Cases in ten groups of one size, from the least that was said to the most. */
export function inTenths(cases: readonly Case[]): Case[][] {
  const sorted = cases.toSorted((one, other) => one.predicted - other.predicted);
  const end = (tenth: number): number => Math.round((tenth * sorted.length) / 10);
  return Array.from({ length: 10 }, (_, tenth) => sorted.slice(end(tenth), end(tenth + 1)));
}
