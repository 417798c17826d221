import { openWays, shownCodes, shownTiles } from '../table/open-ways.ts';
import type { ShownGroup } from '../table/policy.ts';
import { needKindOf, needPlainOf, needWildOf, type TableCard } from '../table/table-card.ts';
import { type Kind, KIND_COUNT } from '../tiles/kinds.ts';
import type { HiddenNeed } from './rack-counts.ts';

/** What another seat has shown of itself. */
export interface SeatSigns {
  readonly shown: readonly ShownGroup[];
  /** What it threw. */
  readonly thrown: readonly Kind[];
  /** What it passed to whoever reads it. */
  readonly passed: readonly Kind[];
}

/** A way that a seat can still be playing, and what it wants from the hidden rack. */
export interface OpenWay {
  readonly way: number;
  /** A number on the compiled card. */
  readonly line: number;
  readonly concealed: boolean;
  readonly needs: readonly HiddenNeed[];
}

/** All of them, and for each kind the places of those that want it, with the need. */
export interface SeatWays {
  readonly ways: readonly OpenWay[];
  readonly wanting: readonly (readonly { readonly at: number; readonly need: HiddenNeed }[])[];
}

/** For a card the ways left by groups; lists of groups are new ones whenever they change. */
const KEPT = new WeakMap<TableCard, WeakMap<readonly ShownGroup[], SeatWays>>();
/** Stands for every list without groups. */
const NOTHING_SHOWN: readonly ShownGroup[] = [];

/** The ways that the groups which a seat shows leave it, concealed ones only for a seat that shows nothing. */
export function seatWays(card: TableCard, shown: readonly ShownGroup[]): SeatWays {
  const groups = shown.length === 0 ? NOTHING_SHOWN : shown;
  const kept = KEPT.get(card) ?? new WeakMap<readonly ShownGroup[], SeatWays>();
  KEPT.set(card, kept);
  const ways = kept.get(groups) ?? waysOf(card, groups);
  kept.set(groups, ways);
  return ways;
}

function waysOf(card: TableCard, shown: readonly ShownGroup[]): SeatWays {
  const { lineOf, concealed } = card.compiled;
  const tiles = shownTiles(shown);
  const codes = shownCodes(shown);
  const ways = openWays(card, shown).map((way) => ({
    way,
    line: lineOf[way] as number,
    concealed: concealed[way] !== 0,
    needs: needsOf(card, way, tiles, codes),
  }));
  const wanting = Array.from({ length: KIND_COUNT }, (): { at: number; need: HiddenNeed }[] => []);
  for (const [at, { needs }] of ways.entries()) for (const need of needs) wanting[need.kind]?.push({ at, need });
  return { ways, wanting };
}

function needsOf(card: TableCard, way: number, tiles: Uint8Array, codes: Uint8Array): HiddenNeed[] {
  const { starts } = card.compiled;
  const needs: HiddenNeed[] = [];
  const end = starts[way + 1] as number;
  for (let place = starts[way] as number; place < end; place += 1) {
    const need = card.needs[place] as number;
    const kind = needKindOf(need);
    const plain = needPlainOf(need);
    const wild = needWildOf(need) - (tiles[kind] as number);
    const left = (card.groups[way * KIND_COUNT + kind] as number) - (codes[kind] as number);
    if (plain + wild > 0) needs.push({ kind, plain, wild, group: largestOf(left) });
  }
  return needs;
}

/** The size of the largest group in a sum of group codes; 0 if there is none. */
function largestOf(code: number): number {
  for (let size = 6; size >= 3; size -= 1) if (((code >> (2 * (size - 3))) & 3) > 0) return size;
  return 0;
}
