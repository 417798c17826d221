/**
 * Long work is written as a generator that yields often: a worker pauses or stops it there, and a
 * yielded value says how far it has come. What follows runs such steps and fits them into longer work.
 */
export type Steps<Progress, Value> = Generator<Progress, Value, void>;

/** Runs steps to their end and returns what they return. */
export function finish<Value>(steps: Steps<unknown, Value>): Value {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** Runs steps to what they yield first; returns what they return if they yield nothing. */
export function firstOf<Progress, Value>(
  steps: Steps<Progress, Value>,
): { readonly progress: Progress } | { readonly value: Value } {
  const step = steps.next();
  return step.done === true ? { value: step.value } : { progress: step.value };
}

/** The same steps; what they yield is changed by `change`. */
export function* mapped<From, To, Value>(steps: Steps<From, Value>, change: (progress: From) => To): Steps<To, Value> {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    yield change(step.value);
  }
}

/** The same steps as a part of longer work: what they yield, 0 to 1, becomes `start` to `start + share`. */
export function scaled<Value>(steps: Steps<number, Value>, start: number, share: number): Steps<number, Value> {
  return mapped(steps, (done) => start + share * done);
}

/** The same steps, of whose progress nothing is said. */
export function silent<Value>(steps: Steps<unknown, Value>): Steps<undefined, Value> {
  return mapped(steps, () => undefined);
}
