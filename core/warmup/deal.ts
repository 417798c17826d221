import { type Random, randomFromSeed, shuffle } from '../base/random.ts';
import { dealRack } from '../tiles/deal.ts';
import type { Kind } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import type { DealName } from './deal-code.ts';

/** The rack of a practice deal, the same on every machine. */
export function rackOf({ seed, tiles }: Pick<DealName, 'seed' | 'tiles'>): Tiles {
  return dealRack(seed, tiles);
}

/** All tiles that a player does not hold, in an order that a seed decides: the other racks and the wall. */
export function othersOf(rack: Tiles, seed: number): Kind[] {
  return shuffle(Tiles.fullSet.minus(rack).toKinds(), streamBeside(seed));
}

/** A stream apart from the one that dealt the rack. */
export function streamBeside(seed: number): Random {
  return randomFromSeed(seed).longJumped();
}
