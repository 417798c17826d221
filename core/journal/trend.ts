import { FEWEST_FOR_CLAIM, studentQuantile, sum } from './intervals.ts';

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
 * Student's interval for its slope. It takes the values as independent, which is stated beside it.
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
