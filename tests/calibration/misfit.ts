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
export function inTenths<Each extends Case>(cases: readonly Each[]): Each[][] {
  const sorted = cases.toSorted((one, other) => one.predicted - other.predicted);
  const end = (tenth: number): number => Math.round((tenth * sorted.length) / 10);
  return Array.from({ length: 10 }, (_, tenth) => sorted.slice(end(tenth), end(tenth + 1)));
}

/** A case that hangs together with all others of its game. */
export interface GameCase extends Case {
  readonly game: number;
}

/**
 * The same by tenths of cases that hang together within their games, of which there are many. What the tenths of one game
 * are off by, together, gives their covariances; `model` is the model's own standard error in a tenth. The square of all
 * ten gaps in that measure follows the chi-square law with ten degrees of freedom.
 */
export function misfitByGames(cases: readonly GameCase[], model: number): Misfit {
  const tenths = inTenths(cases);
  const games = new Map<number, number[]>();
  for (const [tenth, own] of tenths.entries()) {
    for (const { game, predicted, won } of own) {
      const off = games.get(game) ?? tenths.map(() => 0);
      off[tenth] = (off[tenth] as number) + (Number(won) - predicted) / own.length;
      games.set(game, off);
    }
  }
  const all = [...games.values()];
  const sum = (of: (off: readonly number[]) => number): number => all.reduce((total, off) => total + of(off), 0);
  const gaps = tenths.map((_, tenth) => sum((off) => off[tenth] as number));
  const covariances = tenths.map((_, row) =>
    tenths.map(
      (__, column) => sum((off) => (off[row] as number) * (off[column] as number)) + (row === column ? model ** 2 : 0),
    ),
  );
  const statistic = solved(covariances, gaps).reduce(
    (total, value, tenth) => total + value * (gaps[tenth] as number),
    0,
  );
  return { statistic, tail: 1 - jstat.chisquare.cdf(statistic, tenths.length) };
}

/** The solution of linear equations with a positive definite matrix, by elimination. */
function solved(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, place) => [...row, right[place] as number]);
  for (const [place, pivot] of rows.entries()) {
    for (const row of rows) {
      if (row === pivot) continue;
      const share = (row[place] as number) / (pivot[place] as number);
      for (let column = place; column <= rows.length; column += 1)
        row[column] = (row[column] as number) - share * (pivot[column] as number);
    }
  }
  return rows.map((row, place) => (row[rows.length] as number) / (row[place] as number));
}
