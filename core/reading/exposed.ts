import { keepRecent } from '../base/recent.ts';
import type { Card } from '../card/card.ts';
import type { ExposedGroup, Way, WayGroup } from '../card/way.ts';
import { type CompiledCard, compileCard } from './compiled.ts';

/**
 * What is left of a card once groups lie open: the ways that hold each of them as a group of its
 * own, with what they still need from the rack. A line without any such way, and a concealed line,
 * stays empty. The tiles of an open group stay in it: they are no part of the rack that is read
 * against this card.
 */
export function exposedCard(compiled: CompiledCard, groups: readonly ExposedGroup[]): CompiledCard {
  return groups.reduce(withGroup, compiled);
}

/** What is left of a card after one more group, for the cards and groups asked about last. */
const LEFT = new WeakMap<CompiledCard, Map<string, CompiledCard>>();
/** Groups kept for one card: a discard can be called for a few, and few are asked about in turn. */
const MOST_GROUPS = 8;

function withGroup(compiled: CompiledCard, group: ExposedGroup): CompiledCard {
  const kept = LEFT.get(compiled) ?? new Map<string, CompiledCard>();
  const key = `${group.kind} ${group.size} ${group.jokers}`;
  LEFT.set(compiled, kept);
  return keepRecent(kept, key, kept.get(key) ?? leftOf(compiled, group), MOST_GROUPS);
}

function leftOf({ card, exposed }: CompiledCard, group: ExposedGroup): CompiledCard {
  const groups = [...exposed, group];
  const wanted = alike(groups, group);
  return compileCard(
    withWays(card, (way) => alike(way.groups, group) >= wanted),
    groups,
  );
}

/** Whether some line that may be exposed holds each of the groups laid open as a group of its own; if none does, the hand is dead. */
export function allowsGroups({ sections }: Card, groups: readonly ExposedGroup[]): boolean {
  if (groups.length === 0) return true;
  const isHeld = (way: Way): boolean => groups.every((group) => alike(way.groups, group) >= alike(groups, group));
  return sections.some(({ lines }) => lines.some(({ concealed, ways }) => !concealed && ways.some(isHeld)));
}

/** How many groups are of the kind and size of one group. */
function alike(groups: readonly WayGroup[], { kind, size }: WayGroup): number {
  return groups.reduce((count, group) => count + (group.kind === kind && group.size === size ? 1 : 0), 0);
}

/** A card with only those ways of its open lines that are kept. */
function withWays(card: Card, keeps: (way: Way) => boolean): Card {
  return {
    ...card,
    sections: card.sections.map((section) => ({
      ...section,
      lines: section.lines.map((line) => ({ ...line, ways: line.concealed ? [] : line.ways.filter(keeps) })),
    })),
  };
}
