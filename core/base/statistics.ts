/** The 97.5th percentile of the standard normal law: 95 in 100 lie within this many deviations. */
export const Z95 = 1.959963984540054;

/** A share with its 95% interval. */
export interface Rate {
  readonly hits: number;
  readonly of: number;
  /** `hits` over `of`; null when there is nothing to divide. */
  readonly share: number | null;
  readonly low: number;
  readonly high: number;
}

/**
 * A share with its score interval: Wilson, "Probable inference, the law of succession, and
 * statistical inference", Journal of the American Statistical Association 22 (1927), 209-212.
 */
export function rateOf(hits: number, of: number): Rate {
  if (of === 0) return { hits, of, share: null, low: 0, high: 1 };
  const share = hits / of;
  const square = (Z95 * Z95) / of;
  const middle = (share + square / 2) / (1 + square);
  const half = (Z95 / (1 + square)) * Math.sqrt((share * (1 - share)) / of + square / (4 * of));
  return { hits, of, share, low: hits === 0 ? 0 : middle - half, high: hits === of ? 1 : middle + half };
}

/** The standard normal law: the chance of a value up to `x`; right to about 1e-15 for |x| up to 8. */
export function normalShare(x: number): number {
  // Marsaglia, "Evaluating the Normal Distribution", Journal of Statistical Software 11 (2004), 4: a Taylor series.
  if (x > 8) return 1;
  if (x < -8) return 0;
  let sum = x;
  let last = 0;
  let term = x;
  for (let odd = 3; sum !== last; odd += 2) {
    last = sum;
    term *= (x * x) / odd;
    sum += term;
  }
  return 0.5 + sum * Math.exp(-0.5 * x * x - HALF_LOG_TWO_PI);
}

const HALF_LOG_TWO_PI = 0.9189385332046728;

/** The value that a standard normal one exceeds with chance `tail`, from 1e-12 to a half. */
export function normalExceededBy(tail: number): number {
  let low = 0;
  let high = 8;
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = (low + high) / 2;
    if (normalShare(-middle) > tail) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
