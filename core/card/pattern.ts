import { type Dragon, DRAGONS, type Suit, SUITS, type Wind, WINDS } from '../tiles/kinds.ts';

/** Suits that a pattern leaves open: three different suits, in any order. */
export const OPEN_SUITS = ['a', 'b', 'c'] as const;
export type OpenSuit = (typeof OPEN_SUITS)[number];
/** The suit of a group: open, or named. */
export type GroupSuit = OpenSuit | Suit;
export const ALL_SUITS: readonly GroupSuit[] = [...OPEN_SUITS, ...SUITS];

/** Winds that a pattern leaves open: all `w` of a line are one wind, all `x` another one. */
export const OPEN_WINDS = ['w', 'x'] as const;
export type OpenWind = (typeof OPEN_WINDS)[number];

/** How a number moves: with the line's first slide, with its second one, or not at all. */
export const MOVEMENTS = ['first', 'second', 'stays'] as const;
export type Movement = (typeof MOVEMENTS)[number];

/** How far numbers may move together: not at all, by any amount, by even amounts, by threes. */
export const SLIDES = [0, 1, 2, 3] as const;
export type Slide = (typeof SLIDES)[number];

/** What stands in a group. */
export type GroupTile =
  | { readonly is: 'flower' }
  | { readonly is: 'wind'; readonly wind: Wind }
  | { readonly is: 'open-wind'; readonly slot: OpenWind }
  /** The four winds side by side, each a single. */
  | { readonly is: 'news' }
  | { readonly is: 'dragon'; readonly dragon: Dragon }
  | { readonly is: 'suit-dragon'; readonly suit: GroupSuit }
  /** Any one dragon, the same in the whole line. */
  | { readonly is: 'open-dragon' }
  | { readonly is: 'number'; readonly number: number; readonly suit: GroupSuit; readonly movement: Movement };

/** A group of a pattern: the same tile, `size` times (1 to 6; for `news` always 1). */
export interface PatternGroup {
  readonly tile: GroupTile;
  readonly size: number;
}

/** A line's pattern, understood: its groups in printed order. */
export type Pattern = readonly PatternGroup[];

/** Tiles in a hand. */
export const HAND_SIZE = 14;
export const LARGEST_GROUP = 6;

/** Tiles that a group holds. */
export function tilesIn(group: PatternGroup): number {
  return group.tile.is === 'news' ? 4 : group.size;
}

/** Tiles that all groups hold together. */
export function tilesInAll(pattern: Pattern): number {
  return pattern.reduce((sum, group) => sum + tilesIn(group), 0);
}

const NUMBERS = [1, 2, 3, 4, 5, 6, 7, 8, 9] as const;

/**
 * Every tile that may stand in a group, in the order in which a builder offers them. Tiles with a
 * suit stand in the first open one, and numbers move with the first slide.
 */
export const GROUP_TILES: readonly GroupTile[] = [
  { is: 'flower' },
  ...NUMBERS.map((number): GroupTile => ({ is: 'number', number, suit: 'a', movement: 'first' })),
  ...WINDS.map((wind): GroupTile => ({ is: 'wind', wind })),
  ...OPEN_WINDS.map((slot): GroupTile => ({ is: 'open-wind', slot })),
  { is: 'news' },
  ...DRAGONS.map((dragon): GroupTile => ({ is: 'dragon', dragon })),
  { is: 'open-dragon' },
  { is: 'suit-dragon', suit: 'a' },
];

/** What stands in a group but for its suit and movement, as a text repeats it: `2` of `222a`, `D`, `NEWS`. */
export function symbolOf(tile: GroupTile): string {
  switch (tile.is) {
    case 'flower':
      return 'F';
    case 'wind':
      return tile.wind;
    case 'open-wind':
      return tile.slot;
    case 'news':
      return 'NEWS';
    case 'dragon':
      return tile.dragon;
    case 'suit-dragon':
    case 'open-dragon':
      return 'D';
    case 'number':
      return String(tile.number);
  }
}

/** The suit of a tile; undefined for one without. */
export function suitIn(tile: GroupTile): GroupSuit | undefined {
  return 'suit' in tile ? tile.suit : undefined;
}

/** A group with another tile in it; its suit and movement stay where they still mean something. */
export function withTile({ tile, size }: PatternGroup, next: GroupTile): PatternGroup {
  if (next.is === 'news') return { tile: next, size: 1 };
  if (next.is !== 'number' && next.is !== 'suit-dragon') return { tile: next, size };
  const suit = suitIn(tile) ?? next.suit;
  if (next.is === 'suit-dragon') return { tile: { ...next, suit }, size };
  return { tile: { ...next, suit, movement: tile.is === 'number' ? tile.movement : next.movement }, size };
}

const MARKS = { first: '', second: "'", stays: '=' } as const;

/** The canonical text of a group: `222a`, `DDDbam`, `NEWS`, `4b'`. */
export function formatGroup({ tile, size }: PatternGroup): string {
  return symbolOf(tile).repeat(size) + (suitIn(tile) ?? '') + (tile.is === 'number' ? MARKS[tile.movement] : '');
}

/** The canonical text of a pattern; `parsePattern` reads it back to an equal value. */
export function formatPattern(pattern: Pattern): string {
  return pattern.map(formatGroup).join(' ');
}
