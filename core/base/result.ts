/**
 * What can go wrong at a boundary, as a value. Text typed by a person, a file from disk or a
 * message from another process is never trusted: it is parsed into a valid value or into a
 * problem. Exceptions are kept for our own bugs.
 */
export interface Problem<Code extends string = string> {
  /** One of a closed set, for programs and tests. */
  readonly code: Code;
  /** One sentence for a player: what is wrong, where, how to fix it. */
  readonly message: string;
  /** Where in the text, counted from 0, if it is a place in a text. */
  readonly at?: number;
}

export type Result<Value, Trouble = Problem> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problem: Trouble };

export function success<Value>(value: Value): { readonly ok: true; readonly value: Value } {
  return { ok: true, value };
}

export function failure<Code extends string>(
  code: Code,
  message: string,
  at?: number,
): { readonly ok: false; readonly problem: Problem<Code> } {
  return { ok: false, problem: at === undefined ? { code, message } : { code, message, at } };
}

/** The value of a result that the caller knows to be good; throws on our own bug. */
export function expectValue<Value>(result: Result<Value>): Value {
  if (result.ok) return result.value;
  throw new Error(result.problem.message);
}
