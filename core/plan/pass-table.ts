import { finish, scaled, type Steps } from '../base/steps.ts';
import { mayBePassed, type PassSize } from '../exchange/steps.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import type { Known } from '../reading/known.ts';
import type { ReachModel } from '../reading/reach-model.ts';
import { readerOf } from '../reading/reader.ts';
import type { Kind } from '../tiles/kinds.ts';
import type { Tiles } from '../tiles/tiles.ts';
import { bestMeans, type PassWork } from './best-means.ts';
import { incomingOf } from './incoming.ts';
import { RemovedSets } from './multisets.ts';
import { ReachValues } from './reach-values.ts';
import { HeldValues } from './way-values.ts';

/** Every different choice of `size` tiles of a rack, jokers never among them; kinds rising, in canonical order. */
export function distinctPasses(rack: Tiles, size: PassSize): Kind[][] {
  const kinds = rack.distinct().filter(mayBePassed);
  const choose = (from: number, left: number): Kind[][] => {
    if (left === 0) return [[]];
    return kinds.slice(from).flatMap((kind, offset) => {
      const most = Math.min(left, rack.count(kind));
      return Array.from({ length: most }, (_, more) => more + 1)
        .reverse()
        .flatMap((count) =>
          choose(from + offset + 1, left - count).map((rest) => [...Array<Kind>(count).fill(kind), ...rest]),
        );
    });
  };
  return choose(0, size);
}

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
  return finish(passTableSteps(compiled, known, size, model, passes, weights));
}

/** The same in steps of a few milliseconds: each yields the part done, 0 to 1. */
export function* passTableSteps(
  compiled: CompiledCard,
  known: Known,
  size: PassSize,
  model: ReachModel,
  passes: readonly (readonly Kind[])[] = distinctPasses(known.rack, size),
  weights?: ArrayLike<number>,
): Steps<number, PassTable> {
  const unseen = known.unseen.toCounts();
  const even = incomingOf(unseen, size);
  const laws: PassWork['incomings'] = weights === undefined ? [even] : [even, incomingOf(unseen, size, weights)];
  const work = passWork(compiled, known, passes, laws);
  const has = yield* scaled(bestMeans(work, new HeldValues(compiled, unseen, size)), 0, 0.4);
  const reachValues = new ReachValues(compiled, readerOf(model).reach, unseen, size);
  const reach = yield* scaled(bestMeans(work, reachValues), 0.4, 0.6);
  const numbers = has.map((means, law) => ({
    expectedAway: means.map((mean) => 14 - mean),
    reach: reach[law] as Float64Array,
  }));
  const [alike, weighed = alike] = numbers as [PassTable['even'], PassTable['even']?];
  return { passes, ...weighed, even: alike };
}

/** The mean of the largest reach alone, for those who do not look at tiles away: the same numbers at less cost. */
export function* passReachSteps(
  compiled: CompiledCard,
  known: Known,
  size: PassSize,
  model: ReachModel,
  weights?: ArrayLike<number>,
): Steps<number, Pick<PassTable, 'passes' | 'reach'>> {
  const unseen = known.unseen.toCounts();
  const passes = distinctPasses(known.rack, size);
  const work = passWork(compiled, known, passes, [incomingOf(unseen, size, weights)]);
  const [reach] = yield* bestMeans(work, new ReachValues(compiled, readerOf(model).reach, unseen, size));
  return { passes, reach: reach as Float64Array };
}

function passWork(
  compiled: CompiledCard,
  known: Known,
  passes: readonly (readonly Kind[])[],
  incomings: PassWork['incomings'],
): PassWork {
  const counts = known.rack.toCounts();
  return { wayCount: compiled.wayCount, counts, passes, removed: new RemovedSets(compiled, counts), incomings };
}

/**
 * The best pass by reach of each number of tiles: what a race compares when one, two or three tiles
 * may be handed on unseen.
 */
export function bestOfSizes(
  compiled: CompiledCard,
  known: Known,
  model: ReachModel,
  sizes: readonly PassSize[],
  weights?: ArrayLike<number>,
): (readonly Kind[])[] {
  return sizes.map((size) => {
    const { passes, reach } = finish(passReachSteps(compiled, known, size, model, weights));
    const best = reach.reduce((most, next, place) => (next > (reach[most] as number) ? place : most), 0);
    return passes[best] as readonly Kind[];
  });
}
