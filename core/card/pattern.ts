import type { Dragon, Suit, Wind } from '../tiles/kinds.ts';

/** Suits that a pattern leaves open: three different suits, in any order. */
export const OPEN_SUITS = ['a', 'b', 'c'] as const;
export type OpenSuit = (typeof OPEN_SUITS)[number];
/** The suit of a group: open, or named. */
export type GroupSuit = OpenSuit | Suit;

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

const MARKS = { first: '', second: "'", stays: '=' } as const;

/** The canonical text of a group: `222a`, `DDDbam`, `NEWS`, `4b'`. */
export function formatGroup({ tile, size }: PatternGroup): string {
  switch (tile.is) {
    case 'flower':
      return 'F'.repeat(size);
    case 'wind':
      return tile.wind.repeat(size);
    case 'open-wind':
      return tile.slot.repeat(size);
    case 'news':
      return 'NEWS';
    case 'dragon':
      return tile.dragon.repeat(size);
    case 'suit-dragon':
      return 'D'.repeat(size) + tile.suit;
    case 'open-dragon':
      return 'D'.repeat(size);
    case 'number':
      return String(tile.number).repeat(size) + tile.suit + MARKS[tile.movement];
  }
}

/** The canonical text of a pattern; `parsePattern` reads it back to an equal value. */
export function formatPattern(pattern: Pattern): string {
  return pattern.map(formatGroup).join(' ');
}
