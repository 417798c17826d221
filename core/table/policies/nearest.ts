import type { PolicyMaker } from '../policy.ts';
import { ByWeight } from './by-weight.ts';

/** More than all weights together can be worth, so that the target's tiles always stay. */
const ABOVE_ALL = 1e6;

/** Works for the nearest living hand alone; other near hands only decide between idle tiles. */
export const nearest: PolicyMaker = (card) =>
  new ByWeight(card, { weigh: distanceWeight, margin: 2, targetBonus: ABOVE_ALL, idleShare: 0.001, stopShare: 0.4 });

const POWERS = Float64Array.from({ length: 64 }, (_, away) => 2 ** -(8 * away));

/** Falls so steeply with away that the nearest way outweighs any number of farther ones. */
function distanceWeight(_way: number, plainShort: number, wildShort: number): number {
  return POWERS[plainShort + wildShort] as number;
}
