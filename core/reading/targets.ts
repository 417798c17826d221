import type { Line } from '../card/card.ts';
import { JOKER, KIND_COUNT, type Kind } from '../tiles/kinds.ts';
import { rankedWays } from './ranking.ts';
import { lineOfWay, type Reading } from './reading.ts';

/** A line worth aiming at, with its best way for this rack. */
export interface Target {
  readonly way: number;
  readonly line: Line;
  readonly away: number;
  readonly reach: number;
  /** 36 counts: the rack's tiles that lie in the way; jokers as far as it takes them. */
  readonly uses: Uint8Array;
}

/** At most so many lines are aimed at, and none with less than this part of the best reach. */
const MOST_TARGETS = 5;
const LEAST_PART = 0.4;

/**
 * The best way of each of the best lines, best first: what a player would have in mind. When
 * nothing can be reached, the lines that are least away.
 */
export function targetsOf(reading: Reading): Target[] {
  return bestWayOfLines(reading)
    .slice(0, MOST_TARGETS)
    .filter(({ reach }, _, [first]) => reach >= LEAST_PART * (first as Target).reach);
}

/** The best way of every line, best line first. */
export function bestWayOfLines(reading: Reading): Target[] {
  const seen = new Set<number>();
  const targets: Target[] = [];
  for (const way of rankedWays(reading)) {
    const line = reading.compiled.lineOf[way] as number;
    if (seen.has(line)) continue;
    seen.add(line);
    targets.push({
      way,
      line: lineOfWay(reading.compiled, way),
      away: reading.aways[way] as number,
      reach: reading.reaches[way] as number,
      uses: usesOf(reading, way),
    });
  }
  return targets;
}

/** 36 counts: how many of each kind of the rack lie in a way. */
function usesOf({ compiled, known, aways }: Reading, way: number): Uint8Array {
  const uses = new Uint8Array(KIND_COUNT);
  let natural = 0;
  for (let place = compiled.starts[way] as number; place < (compiled.starts[way + 1] as number); place += 1) {
    const kind = compiled.needKind[place] as Kind;
    const wanted = (compiled.needPlain[place] as number) + (compiled.needWild[place] as number);
    uses[kind] = Math.min(wanted, known.rack.count(kind));
    natural += uses[kind];
  }
  uses[JOKER] = 14 - (aways[way] as number) - natural;
  return uses;
}

/** A line by name for a player: its section and its id. */
export function lineName(line: Line): string {
  return `${line.section} (${line.id})`;
}
