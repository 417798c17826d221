import type { Line } from '../card/card.ts';
import { JOKER, type Kind, KIND_COUNT } from '../tiles/kinds.ts';
import { lineOfWay, type Reading } from './reading.ts';

export type RankBy = 'reach' | 'away';

/**
 * Way numbers, best first. By reach: most reach, then most draw reach, least away, most points,
 * and at last the card's order. By away: least away first, then the same. Ties can't occur, so
 * that the order is the same on every machine. `top` 0 gives all.
 */
export function rankedWays(reading: Reading, by: RankBy = 'reach', top = 0): Uint32Array {
  const { reaches, aways, drawReaches, compiled } = reading;
  const order = new Uint32Array(compiled.wayCount).map((_, way) => way);
  const compareReach = (one: number, other: number): number =>
    (reaches[other] as number) - (reaches[one] as number) ||
    (drawReaches[other] as number) - (drawReaches[one] as number) ||
    (aways[one] as number) - (aways[other] as number) ||
    lineOfWay(compiled, other).points - lineOfWay(compiled, one).points ||
    one - other;
  const compareAway = (one: number, other: number): number =>
    (aways[one] as number) - (aways[other] as number) || compareReach(one, other);
  order.sort(by === 'reach' ? compareReach : compareAway);
  return top === 0 ? order : order.subarray(0, top);
}

/** A line worth aiming at, with its best way for this rack. */
export interface Target {
  readonly way: number;
  readonly line: Line;
  readonly away: number;
  readonly reach: number;
  /** 36 counts: the rack's tiles that lie in the way; jokers as far as they fit. */
  readonly uses: Uint8Array;
}

/** The most lines that are aimed at, and the least part of the best reach that they have. */
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
  let jokers = -(aways[way] as number);
  for (let place = compiled.starts[way] as number; place < (compiled.starts[way + 1] as number); place += 1) {
    const kind = compiled.needKind[place] as Kind;
    const wanted = (compiled.needPlain[place] as number) + (compiled.needWild[place] as number);
    uses[kind] = Math.min(wanted, known.rack.count(kind));
    jokers += wanted - uses[kind];
  }
  uses[JOKER] = jokers;
  return uses;
}

/** The name of a line where a sentence goes on after it: "Weather, 4th line,". */
export function nameWithin({ name }: Line): string {
  return name.includes(',') ? `${name},` : name;
}
