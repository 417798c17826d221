import type { PassStep } from '../../../core/exchange/steps.ts';
import { EQUAL_WITHIN, type Verdict } from '../../../core/review/decision.ts';
import type { DealKind } from '../../../core/warmup/deal-kinds.ts';
import type { PracticeEntry } from '../../../core/warmup/history.ts';
import { PRACTICE } from '../../../core/warmup/progress.ts';
import { today } from './answers.ts';

/** A decision of practice with what it cost. */
export interface Decided {
  readonly kind: DealKind;
  readonly step: PassStep;
  /** Reach given up, 0 to 1. */
  readonly cost: number;
  readonly verdict: Verdict;
  /** The own miss that it repeats; null for none. */
  readonly miss: string | null;
  /** What it took, when the clock was on. */
  readonly seconds: number | null;
}

/** What the history keeps of a decision: the answer, and a miss of its own if it is a new costly one. */
export function entriesOf({ seconds, ...decided }: Decided): PracticeEntry[] {
  const { kind, step, cost, miss } = decided;
  const [id, day] = [crypto.randomUUID(), today()];
  const answer: PracticeEntry = { type: 'answer', id, day, ...decided, ...(seconds === null ? {} : { seconds }) };
  if (miss !== null || cost <= EQUAL_WITHIN) return [answer];
  return [answer, { type: 'miss', id: crypto.randomUUID(), day, kind, step, cost, source: PRACTICE }];
}
