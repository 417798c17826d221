import { SUITS } from '../tiles/kinds.ts';
import { type GroupSuit, OPEN_SUITS, type Pattern, type PatternGroup, type Slide } from './pattern.ts';
import type { LineReading } from './line.ts';

/** How the numbers of a line move, in the trade's words. */
export const NUMBER_MOVES = ['run', 'like', 'any', 'evens', 'threes', 'printed'] as const;
export type NumberMove = (typeof NUMBER_MOVES)[number];

const SLIDE_OF: Readonly<Record<NumberMove, Slide>> = { run: 1, like: 1, any: 1, evens: 2, threes: 3, printed: 0 };

type MovingLine = Pick<LineReading, 'pattern' | 'slide'> & Partial<Pick<LineReading, 'or'>>;
type NumberGroup = PatternGroup & { readonly tile: Extract<PatternGroup['tile'], { is: 'number' }> };

function isMoving(group: PatternGroup): group is NumberGroup {
  return group.tile.is === 'number' && group.tile.movement === 'first';
}

/** The different numbers that move with the line's first slide, rising. */
export function movingNumbers(pattern: Pattern): readonly number[] {
  return [...new Set(pattern.filter(isMoving).map(({ tile }) => tile.number))].sort((one, other) => one - other);
}

/** How the numbers of a line move, by its first form that has any; null for a line without numbers that could. */
export function numberMove({ pattern, or = [], slide }: MovingLine): NumberMove | null {
  const numbers = [pattern, ...or].map(movingNumbers).find(({ length }) => length > 0) ?? [];
  const [least] = numbers;
  if (least === undefined) return null;
  if (slide === 0) return 'printed';
  if (slide === 2) return 'evens';
  if (slide === 3) return 'threes';
  if (numbers.length === 1) return 'like';
  return numbers.every((number, at) => number === least + at) ? 'run' : 'any';
}

/** What is changed of a line by a ready choice. */
export interface ReadyChange {
  readonly pattern: Pattern;
  readonly slide: Slide;
}

/**
 * A line whose numbers move as chosen. For a run its numbers are made consecutive, each new one a step up; like
 * numbers are made one number. All else stays.
 */
export function withMove(pattern: Pattern, move: NumberMove): ReadyChange {
  const slide = SLIDE_OF[move];
  const now = numberMove({ pattern, slide });
  if (now === null || move === now || (move !== 'run' && move !== 'like')) return { pattern, slide };
  const numbers = [...new Set(pattern.filter(isMoving).map(({ tile }) => tile.number))];
  if (move === 'like') return { slide, pattern: renumbered(pattern, () => numbers[0] ?? 1) };
  // Of one number each group is a step of the run; of several each number is.
  const groups = pattern.filter(isMoving).length;
  const steps = numbers.length === 1 ? groups : numbers.length;
  if (steps > 9) return { pattern, slide };
  const first = Math.min(numbers[0] ?? 1, 10 - steps);
  const stepOf = (number: number, place: number): number => (numbers.length === 1 ? place : numbers.indexOf(number));
  return { slide, pattern: renumbered(pattern, (number, place) => first + stepOf(number, place)) };
}

/** With other numbers in the groups that move; `place` counts these. */
function renumbered(pattern: Pattern, numberOf: (number: number, place: number) => number): Pattern {
  let place = -1;
  return pattern.map((group) => {
    if (!isMoving(group)) return group;
    place += 1;
    return { ...group, tile: { ...group.tile, number: numberOf(group.tile.number, place) } };
  });
}

/** The suits of a form's numbers, in printed order. */
function numberSuits(pattern: Pattern): readonly GroupSuit[] {
  return pattern.flatMap(({ tile }) => (tile.is === 'number' ? [tile.suit] : []));
}

/** In how many open suits the numbers of a line stand; null where a suit is named, or there are none. */
export function suitCount(pattern: Pattern): 1 | 2 | 3 | null {
  const suits = new Set(numberSuits(pattern));
  if (suits.size === 0 || [...suits].some((suit) => !isOpen(suit))) return null;
  return suits.size as 1 | 2 | 3;
}

function isOpen(suit: GroupSuit): boolean {
  return OPEN_SUITS.some((open) => open === suit);
}

/**
 * A line in so many suits: its numbers in order, the first part in the first suit, the last part in the last. A
 * matching dragon goes with its number, an opposite one stays opposite where a suit is left for it.
 */
export function inSuits(pattern: Pattern, count: 1 | 2 | 3): Pattern {
  const before = numberSuits(pattern);
  const suits = before.map(
    (_, at) => OPEN_SUITS[Math.floor((at * Math.min(count, before.length)) / before.length)] ?? 'a',
  );
  const free = OPEN_SUITS.find((suit) => !suits.includes(suit)) ?? 'c';
  let place = -1;
  return pattern.map((group) => {
    const { tile } = group;
    if (tile.is === 'suit-dragon') {
      const suit = suits[before.lastIndexOf(tile.suit)] ?? free;
      return { ...group, tile: { ...tile, suit } };
    }
    if (tile.is !== 'number') return group;
    place += 1;
    return { ...group, tile: { ...tile, suit: suits[place] ?? tile.suit } };
  });
}

/** Ready groups of a line, in the trade's words. */
export const READY_GROUPS = ['matching-dragon', 'opposite-dragon', 'any-dragon', 'any-wind', 'zero'] as const;
export type ReadyGroup = (typeof READY_GROUPS)[number];

/**
 * A ready group, to stand behind the groups of a form: the matching dragon is of the suit of the number before it. Null
 * where there is none: a dragon matches or opposes numbers, and in all three suits none is opposite.
 */
export function readyGroup(pattern: Pattern, which: ReadyGroup, size: number): PatternGroup | null {
  switch (which) {
    case 'any-dragon':
      return { tile: { is: 'open-dragon' }, size };
    case 'any-wind':
      return { tile: { is: 'open-wind', slot: 'w' }, size };
    case 'zero':
      return { tile: { is: 'dragon', dragon: '0' }, size };
    case 'matching-dragon':
      return dragonOf(numberSuits(pattern).at(-1), size);
    case 'opposite-dragon':
      return dragonOf(oppositeSuit(numberSuits(pattern)), size);
  }
}

function dragonOf(suit: GroupSuit | undefined, size: number): PatternGroup | null {
  return suit === undefined ? null : { tile: { is: 'suit-dragon', suit }, size };
}

/** A suit that no number has, of the same kind: open or named. */
function oppositeSuit(used: readonly GroupSuit[]): GroupSuit | undefined {
  const named = used.some((suit) => !isOpen(suit));
  if (used.length === 0 || (named && used.some(isOpen))) return undefined;
  return (named ? SUITS : OPEN_SUITS).find((suit) => !used.includes(suit));
}
