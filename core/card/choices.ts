import { JOKER, type Kind, KIND_COUNT, KINDS, supplyOf } from '../tiles/kinds.ts';
import { LARGEST_GROUP } from './pattern.ts';
import type { Picker, Slot } from './slots.ts';
import { SMALLEST_JOKER_GROUP, type WayGroup } from './way.ts';

/** Jokers in the set: a way that needs more can't be made. */
const JOKER_SUPPLY = supplyOf(JOKER);

/** One choice for all slots of a part. */
export interface Choice {
  /** In the order of the slots. */
  readonly printed: readonly WayGroup[];
  /** The same in canonical order. */
  readonly groups: readonly WayGroup[];
  /** Every group with a blank before it. */
  readonly key: string;
}

/** The distinct choices that the set can supply, in the order of the pickers. */
export function choicesOf(slots: readonly Slot[], pickers: readonly Picker[]): Choice[] {
  const choices = new Map<string, Choice>();
  const jokersNeeded = jokerCounter();
  for (const pick of pickers) {
    const printed = slots.map(({ tile, size }) => groupOf(pick(tile), size));
    if (jokersNeeded(printed) > JOKER_SUPPLY) continue;
    const groups = inOrder(printed);
    let key = '';
    for (const group of groups) key += keyPart(group);
    if (!choices.has(key)) choices.set(key, { printed, groups, key });
  }
  return [...choices.values()];
}

/**
 * Counts jokers that must stand in for tiles that the set lacks; infinite if singles and pairs
 * alone go beyond it. The tables are made once for many groups: this is the innermost loop.
 */
function jokerCounter(): (groups: readonly WayGroup[]) => number {
  const all = new Uint8Array(KIND_COUNT);
  const plain = new Uint8Array(KIND_COUNT);
  return (groups) => {
    all.fill(0);
    plain.fill(0);
    let jokers = 0;
    for (const { kind, size } of groups) {
      const supply = supplyOf(kind);
      const before = all[kind] as number;
      all[kind] = before + size;
      jokers += Math.max(0, before + size - supply) - Math.max(0, before - supply);
      if (size >= SMALLEST_JOKER_GROUP) continue;
      const alone = (plain[kind] as number) + size;
      plain[kind] = alone;
      if (alone > supply) return Infinity;
    }
    return jokers;
  };
}

/** A copy by kind, then size; by insertion, which for some ten groups is quicker than the general sort. */
function inOrder(printed: readonly WayGroup[]): WayGroup[] {
  const groups = printed.slice();
  for (let next = 1; next < groups.length; next += 1) {
    const group = groups[next] as WayGroup;
    let place = next;
    for (; place > 0; place -= 1) {
      const before = groups[place - 1] as WayGroup;
      if (before.kind < group.kind || (before.kind === group.kind && before.size <= group.size)) break;
      groups[place] = before;
    }
    groups[place] = group;
  }
  return groups;
}

/** One shared value for each kind and size: a big card has some 400,000 groups, but only 216 different ones. */
const GROUPS: readonly (readonly WayGroup[])[] = KINDS.map((kind) =>
  Array.from({ length: LARGEST_GROUP + 1 }, (_, size) => ({ kind, size })),
);
const KEY_PARTS = GROUPS.map((sizes) => sizes.map(({ kind, size }) => ` ${kind}:${size}`));

function groupOf(kind: Kind, size: number): WayGroup {
  return (GROUPS[kind] as readonly WayGroup[])[size] as WayGroup;
}

function keyPart({ kind, size }: WayGroup): string {
  return (KEY_PARTS[kind] as readonly string[])[size] as string;
}
