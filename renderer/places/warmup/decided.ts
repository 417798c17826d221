import type { PassStep } from '../../../core/exchange/steps.ts';
import { isRight } from '../../../core/review/decision.ts';
import type { Judgement } from '../../../core/review/judgement.ts';
import type { DealKind } from '../../../core/warmup/deal-kinds.ts';
import type { PracticeEntry } from '../../../core/warmup/history.ts';
import { PRACTICE } from '../../../core/warmup/progress.ts';
import { today } from './answers.ts';

/** A decision of practice with what it cost. */
export interface Decided extends Judgement {
  readonly kind: DealKind;
  readonly step: PassStep;
  /** The own miss that it repeats; null for none. */
  readonly miss: string | null;
  /** What it took, when the clock was on. */
  readonly seconds: number | null;
}

/** What the history keeps of a decision: the answer, and a miss of its own if it is a new costly one. */
export function entriesOf({ seconds, miss, verdict, halfWidth, ...told }: Decided): PracticeEntry[] {
  const day = today();
  const decision = { day, ...told, ...(halfWidth === null ? {} : { halfWidth }) };
  const time = seconds === null ? {} : { seconds };
  const answer: PracticeEntry = { type: 'answer', id: crypto.randomUUID(), miss, verdict, ...decision, ...time };
  if (miss !== null || isRight(verdict)) return [answer];
  return [answer, { type: 'miss', id: crypto.randomUUID(), source: PRACTICE, ...decision }];
}
