import type { HandDocument, ReadingDocument } from '../../../../core/engine/documents.ts';

/** A rival must have so many times the reach of the target before a change is advised: reaches are estimates. */
const CLEARLY = 1.25;

/** What to do about the hand aimed at. */
export interface TargetAdvice {
  readonly verdict: 'stay' | 'change' | 'dead' | 'none';
  /** The line aimed at. */
  readonly target: string;
  /** The target's reach; 0 when it is struck out. */
  readonly reach: number;
  /** The hand with the best reach; null when no hand is left. */
  readonly best: HandDocument | null;
}

/** Whether to stay with a target, by the reading as it is now; `target` null takes the best hand for it. */
export function targetAdvice(target: string | null, { hands }: Pick<ReadingDocument, 'hands'>): TargetAdvice {
  const [best = null] = hands;
  if (best === null) return { verdict: 'none', target: target ?? '', reach: 0, best };
  const aimed = target ?? best.line;
  const own = hands.find(({ line }) => line === aimed);
  if (own === undefined) return { verdict: 'dead', target: aimed, reach: 0, best };
  const better = best.line !== aimed && best.reach > own.reach * CLEARLY;
  return { verdict: better ? 'change' : 'stay', target: aimed, reach: own.reach, best };
}
