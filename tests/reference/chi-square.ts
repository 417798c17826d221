import jstat from 'jstat';

/**
 * The chance of counts at least this uneven when all are equally likely, `expected` each
 * (Pearson's chi-square test; upper tail from jstat, itself checked in
 * tests/base).
 */
export function chiSquareTail(counts: readonly number[], expected: number): number {
  const statistic = counts.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
  return 1 - jstat.chisquare.cdf(statistic, counts.length - 1);
}
