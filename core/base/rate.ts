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
