import { GROUP_SYMBOLS, NUMBER_SYMBOLS } from './draft.ts';
import { scanPattern } from './parse.ts';
import { parseGroup } from './parse-group.ts';
import {
  type GroupSuit,
  HAND_SIZE,
  LARGEST_GROUP,
  MOVEMENTS,
  OPEN_SUITS,
  type PatternGroup,
  formatGroup,
  tilesIn,
} from './pattern.ts';
import { groupWords, movementWords } from './words.ts';
import { SUITS } from '../tiles/kinds.ts';

/** A way to go on with the group at the caret. */
export interface Completion {
  /** What to put in at the caret. */
  readonly insert: string;
  /** The whole group that comes of it. */
  readonly group: string;
  /** The group in words. */
  readonly words: string;
}

interface Known {
  readonly text: string;
  readonly group: PatternGroup;
}

const ALL_SUITS: readonly GroupSuit[] = [...OPEN_SUITS, ...SUITS];

/**
 * Ways to finish the group that is being typed before the caret, likely ones first. Groups of the
 * size typed so far are offered, or with one tile more; marks only behind a finished number; none
 * that goes beyond 14 tiles. Nothing is offered in the middle of a group.
 */
export function completionsAt(text: string, caret: number): readonly Completion[] {
  if (/\S/.test(text.slice(caret, caret + 1))) return [];
  const typed = text.slice(0, caret).split(/\s/).at(-1) as string;
  const room = HAND_SIZE - tilesElsewhere(text, caret);
  const offered = typed === '' ? STARTS : KNOWN_GROUPS.filter(({ text: known }) => goesOn(known, typed));
  return offered.filter(({ group }) => tilesIn(group) <= room).map((known) => completion(known, typed));
}

function goesOn(known: string, typed: string): boolean {
  if (known.length <= typed.length || !known.startsWith(typed)) return false;
  const added = known.slice(typed.length);
  if (known === 'NEWS' || added === typed[0]) return true;
  const isMarked = known.endsWith('=') || known.endsWith("'");
  return runLength(known) === runLength(typed) && (!isMarked || added.length === 1);
}

function completion({ text, group }: Known, typed: string): Completion {
  return { insert: text.slice(typed.length), group: text, words: groupWords(group) + movementWords(group) };
}

function runLength(text: string): number {
  let length = 1;
  while (length < text.length && text[length] === text[0]) length += 1;
  return length;
}

function tilesElsewhere(text: string, caret: number): number {
  return scanPattern(text)
    .filter(({ from, to }) => caret <= from || caret > to)
    .reduce((sum, { group }) => sum + (group.ok ? tilesIn(group.value) : 0), 0);
}

function known(text: string): Known[] {
  const group = parseGroup(text, 0);
  return group.ok ? [{ text, group: group.value }] : [];
}

/** Every group there is, some 1,100: smaller ones first, open suits before named ones, plain numbers before marked ones. */
const KNOWN_GROUPS: readonly Known[] = Array.from({ length: LARGEST_GROUP }, (_, index) => index + 1).flatMap(
  (size) => [
    ...GROUP_SYMBOLS.flatMap((symbol) => (symbol === 'NEWS' ? [] : known(symbol.repeat(size)))),
    ...(size === 1 ? known('NEWS') : []),
    ...ALL_SUITS.flatMap((suit) => known('D'.repeat(size) + suit)),
    ...MOVEMENTS.flatMap((movement) =>
      NUMBER_SYMBOLS.flatMap((_, index) =>
        ALL_SUITS.flatMap((suit) =>
          known(formatGroup({ tile: { is: 'number', number: index + 1, suit, movement }, size })),
        ),
      ),
    ),
  ],
);

/** Offered for a new group: each tile once, numbers in the first suit. */
const STARTS: readonly Known[] = GROUP_SYMBOLS.flatMap((symbol) =>
  NUMBER_SYMBOLS.some((number) => number === symbol) ? known(`${symbol}a`) : known(symbol),
);
