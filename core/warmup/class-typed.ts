import { failure, type Problem, type Result, success } from '../base/result.ts';
import { mayBePassed, ownSizes, PASS_SIZE } from '../exchange/steps.ts';
import { tileWords } from '../tiles/names.ts';
import { parseTiles } from '../tiles/text.ts';
import type { Tiles } from '../tiles/tiles.ts';
import { MOST_PEOPLE, type SheetProblem, tilesOf } from './sheet.ts';

/* What a teacher types of a class: read, or refused in one sentence. */

export type ClassPassTrouble = 'tiles' | 'joker' | 'count' | 'rack' | 'people';

/** Reads what somebody of a class gave at a problem; refused in one sentence when it can't be. */
export function readClassPass(
  { rack, step }: Pick<SheetProblem, 'rack' | 'step'>,
  text: string,
): Result<Tiles, Problem<ClassPassTrouble>> {
  const free = ownSizes(step).length > 1;
  if (text.trim() === '' && !free) return failure('count', 'Type the three tiles that somebody gave.');
  const give = parseTiles(text);
  if (!give.ok) return failure('tiles', give.problem.message);
  if (!give.value.distinct().every(mayBePassed)) {
    return failure('joker', 'A joker is never passed: type another tile in its place.');
  }
  const { size } = give.value;
  if (size > PASS_SIZE || (size < PASS_SIZE && !free)) {
    const due = free ? 'at most three tiles' : 'three tiles';
    return failure('count', `A pass here is ${due}, but these are ${size}: type them again.`);
  }
  return inRack(rack, give.value);
}

/** Reads what somebody kept of a rack; nothing typed is nothing said. */
export function readClassKeeps(
  { rack }: Pick<SheetProblem, 'rack'>,
  text: string,
): Result<Tiles, Problem<ClassPassTrouble>> {
  const keeps = parseTiles(text);
  return keeps.ok ? inRack(rack, keeps.value) : failure('tiles', keeps.problem.message);
}

function inRack(rack: string, tiles: Tiles): Result<Tiles, Problem<ClassPassTrouble>> {
  const missing = tiles.minus(tilesOf(rack));
  if (missing.size === 0) return success(tiles);
  return failure('rack', `This rack is short of ${tileWords(missing.toKinds())}: type tiles that it holds.`);
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
