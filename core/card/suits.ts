import { OPEN_SUITS, type Pattern, suitIn } from './pattern.ts';

/** A group with an open suit: its tiles, its suit, its mark. */
const OPEN_GROUP = /(?<=^|\s)([1-9]+|D+)([abc])(['=]?)(?=\s|$)/g;

/** A pattern's text with b and c read as bams and craks; all else stays as it is written. */
export function namedSuits(text: string): string {
  const names: Readonly<Record<string, string>> = { b: 'bam', c: 'crak' };
  return withSuits(text, (suit) => names[suit] ?? suit);
}

/** A pattern's text with its open suits named from a on: b alone becomes a, b and c become a and b. */
export function openSuits(text: string): string {
  const used = [...new Set([...text.matchAll(OPEN_GROUP)].map(([, , suit]) => suit as string))].sort();
  return withSuits(text, (suit) => OPEN_SUITS[used.indexOf(suit)] ?? suit);
}

function withSuits(text: string, rename: (suit: string) => string): string {
  return text.replaceAll(OPEN_GROUP, (_, tiles: string, suit: string, mark: string) => tiles + rename(suit) + mark);
}

/** Whether a second or third suit stands in a line and no first: `22b` may have been meant as bams. */
export function lacksFirstSuit(forms: readonly Pattern[]): boolean {
  const used = new Set(forms.flat().map(({ tile }) => suitIn(tile)));
  return !used.has('a') && (used.has('b') || used.has('c'));
}
