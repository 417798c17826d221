import { JOKER, type Kind } from '../tiles/kinds.ts';
import type { Tiles } from '../tiles/tiles.ts';

/** Tiles that change hands at one step. */
export type PassSize = 0 | 1 | 2 | 3;

/** Every different choice of so many tiles of a rack, jokers never among them; kinds rising, in canonical order. */
export function distinctPasses(rack: Tiles, size: PassSize): Kind[][] {
  const kinds = rack.distinct().filter((kind) => kind !== JOKER);
  const choose = (from: number, left: number): Kind[][] => {
    if (left === 0) return [[]];
    return kinds.slice(from).flatMap((kind, offset) => {
      const most = Math.min(left, rack.count(kind));
      return Array.from({ length: most }, (_, more) => more + 1)
        .reverse()
        .flatMap((count) =>
          choose(from + offset + 1, left - count).map((rest) => [...Array<Kind>(count).fill(kind), ...rest]),
        );
    });
  };
  return choose(0, size);
}
