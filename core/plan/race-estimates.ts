import { rateOf, Z95 } from '../base/rate.ts';
import type { Figure } from './race.ts';
import type { RaceTotals } from './race-totals.ts';

/** A sampled number with its standard error and interval. */
export interface Estimate {
  readonly mean: number;
  readonly error: number;
  readonly low: number;
  readonly high: number;
}

/** A candidate's figure with its 95% interval: Wilson's for a share, the normal law's for a mean. */
export function valueEstimate(totals: RaceTotals, candidate: number, figure: number, { kind }: Figure): Estimate {
  const samples = totals.samplesOf(candidate);
  const [sum, squares] = totals.valueOf(candidate, figure);
  if (kind === 'mean') return meanEstimate(sum, squares, samples, Z95);
  const { low, high } = rateOf(sum, samples);
  const mean = sum / samples;
  return { mean, error: Math.sqrt((mean * (1 - mean)) / samples), low, high };
}

/** By how much a candidate is worse than another; within `z` standard errors, over the futures in common. */
export function lossEstimate(
  totals: RaceTotals,
  worse: number,
  better: number,
  figure: number,
  { kind, better: direction }: Figure,
  z: number,
): Estimate {
  const samples = totals.commonOf(worse, better);
  const [sum, squares] =
    direction === 'more' ? totals.gapOf(better, worse, figure) : totals.gapOf(worse, better, figure);
  if (worse === better) return { mean: 0, error: 0, low: 0, high: 0 };
  // Matched 0/1 pairs: half a pair more in each cell of the two by two table keeps the interval honest when few
  // pairs differ (Agresti and Min, "Simple improved confidence intervals for comparing matched proportions",
  // Statistics in Medicine 24, 2005).
  if (kind === 'share') return { ...meanEstimate(sum, squares + 1, samples + 2, z), mean: sum / samples };
  return meanEstimate(sum, squares, samples, z);
}

function meanEstimate(sum: number, squares: number, samples: number, z: number): Estimate {
  const mean = sum / samples;
  const error = Math.sqrt(Math.max(0, squares / samples - mean * mean) / (samples - 1));
  return { mean, error, low: mean - z * error, high: mean + z * error };
}
