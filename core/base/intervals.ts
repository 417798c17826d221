import { Z95 } from './statistics.ts';

/** No mean interval and no trend is stated on fewer values than this. */
const FEWEST_FOR_CLAIM = 30;

/** A mean; its 95% interval only from `FEWEST_FOR_CLAIM` values on. */
export interface Mean {
  readonly count: number;
  /** Null when there are no values. */
  readonly mean: number | null;
  readonly interval: { readonly low: number; readonly high: number } | null;
}

/** The mean of values with Student's interval. */
export function meanOf(values: readonly number[]): Mean {
  const count = values.length;
  if (count === 0) return { count, mean: null, interval: null };
  const mean = sum(values) / count;
  if (count < FEWEST_FOR_CLAIM) return { count, mean, interval: null };
  const variance = sum(values.map((value) => (value - mean) ** 2)) / (count - 1);
  const half = studentQuantile(count - 1) * Math.sqrt(variance / count);
  return { count, mean, interval: { low: mean - half, high: mean + half } };
}

/**
 * The 97.5th percentile of Student's law for 28 degrees of freedom or more: the expansion 26.7.5
 * of Abramowitz and Stegun, Handbook of Mathematical Functions (1964), to its fourth term; off by
 * less than 1e-6 there.
 */
export function studentQuantile(freedom: number): number {
  const z = Z95;
  const first = (z ** 3 + z) / 4;
  const second = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96;
  const third = (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384;
  const fourth = (79 * z ** 9 + 776 * z ** 7 + 1482 * z ** 5 - 1920 * z ** 3 - 945 * z) / 92_160;
  return z + first / freedom + second / freedom ** 2 + third / freedom ** 3 + fourth / freedom ** 4;
}

export function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** Whether something changes over time. */
export interface Trend {
  readonly count: number;
  /** Change per step, with its 95% interval; null below `FEWEST_FOR_CLAIM` values. */
  readonly slope: { readonly value: number; readonly low: number; readonly high: number } | null;
  /** Stated only if the interval excludes zero. */
  readonly claim: 'rising' | 'falling' | null;
}

/**
 * The straight line of least squares through values in order of time, one step apart, with
 * Student's interval for its slope. It assumes independent values, which is stated beside it.
 */
export function trendOf(values: readonly number[]): Trend {
  const count = values.length;
  if (count < FEWEST_FOR_CLAIM) return { count, slope: null, claim: null };
  const middle = (count - 1) / 2;
  const mean = sum(values) / count;
  const spread = sum(values.map((_, step) => (step - middle) ** 2));
  const value = sum(values.map((each, step) => (step - middle) * (each - mean))) / spread;
  const rest = sum(values.map((each, step) => (each - mean - value * (step - middle)) ** 2));
  const half = studentQuantile(count - 2) * Math.sqrt(rest / (count - 2) / spread);
  const slope = { value, low: value - half, high: value + half };
  return { count, slope, claim: claimOf(slope) };
}

function claimOf({ low, high }: { low: number; high: number }): Trend['claim'] {
  if (low > 0) return 'rising';
  return high < 0 ? 'falling' : null;
}
