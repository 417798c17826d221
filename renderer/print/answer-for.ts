import type { SheetProblem } from '../../core/warmup/sheet.ts';
import type { AnswerView } from '../worker/warm-up-calls.ts';

/** Finds the answer to a problem. */
export type AnswerFor = (problem: SheetProblem) => AnswerView | null;
