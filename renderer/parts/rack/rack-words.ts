import { capital } from '../../../core/base/words.ts';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import { partWords } from '../../words/parts.ts';
import { orderOf, type RackLayout, whereIs } from './rack-layout.ts';
import type { RackTile } from './rack-tile.ts';

/** What a tile on the rack is called: its name, what it is to the reading, and why. */
export function labelOf(tile: Pick<RackTile, 'kind' | 'mark' | 'fresh' | 'why'>): string {
  const { kind, mark, fresh = false, why } = tile;
  const words = [nameOf(kind), fresh && partWords.rack.fresh, mark && partWords.rack.marks[mark], why];
  return words.filter(Boolean).join(', ');
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
