import { Z95 } from './statistics.ts';

/** No mean interval and no trend is stated on fewer values than this. */
const FEWEST_FOR_CLAIM = 30;

/** A mean; its 95% interval only from `FEWEST_FOR_CLAIM` values on, or as many as were asked for. */
export interface Mean {
  readonly count: number;
  /** Null when there are no values. */
  readonly mean: number | null;
  readonly interval: { readonly low: number; readonly high: number } | null;
}

/** The mean of values with Student's interval; `fewest` values, two or more, for one to be stated. */
export function meanOf(values: readonly number[], fewest = FEWEST_FOR_CLAIM): Mean {
  const count = values.length;
  if (count === 0) return { count, mean: null, interval: null };
  const mean = sum(values) / count;
  if (count < fewest) return { count, mean, interval: null };
  const variance = sum(values.map((value) => (value - mean) ** 2)) / (count - 1);
  const half = studentQuantile(count - 1) * Math.sqrt(variance / count);
  return { count, mean, interval: { low: mean - half, high: mean + half } };
}

/** From here on the expansion is right to 1e-6. */
const EXPANDED_FROM = 28;

/**
 * The 97.5th percentile of Student's law for a whole number of degrees of freedom, by Abramowitz and Stegun, Handbook of
 * Mathematical Functions (1964): below 28 degrees the closed form 26.7.3 and 26.7.4, halved into; from there on the
 * expansion 26.7.5 to its fourth term. Off by less than 1e-6.
 */
export function studentQuantile(freedom: number): number {
  return freedom < EXPANDED_FROM ? quantileByHalving(freedom) : expandedQuantile(freedom);
}

function quantileByHalving(freedom: number): number {
  let low = 0;
  // That of one degree is 12.7.
  let high = 13;
  for (let halving = 0; halving < 50; halving += 1) {
    const middle = (low + high) / 2;
    if (studentWithin(middle, freedom) < 0.95) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The chance of a value between -t and t. */
function studentWithin(t: number, freedom: number): number {
  const angle = Math.atan(t / Math.sqrt(freedom));
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  const isOdd = freedom % 2 === 1;
  let term = isOdd ? cosine : 1;
  let series = freedom === 1 ? 0 : term;
  for (let power = isOdd ? 3 : 2; power <= freedom - 2; power += 2) {
    term *= (cosine * cosine * (power - 1)) / power;
    series += term;
  }
  return isOdd ? (2 / Math.PI) * (angle + sine * series) : sine * series;
}

function expandedQuantile(freedom: number): number {
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
