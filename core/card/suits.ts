import { formatGroup, type GroupSuit, type Pattern, suitIn } from './pattern.ts';
import { scanPattern } from './parse.ts';

/** Whether a second or third suit stands in a line and no first: `22b` may have been meant as bams. */
export function lacksFirstSuit(forms: readonly Pattern[]): boolean {
  const used = new Set(forms.flat().map(({ tile }) => suitIn(tile)));
  return !used.has('a') && (used.has('b') || used.has('c'));
}

/** A form whose `b` stood for bams and `c` for craks. */
export function namedSuits(text: string): string {
  return withSuits(text, { b: 'bam', c: 'crak' });
}

/** A form whose `b` and `c` are any suits: it begins with the first. */
export function openSuits(text: string): string {
  const letters = new Set(scanPattern(text).map(({ group }) => (group.ok ? suitIn(group.value.tile) : undefined)));
  return withSuits(text, letters.has('b') ? { b: 'a', c: 'b' } : { c: 'a' });
}

function withSuits(text: string, suits: Readonly<Partial<Record<GroupSuit, GroupSuit>>>): string {
  return scanPattern(text)
    .map(({ text: typed, group }) => {
      if (!group.ok || !('suit' in group.value.tile)) return typed;
      const { tile, size } = group.value;
      return formatGroup({ size, tile: { ...tile, suit: suits[tile.suit] ?? tile.suit } });
    })
    .join(' ');
}
