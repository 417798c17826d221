import { KIND_COUNT } from '../tiles/kinds.ts';
import type { ShownGroup } from './policy.ts';
import { groupCode, holdsGroups, type TableCard } from './table-card.ts';

/** The ways that hold all groups that a seat shows, each as a group of its own; with nothing shown all ways, concealed ones too. */
export function openWays({ compiled, groups }: TableCard, shown: readonly ShownGroup[]): number[] {
  const [first] = shown;
  if (first === undefined) return Array.from({ length: compiled.wayCount }, (_, way) => way);
  const codes = shownCodes(shown);
  const open: number[] = [];
  const end = compiled.userStarts[first.kind + 1] as number;
  for (let place = compiled.userStarts[first.kind] as number; place < end; place += 1) {
    const way = compiled.users[place] as number;
    const held = (kind: number): number => groups[way * KIND_COUNT + kind] as number;
    if (compiled.concealed[way] !== 0) continue;
    if (shown.every(({ kind }) => holdsGroups(held(kind), codes[kind] as number))) open.push(way);
  }
  return open;
}

/** For each kind the shown groups of it, as the sum of their `groupCode`. */
export function shownCodes(shown: readonly ShownGroup[]): Uint8Array {
  const codes = new Uint8Array(KIND_COUNT);
  for (const { kind, size } of shown) codes[kind] = (codes[kind] as number) + groupCode(size);
  return codes;
}

/** 36 counts of the tiles in shown groups, jokers counted as what they stand for. */
export function shownTiles(shown: readonly ShownGroup[]): Uint8Array {
  const tiles = new Uint8Array(KIND_COUNT);
  for (const { kind, size } of shown) tiles[kind] = (tiles[kind] as number) + size;
  return tiles;
}
