import { expectValue, type Result, success } from '../base/result.ts';
import { parseGroup } from './parse-group.ts';
import { HAND_SIZE, type Pattern, type PatternGroup, tilesIn, tilesInAll } from './pattern.ts';
import { type PatternProblem, patternProblem, type PatternProblems } from './pattern-problem.ts';

/** A group as it stands in a text, from place `from` up to (not with) `to`. */
export interface ScannedGroup {
  readonly text: string;
  readonly from: number;
  readonly to: number;
  readonly group: Result<PatternGroup, PatternProblem>;
}

/** Longer than any pattern of 14 tiles needs. */
export const LONGEST_PATTERN = 400;

/** Every group of a text, good or not. Never throws; what goes beyond `LONGEST_PATTERN` is not read. */
export function scanPattern(text: string): ScannedGroup[] {
  return [...text.slice(0, LONGEST_PATTERN).matchAll(/\S+/g)].map((match) => ({
    text: match[0],
    from: match.index,
    to: match.index + match[0].length,
    group: parseGroup(match[0], match.index),
  }));
}

/**
 * Reads a pattern (`FF 2222a 44b …`): groups separated by blanks, 14 tiles together. Upper and
 * lower case differ (`W` is west, `w` any wind). Never throws; one problem at most for each
 * group, and one for the number of tiles when all groups are good.
 */
export function parsePattern(text: string): Result<Pattern, PatternProblems> {
  const scanned = scanPattern(text);
  const problems = text.length > LONGEST_PATTERN ? [tooLong()] : problemsOf(scanned);
  if (problems.length > 0) return refused(problems);
  const pattern = scanned.map(({ group }) => expectValue(group));
  const sizeProblem = checkSize(text, scanned, pattern);
  return sizeProblem === undefined ? success(pattern) : refused([sizeProblem]);
}

function problemsOf(scanned: readonly ScannedGroup[]): PatternProblem[] {
  return scanned.flatMap(({ group }) => (group.ok ? [] : [group.problem]));
}

function refused(all: readonly PatternProblem[]): Result<never, PatternProblems> {
  const first = all[0] as PatternProblem;
  return { ok: false, problem: { ...first, all } };
}

function tooLong(): PatternProblem {
  return patternProblem(
    'too-long',
    `This pattern is longer than ${LONGEST_PATTERN} letters: write 14 tiles in groups.`,
    LONGEST_PATTERN,
  );
}

/** Too few are missed at the end of the text, too many at the group that goes beyond 14. */
function checkSize(text: string, scanned: readonly ScannedGroup[], pattern: Pattern): PatternProblem | undefined {
  const total = tilesInAll(pattern);
  if (total === HAND_SIZE) return undefined;
  const end = text.trimEnd().length;
  if (total === 0)
    return patternProblem('empty', 'There is no pattern yet: write 14 tiles in groups, such as FF 222a 333b.', end);
  if (total < HAND_SIZE) {
    return patternProblem('wrong-size', `The groups hold ${count(total)}, not 14: add ${HAND_SIZE - total} more.`, end);
  }
  let held = 0;
  const beyond = pattern.findIndex((group) => (held += tilesIn(group)) > HAND_SIZE);
  const { from } = scanned[beyond] as ScannedGroup;
  return patternProblem('wrong-size', `The groups hold ${count(total)}, not 14: take ${total - HAND_SIZE} away.`, from);
}

function count(tiles: number): string {
  return tiles === 1 ? '1 tile' : `${tiles} tiles`;
}
