import type { Decision, Verdict } from './decision.ts';

/**
 * What a decision is said to have cost: the headline at every place that tells of it. In the
 * exchange it is the cost by its end, with its interval; the exact cost of the one step stands
 * beside it as the cost for now. Where nothing was looked ahead, the exact cost is all there is.
 */
export interface Judgement {
  /** Reach given up, 0 to 1; 0 for the best. */
  readonly cost: number;
  /** Half of the interval of a sampled cost; null for an exact one. */
  readonly halfWidth: number | null;
  readonly verdict: Verdict;
}

export function judgementOf({ cost, verdict, ahead }: Pick<Decision, 'cost' | 'verdict' | 'ahead'>): Judgement {
  return ahead === null ? { cost, halfWidth: null, verdict } : inTheEnd(ahead);
}

/** The judgement of a look ahead: its loss, with half of its interval. */
export function inTheEnd(row: {
  readonly loss: number;
  readonly halfWidth: number;
  readonly verdict: Verdict;
}): Judgement {
  const { loss, halfWidth, verdict } = row;
  return { cost: verdict === 'best' ? 0 : Math.max(0, loss), halfWidth, verdict };
}
