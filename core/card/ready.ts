import { type GroupSuit, OPEN_SUITS, type Pattern, type PatternGroup, type Slide, suitIn } from './pattern.ts';
import type { LineReading } from './line.ts';

/** How the numbers of a line move, in the trade's words. */
export const NUMBER_MOVES = ['run', 'like', 'any', 'evens', 'threes', 'printed'] as const;
export type NumberMove = (typeof NUMBER_MOVES)[number];

const SLIDE_OF: Readonly<Record<NumberMove, Slide>> = { run: 1, like: 1, any: 1, evens: 2, threes: 3, printed: 0 };

type NumberGroup = PatternGroup & { readonly tile: Extract<PatternGroup['tile'], { is: 'number' }> };

function isMoving(group: PatternGroup): group is NumberGroup {
  return group.tile.is === 'number' && group.tile.movement === 'first';
}

/** The different numbers that move with the line's first slide, rising. */
export function movingNumbers(pattern: Pattern): readonly number[] {
  return [...new Set(pattern.filter(isMoving).map(({ tile }) => tile.number))].sort((one, other) => one - other);
}

/** How the numbers of a line move; null for one without numbers that could. */
export function numberMove({ pattern, slide }: Pick<LineReading, 'pattern' | 'slide'>): NumberMove | null {
  const numbers = movingNumbers(pattern);
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
  const first = move === 'like' ? (numbers[0] ?? 1) : Math.min(numbers[0] ?? 1, 10 - numbers.length);
  const steps = move === 'run' && numbers.length === 1 ? null : numbers;
  let place = -1;
  return {
    slide,
    pattern: pattern.map((group) => {
      if (!isMoving(group)) return group;
      place += 1;
      const step = move === 'like' ? 0 : steps === null ? place : steps.indexOf(group.tile.number);
      return { ...group, tile: { ...group.tile, number: Math.min(9, first + step) } };
    }),
  };
}

/** In how many open suits a line stands; null where a suit is named, or none is needed. */
export function suitCount(pattern: Pattern): 1 | 2 | 3 | null {
  const suits = new Set(pattern.flatMap(({ tile }) => suitIn(tile) ?? []));
  if (suits.size === 0 || [...suits].some((suit) => !isOpen(suit))) return null;
  return suits.size as 1 | 2 | 3;
}

function isOpen(suit: GroupSuit): boolean {
  return OPEN_SUITS.some((open) => open === suit);
}

/** A line in so many suits: its groups in order, the first part in the first suit, the last part in the last. */
export function inSuits(pattern: Pattern, count: 1 | 2 | 3): Pattern {
  const all = pattern.filter(({ tile }) => suitIn(tile) !== undefined).length;
  let place = -1;
  return pattern.map((group) => {
    if (!('suit' in group.tile)) return group;
    place += 1;
    const suit = OPEN_SUITS[Math.floor((place * Math.min(count, all)) / all)] ?? 'a';
    return { ...group, tile: { ...group.tile, suit } };
  });
}

/** Ready groups of a line, in the trade's words. */
export const READY_GROUPS = ['matching-dragon', 'opposite-dragon', 'any-dragon', 'any-wind', 'zero'] as const;
export type ReadyGroup = (typeof READY_GROUPS)[number];

/** A ready group, to stand behind the groups of a line: the matching dragon is of the suit of the number before it. */
export function readyGroup(pattern: Pattern, which: ReadyGroup, size: number): PatternGroup {
  switch (which) {
    case 'any-dragon':
      return { tile: { is: 'open-dragon' }, size };
    case 'any-wind':
      return { tile: { is: 'open-wind', slot: 'w' }, size };
    case 'zero':
      return { tile: { is: 'dragon', dragon: '0' }, size };
    case 'matching-dragon':
      return { tile: { is: 'suit-dragon', suit: lastSuit(pattern) }, size };
    case 'opposite-dragon': {
      const used = new Set(pattern.filter(({ tile }) => tile.is === 'number').map(({ tile }) => suitIn(tile)));
      const suit = OPEN_SUITS.find((each) => !used.has(each)) ?? OPEN_SUITS.find((each) => each !== lastSuit(pattern));
      return { tile: { is: 'suit-dragon', suit: suit ?? 'b' }, size };
    }
  }
}

function lastSuit(pattern: Pattern): GroupSuit {
  const numbers = pattern.filter(({ tile }) => tile.is === 'number');
  return suitIn(numbers.at(-1)?.tile ?? { is: 'flower' }) ?? 'a';
}
