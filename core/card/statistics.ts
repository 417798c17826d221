import { type Kind, KIND_COUNT, KINDS } from '../tiles/kinds.ts';
import { type Card, type Line, linesOf } from './card.ts';

interface TileWanted {
  readonly kind: Kind;
  /** Lines with at least one way that holds the tile. */
  readonly lines: number;
  /** Ways that hold it. */
  readonly ways: number;
  /** How many of the tile a line holds on average: each line counts alike, and so do its ways. */
  readonly perLine: number;
}

interface SectionStatistics {
  readonly name: string;
  readonly lines: number;
  readonly ways: number;
}

export interface CardStatistics {
  readonly lines: number;
  readonly ways: number;
  readonly concealed: number;
  readonly sections: readonly SectionStatistics[];
  readonly lineWays: readonly { readonly name: string; readonly ways: number }[];
  /** All 35 kinds but the joker, most wanted first. */
  readonly tiles: readonly TileWanted[];
  /** Every pair of sections, most alike first. */
  readonly alike: readonly SectionPair[];
}

/** How much two sections share: 1 if they want all tiles equally often, 0 if they share none. */
interface SectionPair {
  readonly one: string;
  readonly other: string;
  readonly shared: number;
}

export function cardStatistics(card: Card): CardStatistics {
  const lines = linesOf(card);
  return {
    lines: lines.length,
    ways: waysIn(lines),
    concealed: lines.filter(({ concealed }) => concealed).length,
    sections: card.sections.map(({ name, lines: own }) => ({ name, lines: own.length, ways: waysIn(own) })),
    lineWays: lines.map(({ name, ways }) => ({ name, ways: ways.length })),
    tiles: tilesWanted(lines),
    alike: alikeSections(card),
  };
}

function waysIn(lines: readonly Line[]): number {
  return lines.reduce((sum, { ways }) => sum + ways.length, 0);
}

function tilesWanted(lines: readonly Line[]): TileWanted[] {
  const means = lines.map(meanTiles);
  const ways = new Float64Array(KIND_COUNT);
  for (const line of lines) {
    for (const way of line.ways)
      for (const kind of new Set(way.groups.map((group) => group.kind))) ways[kind] = (ways[kind] as number) + 1;
  }
  return KINDS.slice(1)
    .map((kind) => ({
      kind,
      lines: means.filter((mean) => (mean[kind] as number) > 0).length,
      ways: ways[kind] as number,
      perLine: lines.length === 0 ? 0 : means.reduce((sum, mean) => sum + (mean[kind] as number), 0) / lines.length,
    }))
    .sort((one, other) => other.perLine - one.perLine || one.kind - other.kind);
}

/** How many of each kind a way of the line holds on average; sums to 14. */
function meanTiles({ ways }: Line): Float64Array {
  const mean = new Float64Array(KIND_COUNT);
  for (const { groups } of ways)
    for (const { kind, size } of groups) mean[kind] = (mean[kind] as number) + size / ways.length;
  return mean;
}

/** Every pair of sections by what they share, most first. */
function alikeSections({ sections }: Card): SectionPair[] {
  const shares = sections.map(({ lines }) => {
    const possible = lines.filter(({ ways }) => ways.length > 0).map(meanTiles);
    return KINDS.map(
      (kind) => possible.reduce((sum, mean) => sum + (mean[kind] as number), 0) / (14 * possible.length || 1),
    );
  });
  const pairs = sections.flatMap(({ name: one }, first) =>
    sections.slice(first + 1).map(({ name: other }, offset) => ({
      one,
      other,
      shared: sharedPart(shares[first] as number[], shares[first + 1 + offset] as number[]),
    })),
  );
  return pairs.sort((one, other) => other.shared - one.shared);
}

/** For each kind the smaller of two sections' shares of their tiles, summed. */
function sharedPart(one: readonly number[], other: readonly number[]): number {
  return one.reduce((sum, share, kind) => sum + Math.min(share, other[kind] as number), 0);
}
