import type { Kind } from '../../../core/tiles/kinds.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import type { TileMark } from '../tile/wr-tile.ts';
import { partWords } from '../../words/parts.ts';
import { orderOf, type RackLayout, whereIs } from './rack-layout.ts';

/** What a tile on the rack is called: its name, what it is to the reading, and why. */
export function labelOf(tile: { readonly kind: Kind; readonly mark?: TileMark; readonly why?: string }): string {
  return [nameOf(tile.kind), tile.mark && partWords.rack.marks[tile.mark], tile.why].filter(Boolean).join(', ');
}

/** "Five bam, place 3 of 13", and the group when there are several. */
export function placeWords(kind: Kind, id: string, layout: RackLayout): string {
  const order = orderOf(layout);
  const words = partWords.rack.place(capital(nameOf(kind)), order.indexOf(id) + 1, order.length);
  const at = whereIs(layout, id);
  const groups = layout.flat().length;
  if (!at || groups < 2) return `${words}.`;
  const group = layout.slice(0, at.tier).flat().length + at.group + 1;
  return `${words}, ${partWords.rack.group(group, groups)}.`;
}

export function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}
