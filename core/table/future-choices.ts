import type { PassStep } from '../exchange/steps.ts';
import type { Kind } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import type { Choice } from './future-seats.ts';

/** Passes of the exact table that a race compares, best first. */
const MOST_PASSES = 6;
/** A race has room for so many passes of one size when sizes compete. */
const MOST_OF_A_SIZE = 2;

/**
 * The choices of a step that a race compares: the best passes of the exact table, `chosen` if it
 * is another, and at the second round's start the stop. In the courtesy, where the number is free,
 * the best passes of every size. `passes`: the table's, best first.
 */
export function exchangeChoices(
  step: PassStep,
  passes: readonly (readonly Kind[])[],
  chosen?: readonly Kind[],
): Choice[] {
  const best = step === 'courtesy' ? bestOfEachSize(passes) : passes.slice(0, MOST_PASSES);
  const known = chosen === undefined || best.some((tiles) => Tiles.of(tiles).equals(Tiles.of(chosen)));
  const gives = (known ? best : [...best, chosen]).map((tiles): Choice => ({ type: 'give', tiles }));
  return step === 'left2' ? [...gives, { type: 'stop' }] : gives;
}

function bestOfEachSize(passes: readonly (readonly Kind[])[]): (readonly Kind[])[] {
  return passes.filter((tiles, place) => {
    const before = passes.slice(0, place).filter(({ length }) => length === tiles.length);
    return before.length < MOST_OF_A_SIZE;
  });
}
