import { failure, type Problem, type Result, success } from '../base/result.ts';
import { PASS_SIZE } from '../exchange/state.ts';
import type { PassStep } from '../exchange/steps.ts';
import { words } from '../review/why.ts';
import { JOKER } from '../tiles/kinds.ts';
import { parseTiles } from '../tiles/text.ts';
import type { Tiles } from '../tiles/tiles.ts';
import { type SheetProblem, tilesOf } from './sheet.ts';

export type ClassPassTrouble = 'tiles' | 'joker' | 'count' | 'rack' | 'people';

/** The most people that one pass of a class counts. */
export const MOST_PEOPLE = 1000;

/** Where fewer than three tiles may be given: in the courtesy, and where some may go unseen. */
const FREE_COUNT: readonly PassStep[] = ['left', 'right2', 'courtesy'];

/** Reads what somebody of a class gave at a problem; refused in one sentence when it can't be. */
export function readClassPass(
  { rack, step }: Pick<SheetProblem, 'rack' | 'step'>,
  text: string,
): Result<Tiles, Problem<ClassPassTrouble>> {
  const free = FREE_COUNT.includes(step);
  if (text.trim() === '' && !free) return failure('count', 'Type the three tiles that somebody gave.');
  const give = parseTiles(text);
  if (!give.ok) return failure('tiles', give.problem.message);
  if (give.value.count(JOKER) > 0) return failure('joker', 'A joker is never passed: type another tile in its place.');
  const { size } = give.value;
  if (size > PASS_SIZE || (size < PASS_SIZE && !free)) {
    const due = free ? 'at most three tiles' : 'three tiles';
    return failure('count', `A pass here is ${due}, but these are ${size}: type them again.`);
  }
  const missing = give.value.minus(tilesOf(rack));
  if (missing.size > 0) {
    return failure('rack', `This rack is short of ${words(missing)}: type tiles that it holds.`);
  }
  return success(give.value);
}

/** Reads how many people gave it, `before` others of whom are counted already. */
export function readPeople(text: string, before = 0): Result<number, Problem<ClassPassTrouble>> {
  const people = text.trim() === '' ? Number.NaN : Number(text);
  if (!Number.isInteger(people) || people < 1 || people > MOST_PEOPLE) {
    return failure('people', `People are counted from 1 to ${MOST_PEOPLE}: type a whole number.`);
  }
  if (before + people > MOST_PEOPLE) {
    return failure('people', `With ${before} counted before, only ${MOST_PEOPLE - before} more people can be added.`);
  }
  return success(people);
}
