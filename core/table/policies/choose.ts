import { JOKER, KIND_COUNT, type Kind } from '../../tiles/kinds.ts';

/**
 * The kind of the rack with the smallest worth, jokers last of all; equals are decided by the
 * seat's likings (T23). The rack must not be empty.
 */
export function leastWorth(counts: ArrayLike<number>, worth: ArrayLike<number>, likings: ArrayLike<number>): Kind {
  let best = JOKER;
  for (let kind = JOKER + 1; kind < KIND_COUNT; kind += 1) {
    if (counts[kind] === 0) continue;
    const difference = best === JOKER ? -1 : (worth[kind] as number) - (worth[best] as number);
    const less = difference < 0 || (difference === 0 && (likings[kind] as number) < (likings[best] as number));
    if (less) best = kind as Kind;
  }
  return best;
}
