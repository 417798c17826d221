import type { DragPoint } from '../drag.ts';
import type { RackPlace, RackSpot } from './rack-layout.ts';

/** A box in the window, in CSS px; a subset of DOMRect. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Where a tile is drawn, and where it lies. */
export interface TileBox {
  readonly box: Box;
  readonly spot: RackSpot;
  /** Whether it is the last tile of its group. */
  readonly last: boolean;
}

/**
 * The place between tiles that a point means. A tile's left half means before it, its right half
 * after it; a gap's halves mean the ends beside it; far to the right of a tier's last tile means a
 * new group. `tiers` are the boxes of the tiers, for those that have no tiles. Rows that were wrapped
 * count as rows of their own.
 */
export function placeAt(tiles: readonly TileBox[], tiers: readonly Box[], point: DragPoint): RackPlace | null {
  const tier = nearestIn(tiers, point);
  if (tier === null) return null;
  const inTier = tiles.filter(({ spot }) => spot.tier === tier);
  if (inTier.length === 0) return { tier, group: 0, index: null };
  const row = rowAt(inTier, point);
  const next = row.find(({ box }) => point.x < centreOf(box));
  if (next) return beforeTile(row, next, point);
  return afterLast(row.at(-1), inTier.at(-1), point);
}

function beforeTile(row: readonly TileBox[], next: TileBox, point: DragPoint): RackPlace {
  const previous = row[row.indexOf(next) - 1];
  if (!previous?.last) return next.spot;
  const middle = (previous.box.right + next.box.left) / 2;
  return point.x < middle ? endOf(previous) : next.spot;
}

function afterLast(inRow: TileBox | undefined, inTier: TileBox | undefined, point: DragPoint): RackPlace | null {
  if (!inRow || !inTier) return null;
  const width = inRow.box.right - inRow.box.left;
  const farOff = inRow === inTier && point.x > inRow.box.right + width * 0.75;
  return farOff ? { tier: inRow.spot.tier, group: inRow.spot.group + 1, index: null } : endOf(inRow);
}

function endOf({ spot }: TileBox): RackPlace {
  return { ...spot, index: spot.index + 1 };
}

/** The tiles of the wrapped row nearest to the point, from left to right. */
function rowAt(tiles: readonly TileBox[], point: DragPoint): readonly TileBox[] {
  const distance = ({ box }: TileBox): number => Math.abs(point.y - (box.top + box.bottom) / 2);
  const nearest = tiles.reduce((best, tile) => (distance(tile) < distance(best) ? tile : best));
  return tiles.filter(({ box }) => box.top < nearest.box.bottom && box.bottom > nearest.box.top);
}

function nearestIn(boxes: readonly Box[], point: DragPoint): number | null {
  let best: number | null = null;
  let least = Infinity;
  for (const [at, box] of boxes.entries()) {
    const distance = Math.max(box.top - point.y, point.y - box.bottom, 0);
    if (distance < least) [best, least] = [at, distance];
  }
  return best;
}

function centreOf(box: Box): number {
  return (box.left + box.right) / 2;
}

/** Whether a point lies in a box, or within `margin` px of it. */
export function isWithin(box: Box, point: DragPoint, margin = 0): boolean {
  return (
    point.x >= box.left - margin &&
    point.x <= box.right + margin &&
    point.y >= box.top - margin &&
    point.y <= box.bottom + margin
  );
}
