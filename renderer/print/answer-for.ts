import type { SheetProblem } from '../../core/warmup/sheet.ts';
import type { ProblemEnds } from '../../core/warmup/sheet-ends.ts';
import type { AnswerView } from '../worker/warm-up-calls.ts';

/** The answer to a problem of a sheet. */
export interface SheetAnswer {
  readonly answer: AnswerView;
  /** What its choices cost by the end of the exchange; null until that was looked at. */
  readonly ends: ProblemEnds | null;
}

/** Finds the answer to a problem. */
export type AnswerFor = (problem: SheetProblem) => SheetAnswer | null;
