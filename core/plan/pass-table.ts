import type { CompiledCard } from '../reading/compiled.ts';
import type { Known } from '../reading/known.ts';
import type { ReachModel } from '../reading/reach-model.ts';
import { readerOf } from '../reading/reader.ts';
import type { Kind } from '../tiles/kinds.ts';
import { bestMeans, type PassWork } from './best-means.ts';
import { HasFutures } from './has-futures.ts';
import { incomingOf } from './incoming.ts';
import { distinctPasses, type PassSize } from './passes.ts';
import { ReachFutures } from './reach-futures.ts';
import { WayTakes } from './way-takes.ts';

/** The exact numbers of every pass of a rack; lists run side by side. */
export interface PassTable {
  /** Kinds rising, in canonical order of passes. */
  readonly passes: readonly (readonly Kind[])[];
  /** The mean, over what comes in, of the smallest away over all ways. */
  readonly expectedAway: Float64Array;
  /** The mean, over what comes in, of the largest reach over all ways. */
  readonly reach: Float64Array;
  /** The same two lists if all unseen tiles were as likely to come in; where they are, these very lists. */
  readonly even: Pick<PassTable, 'expectedAway' | 'reach'>;
}

/**
 * The table of all passes of `size` tiles, or of the `passes` given. With `weights`, 36 numbers over
 * 0, what comes in has chances in proportion to the product of its tiles' weights (incoming.ts).
 */
export function passTable(
  compiled: CompiledCard,
  known: Known,
  size: PassSize,
  model: ReachModel,
  passes?: readonly (readonly Kind[])[],
  weights?: ArrayLike<number>,
): PassTable {
  const steps = passTableSteps(compiled, known, size, model, passes, weights);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** The same in steps of a few milliseconds: each yields the part done, 0 to 1. */
export function* passTableSteps(
  compiled: CompiledCard,
  known: Known,
  size: PassSize,
  model: ReachModel,
  passes: readonly (readonly Kind[])[] = distinctPasses(known.rack, size),
  weights?: ArrayLike<number>,
): Generator<number, PassTable> {
  const counts = known.rack.toCounts();
  const unseen = known.unseen.toCounts();
  const work: PassWork = {
    wayCount: compiled.wayCount,
    counts,
    passes,
    takes: new WayTakes(compiled, counts),
    incomings: [incomingOf(unseen, size), ...(weights === undefined ? [] : [incomingOf(unseen, size, weights)])],
  };
  const has = yield* scaled(bestMeans(work, new HasFutures(compiled, unseen, size)), 0, 0.4);
  const reachFutures = new ReachFutures(compiled, readerOf(model).reach, unseen, size);
  const reach = yield* scaled(bestMeans(work, reachFutures), 0.4, 0.6);
  const numbers = has.map((means, law) => ({
    expectedAway: means.map((mean) => 14 - mean),
    reach: reach[law] as Float64Array,
  }));
  const [even, weighed = even] = numbers as [PassTable['even'], PassTable['even']?];
  return { passes, ...weighed, even };
}

/** The same steps as a part of a longer work. */
export function* scaled<Answer>(
  steps: Generator<number, Answer>,
  start: number,
  part: number,
): Generator<number, Answer> {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    yield start + part * step.value;
  }
}
