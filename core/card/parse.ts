import { expectValue, type Problem, type Result, success } from '../base/result.ts';
import { SUITS } from '../tiles/kinds.ts';
import {
  GROUP_TILES,
  type GroupSuit,
  HAND_SIZE,
  LARGEST_GROUP,
  type Movement,
  OPEN_SUITS,
  type Pattern,
  type PatternGroup,
  suitIn,
  symbolOf,
  tilesIn,
  tilesInAll,
} from './pattern.ts';

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

/** A group as it stands in a text, from place `from` up to (not with) `to`. */
export interface ScannedGroup {
  readonly text: string;
  readonly from: number;
  readonly to: number;
  readonly group: Result<PatternGroup, PatternProblem>;
}

/** Longer than any pattern of 14 tiles needs. */
const LONGEST_PATTERN = 400;

/** Every group of a text, good or not. Never throws; what goes beyond `LONGEST_PATTERN` is not read. */
export function scanPattern(text: string): readonly ScannedGroup[] {
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
 * group, and one for the number of tiles when all groups are good. `scanned`: its groups, if they
 * are at hand.
 */
export function parsePattern(text: string, scanned = scanPattern(text)): Result<Pattern, PatternProblems> {
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

/** Points at the end of the text if there are too few tiles, at the group that goes beyond 14 if there are too many. */
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

function patternProblem(code: PatternCode, message: string, at: number): PatternProblem {
  return { code, message, at };
}

/** A refusal for one reason. */
function refuseGroup(code: PatternCode, message: string, at: number): ReadGroup {
  return { ok: false, problem: patternProblem(code, message, at) };
}

type ReadGroup = Result<PatternGroup, PatternProblem>;

const SYMBOLS = new Set(GROUP_TILES.filter(({ is }) => is !== 'news').map(symbolOf));
/** The tiles whose symbol says all. */
const PLAIN_TILES = new Map(
  GROUP_TILES.filter((tile) => suitIn(tile) === undefined && tile.is !== 'open-dragon').map((tile) => [
    symbolOf(tile),
    tile,
  ]),
);
/** Longest first, so that `bam` is not read as `b`. */
const SUFFIXES: readonly GroupSuit[] = [...SUITS, ...OPEN_SUITS];

/** Reads one group, a sign or more without blanks, such as `222a`; `from` is where it stands in the whole text. */
function parseGroup(text: string, from: number): ReadGroup {
  if (text === 'NEWS') return success({ tile: { is: 'news' }, size: 1 });
  const symbol = text[0] as string;
  if (!SYMBOLS.has(symbol)) return unknownSymbol(text, from);
  const size = runLength(text, symbol);
  const rest = text.slice(size);
  if (size > LARGEST_GROUP) {
    return refuseGroup(
      'group-too-big',
      `A group holds 6 tiles at most: "${short(text)}" has ${size}.`,
      from + LARGEST_GROUP,
    );
  }
  if (SYMBOLS.has(rest[0] ?? '')) return mixedGroup(text, from + size);
  return tileOf(symbol, rest, from + size, size);
}

function tileOf(symbol: string, rest: string, at: number, size: number): ReadGroup {
  if (symbol === 'D') return parseDragonSuit(rest, at, size);
  const plain = PLAIN_TILES.get(symbol);
  if (plain === undefined) return parseNumber(Number(symbol), rest, at, size);
  if (rest !== '') return noSuffix(symbol, rest, at);
  return success({ tile: plain, size });
}

function parseDragonSuit(rest: string, at: number, size: number): ReadGroup {
  if (rest === '') return success({ tile: { is: 'open-dragon' }, size });
  const suit = suitAtStart(rest);
  if (suit === undefined) return wrongSuit(rest, at);
  if (suit !== rest)
    return tooMuch(rest.slice(suit.length), at + suit.length, 'Only numbers move or stay: take it away.');
  return success({ tile: { is: 'suit-dragon', suit }, size });
}

function parseNumber(number: number, rest: string, at: number, size: number): ReadGroup {
  const suit = suitAtStart(rest);
  if (suit === undefined && rest !== '' && !"='".includes(rest[0] as string)) return wrongSuit(rest, at);
  if (suit === undefined) {
    const message = `The number ${number} needs a suit after it: a, b or c, or bam, crak or dot.`;
    return refuseGroup('missing-suit', message, at);
  }
  const mark = rest.slice(suit.length);
  const movement = movementOf(mark);
  if (movement === undefined) {
    return tooMuch(mark, at + suit.length, "After a suit comes a blank, = (it stays) or ' (it moves apart).");
  }
  return success({ tile: { is: 'number', number, suit, movement }, size });
}

function movementOf(mark: string): Movement | undefined {
  if (mark === '') return 'first';
  if (mark === "'") return 'second';
  return mark === '=' ? 'stays' : undefined;
}

function suitAtStart(text: string): GroupSuit | undefined {
  return SUFFIXES.find((suit) => text.startsWith(suit));
}

function runLength(text: string, symbol: string): number {
  let length = 1;
  while (text[length] === symbol) length += 1;
  return length;
}

function unknownSymbol(text: string, at: number): ReadGroup {
  const symbol = String.fromCodePoint(text.codePointAt(0) as number);
  return refuseGroup('unknown-symbol', `"${symbol}" is not a tile of a pattern: ${hintFor(symbol)}`, at);
}

function hintFor(symbol: string): string {
  if (symbol.toUpperCase() === 'J') return 'jokers may stand in every group of three or more.';
  const capital = symbol.toUpperCase();
  if (SYMBOLS.has(capital)) return `write a capital ${capital}.`;
  if (symbol === 'X') return 'write a small x for another wind.';
  return 'use F, N E W S, w x, G R 0, D or 1 to 9.';
}

function mixedGroup(text: string, at: number): ReadGroup {
  return refuseGroup('mixed-group', `"${short(text)}" mixes different tiles: put a blank between the groups.`, at);
}

function noSuffix(symbol: string, rest: string, at: number): ReadGroup {
  return tooMuch(rest, at, `${symbol} takes no suit or mark: put a blank after it, or take "${short(rest)}" away.`);
}

function wrongSuit(rest: string, at: number): ReadGroup {
  return tooMuch(rest, at, 'Use a, b or c, or bam, crak or dot.');
}

function tooMuch(rest: string, at: number, fix: string): ReadGroup {
  return refuseGroup('unexpected-suffix', `"${short(rest)}" can't stand here. ${fix}`, at);
}

/** At most 12 characters, so that a message stays a sentence. */
function short(text: string): string {
  const letters = Array.from(text.slice(0, 26));
  return letters.length > 12 ? `${letters.slice(0, 12).join('')}…` : letters.join('');
}
