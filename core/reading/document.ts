import { codeOf, type KindCode } from '../tiles/kinds.ts';
import { formatTiles } from '../tiles/text.ts';
import { handOf } from './hand.ts';
import type { SectionShare } from './lean.ts';
import { type RankBy, rankedWays } from './ranking.ts';
import type { Reading } from './reading.ts';

/** A reading as plain data, the document that the command `read` answers with. */
export interface ReadingDocument {
  readonly tiles: string;
  /** How many ways the card has. */
  readonly ways: number;
  readonly away: number;
  readonly lean: readonly SectionShare[];
  readonly hands: readonly HandDocument[];
}

export interface HandDocument {
  /** The line's id. */
  readonly line: string;
  readonly section: string;
  readonly points: number;
  readonly concealed: boolean;
  readonly away: number;
  readonly drawReach: number;
  readonly reach: number;
  readonly groups: readonly string[];
  readonly missing: readonly KindCode[];
}

/** `top` 0 gives all ways. */
export function readingDocument(reading: Reading, by: RankBy = 'reach', top = 10): ReadingDocument {
  return {
    tiles: formatTiles(reading.known.rack),
    ways: reading.compiled.wayCount,
    away: reading.away,
    lean: reading.lean,
    hands: Array.from(rankedWays(reading, by, top), (way) => handDocument(reading, way)),
  };
}

function handDocument(reading: Reading, way: number): HandDocument {
  const { line, away, drawReach, reach, groups, missing } = handOf(reading, way);
  return {
    line: line.id,
    section: line.section,
    points: line.points,
    concealed: line.concealed,
    away,
    drawReach,
    reach,
    groups: groups.map(({ text }) => text),
    missing: missing.map(codeOf),
  };
}
