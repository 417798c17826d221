import { type Random, randomFromSeed, shuffle } from '../base/random.ts';
import { type Kind, SET_SIZE } from './kinds.ts';
import { Tiles } from './tiles.ts';

/** Tiles in the wall when play begins: all but East's 14 and the others' 13 each. */
export const WALL_AT_START = SET_SIZE - 14 - 3 * 13;

/** The whole set in random order; every order is equally likely. */
export function shuffledSet(random: Random): Kind[] {
  return shuffle(Tiles.fullSet.toKinds(), random);
}

/**
 * The rack that a seed deals: the first 13 or 14 tiles of the shuffled set, the same on every
 * machine. The seed is any whole number from 0 to 2^53 - 1.
 */
export function dealRack(seed: number, size: 13 | 14): Tiles {
  return Tiles.of(shuffledSet(randomFromSeed(seed)).slice(0, size));
}
