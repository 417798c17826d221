import { type Reading, lineOfWay } from './reading.ts';

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
