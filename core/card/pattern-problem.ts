import type { Problem, Result } from '../base/result.ts';

export type PatternCode =
  | 'empty'
  | 'too-long'
  | 'unknown-symbol'
  | 'mixed-group'
  | 'group-too-big'
  | 'missing-suit'
  | 'unexpected-suffix'
  | 'wrong-size';

/** A problem in a pattern; `at` is its place in the text, counted from 0. */
export type PatternProblem = Problem<PatternCode> & { readonly at: number };

/** The first problem of a pattern, and all of them in the order of the text. */
export type PatternProblems = PatternProblem & { readonly all: readonly PatternProblem[] };

export function patternProblem(code: PatternCode, message: string, at: number): PatternProblem {
  return { code, message, at };
}

/** A refusal for one reason. */
export function refuseGroup(code: PatternCode, message: string, at: number): Result<never, PatternProblem> {
  return { ok: false, problem: patternProblem(code, message, at) };
}
