import type { WayGroup } from '../../core/card/way.ts';
import { JOKER, type Kind } from '../../core/tiles/kinds.ts';

/** Tiles by kind: how many of each. */
export type Copies = ReadonlyMap<Kind, number>;

/** Every rack of so many tiles from some copies, with the number of ways to draw it; by plain counting up. */
export function* racksFrom(copies: Copies, size: number): Generator<{ readonly rack: Copies; readonly ways: number }> {
  const kinds = [...copies.keys()];
  function* choose(
    place: number,
    left: number,
  ): Generator<{ readonly rack: Map<Kind, number>; readonly ways: number }> {
    const kind = kinds[place];
    if (kind === undefined) {
      if (left === 0) yield { rack: new Map(), ways: 1 };
      return;
    }
    const all = copies.get(kind) ?? 0;
    for (let held = 0; held <= Math.min(all, left); held += 1) {
      for (const { rack, ways } of choose(place + 1, left - held)) {
        yield { rack: new Map([...rack, [kind, held]]), ways: ways * binomial(all, held) };
      }
    }
  }
  yield* choose(0, size);
}

/** By the definition: n! / (k! (n - k)!). */
export function binomial(all: number, taken: number): number {
  const factorial = (count: number): number => (count <= 1 ? 1 : count * factorial(count - 1));
  return Math.round(factorial(all) / (factorial(taken) * factorial(all - taken)));
}

/**
 * Tiles that a rack is missing for groups, by trying: each group takes natural tiles, the small ones first, and jokers
 * fill what is missing in groups of three and more.
 */
export function awayOf(groups: readonly WayGroup[], rack: Copies): number {
  const left = new Map(rack);
  let [missing, wild] = [0, 0];
  for (const { kind, size } of groups.toSorted((one, other) => Number(one.size > 2) - Number(other.size > 2))) {
    const taken = Math.min(size, left.get(kind) ?? 0);
    left.set(kind, (left.get(kind) ?? 0) - taken);
    if (size > 2) wild += size - taken;
    else missing += size - taken;
  }
  return missing + Math.max(0, wild - (left.get(JOKER) ?? 0));
}

/** A rack with one tile more. */
export function withTile(rack: Copies, kind: Kind): Copies {
  return new Map([...rack, [kind, (rack.get(kind) ?? 0) + 1]]);
}
