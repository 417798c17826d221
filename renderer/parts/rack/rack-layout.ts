/**
 * How a person has laid out a rack: tiers, in them groups, in them tiles by identity. Groups are
 * never empty; a tier may be. Pure values and functions; plain JSON, so that it can be kept.
 */
export type RackGroup = readonly string[];
export type RackTier = readonly RackGroup[];
export type RackLayout = readonly RackTier[];

/** A place between tiles: before tile `index` of a group, or in a new group of its own before `group`. */
export interface RackPlace {
  readonly tier: number;
  readonly group: number;
  /** From 0 to the group's length; null for a new group before `group`. */
  readonly index: number | null;
}

/** All tiles in one group on the upper tier. */
export function plainLayout(ids: readonly string[], tiers: number): RackLayout {
  return tidy([[ids]], tiers);
}

/** The tiles in reading order: upper tier first, left to right. */
export function orderOf(layout: RackLayout): string[] {
  return layout.flat(2);
}

/**
 * The layout for the tiles that are really there: tiles that are gone leave it, new ones join in
 * their given order as a group at the end of the last tier that is used.
 */
export function reconcile(layout: RackLayout, ids: readonly string[], tiers: number): RackLayout {
  const here = new Set(ids);
  const known = new Set(orderOf(layout));
  const kept = layout.map((tier) => tier.map((group) => group.filter((id) => here.has(id))));
  const fresh = ids.filter((id) => !known.has(id));
  const last = Math.max(
    0,
    kept.findLastIndex((tier) => tier.some((group) => group.length > 0)),
  );
  const joined = (kept.length === 0 ? [[]] : kept).map((tier, at) => (at === last ? [...tier, fresh] : tier));
  return tidy(joined, tiers);
}

/** Moves tiles, in the order that they have now, to a place of the layout as it is now. */
export function moveTo(layout: RackLayout, ids: readonly string[], place: RackPlace): RackLayout {
  const moving = new Set(ids);
  const inOrder = orderOf(layout).filter((id) => moving.has(id));
  const without = (group: RackGroup): string[] => group.filter((id) => !moving.has(id));
  const moved = layout.map((tier, tierAt) => {
    const groups = tier.map((group, groupAt) => {
      if (place.tier !== tierAt || place.group !== groupAt || place.index === null) return without(group);
      return [...without(group.slice(0, place.index)), ...inOrder, ...without(group.slice(place.index))];
    });
    const alone = place.tier === tierAt && (place.index === null || place.group >= tier.length);
    return alone ? groups.toSpliced(place.group, 0, inOrder) : groups;
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
  const tier = layout[at.tier] as RackTier;
  const group = tier[at.group] as RackGroup;
  const next = at.index + by;
  if (next >= 0 && next < group.length) {
    return moveTo(layout, [id], { ...at, index: by === 1 ? at.index + 2 : next });
  }
  const beside = tier[at.group + by];
  if (beside) return moveTo(layout, [id], { ...at, group: at.group + by, index: by === 1 ? 0 : beside.length });
  return stepOverEdge(layout, id, at.tier + by, by);
}

function stepOverEdge(layout: RackLayout, id: string, tier: number, by: -1 | 1): RackLayout {
  const groups = layout[tier];
  if (!groups) return layout;
  const group = by === 1 ? 0 : Math.max(0, groups.length - 1);
  return moveTo(layout, [id], { tier, group, index: by === 1 ? 0 : (groups[group]?.length ?? 0) });
}

/** Sets a tile on the other tier, at its end, joined to the last group. */
export function changeTier(layout: RackLayout, id: string, by: -1 | 1): RackLayout {
  const at = whereIs(layout, id);
  const groups = at && layout[at.tier + by];
  if (!groups) return layout;
  const group = Math.max(0, groups.length - 1);
  return moveTo(layout, [id], { tier: at.tier + by, group, index: groups[group]?.length ?? 0 });
}

/** Makes a gap before a tile, or closes the one that is there. */
export function toggleGap(layout: RackLayout, id: string): RackLayout {
  const at = whereIs(layout, id);
  if (!at) return layout;
  const tiers = layout.map((tier, tierAt) => (tierAt === at.tier ? toggleIn(tier, at.group, at.index) : tier));
  return tidy(tiers, layout.length);
}

function toggleIn(tier: RackTier, groupAt: number, index: number): RackTier {
  const group = tier[groupAt] as RackGroup;
  if (index > 0) return tier.toSpliced(groupAt, 1, group.slice(0, index), group.slice(index));
  if (groupAt === 0) return tier;
  return tier.toSpliced(groupAt - 1, 2, [...(tier[groupAt - 1] as RackGroup), ...group]);
}

/** Whether a gap lies before the tile. */
export function hasGapBefore(layout: RackLayout, id: string): boolean {
  const at = whereIs(layout, id);
  return at !== undefined && at.index === 0 && at.group > 0;
}

export function whereIs(
  layout: RackLayout,
  id: string,
): { readonly tier: number; readonly group: number; readonly index: number } | undefined {
  for (const [tier, groups] of layout.entries()) {
    for (const [group, ids] of groups.entries()) {
      const index = ids.indexOf(id);
      if (index >= 0) return { tier, group, index };
    }
  }
  return undefined;
}

export function sameLayout(one: RackLayout, other: RackLayout): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

/** No empty groups, and exactly so many tiers; tiers too many are joined to the last. */
function tidy(layout: RackLayout, tiers: number): RackLayout {
  const full = layout.map((tier) => tier.filter((group) => group.length > 0));
  return Array.from({ length: tiers }, (_, at) => (at === tiers - 1 ? full.slice(at).flat() : (full[at] ?? [])));
}
