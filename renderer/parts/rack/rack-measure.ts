import type { DragPoint } from '../drag.ts';
import { placeAt, type TileBox } from './rack-geometry.ts';
import { isLastOfGroup, type RackLayout, type RackPlace, whereIs } from './rack-layout.ts';

/** The place that a point of the window means, by what is drawn in a rack's shadow now. */
export function placeUnder(root: ParentNode, layout: RackLayout, point: DragPoint): RackPlace | null {
  const tiers = [...root.querySelectorAll('.tier')].map((tier) => tier.getBoundingClientRect());
  return placeAt(tileBoxes(root, layout), tiers, point);
}

function tileBoxes(root: ParentNode, layout: RackLayout): TileBox[] {
  const boxes: TileBox[] = [];
  for (const cell of root.querySelectorAll('.cell')) {
    const spot = whereIs(layout, cell.querySelector('wr-tile')?.dataset['id'] ?? '');
    if (spot) boxes.push({ box: cell.getBoundingClientRect(), spot, last: isLastOfGroup(layout, spot) });
  }
  return boxes;
}

/** The id of the tile that an event went through, or null. */
export function tileIdIn(event: Event): string | null {
  for (const node of event.composedPath()) {
    if (node instanceof HTMLElement && node.dataset['id'] !== undefined) return node.dataset['id'];
    if (node instanceof ShadowRoot && node.host === event.currentTarget) return null;
  }
  return null;
}
