import type { PlacedTile, TileSpace } from './rack-tile.ts';

/**
 * How a rack lies: tiers, in them groups, in them tiles by identity. Groups are never empty; a
 * tier may be. Pure values and functions.
 */
type RackGroup = readonly string[];
export type RackTier = readonly RackGroup[];
export type RackLayout = readonly RackTier[];

/** A place between tiles: before tile `index` of a group (its length: at the end); null: a new group before `group`. */
export interface RackPlace {
  readonly tier: number;
  readonly group: number;
  readonly index: number | null;
}

/** Where a tile is. */
export interface RackSpot extends RackPlace {
  readonly index: number;
}

/** The layout that is made of tiles with their spaces, in so many tiers. */
export function layoutOf(
  tiles: readonly { readonly id: string; readonly space?: TileSpace }[],
  tiers: number,
): RackLayout {
  const layout: string[][][] = [[[]]];
  for (const { id, space } of tiles) {
    if (space === 'tier') layout.push([[id]]);
    else if (space === 'gap') layout.at(-1)?.push([id]);
    else layout.at(-1)?.at(-1)?.push(id);
  }
  return tidy(layout, tiers);
}

/** The tiles in reading order, each with what lies before it. */
export function placesOf(layout: RackLayout): PlacedTile[] {
  return layout.flatMap((tier, tierAt) =>
    tier.flatMap((group, groupAt) =>
      group.map((id, index) => ({ id, space: index > 0 ? 'none' : spaceBefore(tierAt, groupAt) })),
    ),
  );
}

function spaceBefore(tier: number, group: number): TileSpace {
  if (group > 0) return 'gap';
  return tier > 0 ? 'tier' : 'none';
}

/** The tiles in reading order: upper tier first, left to right. */
export function orderOf(layout: RackLayout): string[] {
  return layout.flat(2);
}

export function whereIs(layout: RackLayout, id: string): RackSpot | undefined {
  for (const [tier, groups] of layout.entries()) {
    for (const [group, ids] of groups.entries()) {
      const index = ids.indexOf(id);
      if (index >= 0) return { tier, group, index };
    }
  }
  return undefined;
}

export function isLastOfGroup(layout: RackLayout, { tier, group, index }: RackSpot): boolean {
  return index === (layout[tier]?.[group]?.length ?? 0) - 1;
}

/** Moves tiles, in the order that they have now, to a place of the layout as it is now. */
export function moveTo(layout: RackLayout, ids: readonly string[], place: RackPlace): RackLayout {
  const moving = new Set(ids);
  const inOrder = orderOf(layout).filter((id) => moving.has(id));
  const without = (group: RackGroup): string[] => group.filter((id) => !moving.has(id));
  const moved = layout.map((tier, tierAt) => {
    if (tierAt !== place.tier) return tier.map(without);
    const alone = place.index === null || place.group >= tier.length;
    if (alone) return tier.map(without).toSpliced(place.group, 0, inOrder);
    return tier.map((group, groupAt) => {
      if (groupAt !== place.group) return without(group);
      const index = place.index ?? 0;
      return [...without(group.slice(0, index)), ...inOrder, ...without(group.slice(index))];
    });
  });
  return tidy(moved, layout.length);
}

/**
 * Moves a tile one step: past its neighbour, or over the gap into the next group, or at the end of
 * a tier into the next one. Answers with the same layout when it can go no further.
 */
export function step(layout: RackLayout, id: string, by: -1 | 1): RackLayout {
  const at = whereIs(layout, id);
  if (!at) return layout;
  const tier = layout[at.tier] ?? [];
  const group = tier[at.group] ?? [];
  const next = at.index + by;
  if (next >= 0 && next < group.length) {
    return moveTo(layout, [id], { ...at, index: by === 1 ? at.index + 2 : next });
  }
  const beside = tier[at.group + by];
  if (beside) return moveTo(layout, [id], { ...at, group: at.group + by, index: by === 1 ? 0 : beside.length });
  return toTier(layout, id, at.tier + by, by === 1 ? 'start' : 'end');
}

/** Sets a tile at the end of the tier above (-1) or below (1). */
export function changeTier(layout: RackLayout, id: string, by: -1 | 1): RackLayout {
  const at = whereIs(layout, id);
  return at ? toTier(layout, id, at.tier + by, 'end') : layout;
}

function toTier(layout: RackLayout, id: string, tier: number, side: 'start' | 'end'): RackLayout {
  const groups = layout[tier];
  if (!groups) return layout;
  if (side === 'start') return moveTo(layout, [id], { tier, group: 0, index: 0 });
  const group = Math.max(0, groups.length - 1);
  return moveTo(layout, [id], { tier, group, index: groups[group]?.length ?? 0 });
}

/** Makes a gap before a tile, or closes the one that is there. The first tile of a tier has none. */
export function toggleGap(layout: RackLayout, id: string): RackLayout {
  const at = whereIs(layout, id);
  if (!at) return layout;
  return layout.map((tier, tierAt) => (tierAt === at.tier ? toggledIn(tier, at) : tier));
}

function toggledIn(tier: RackTier, at: RackSpot): RackTier {
  const group = tier[at.group] ?? [];
  if (at.index > 0) return tier.toSpliced(at.group, 1, group.slice(0, at.index), group.slice(at.index));
  if (at.group === 0) return tier;
  return tier.toSpliced(at.group - 1, 2, [...(tier[at.group - 1] ?? []), ...group]);
}

export function sameLayout(one: RackLayout, other: RackLayout): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

/** No empty groups, and exactly so many tiers; those too many are joined to the last. */
function tidy(layout: RackLayout, tiers: number): RackLayout {
  const full = layout.map((tier) => tier.filter((group) => group.length > 0));
  return Array.from({ length: tiers }, (_, at) => (at === tiers - 1 ? full.slice(at).flat() : (full[at] ?? [])));
}
