import { type Random, shuffle } from '../base/random.ts';
import type { Kind } from './kinds.ts';
import { Tiles } from './tiles.ts';

/** The whole set in random order; every order is equally likely. */
export function shuffledSet(random: Random): Kind[] {
  return shuffle(Tiles.fullSet.toKinds(), random);
}
