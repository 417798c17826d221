import type { Card } from '../../core/card/card.ts';
import type { Way } from '../../core/card/way.ts';
import type { Known } from '../../core/reading/known.ts';
import { JOKER, type Kind, KINDS } from '../../core/tiles/kinds.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { plainAway } from './plain-reading.ts';

export interface PlainWay {
  readonly way: Way;
  readonly concealed: boolean;
}

export function plainWays(card: Card): PlainWay[] {
  return card.sections
    .flatMap((section) => section.lines)
    .flatMap(({ ways, concealed }) => ways.map((way) => ({ way, concealed })));
}

/** Every different draw of so many tiles that are not jokers, with the number of ways to draw it. */
export function draws(unseen: Tiles, size: number): { readonly tiles: Tiles; readonly ways: number }[] {
  const kinds = unseen.distinct().filter((kind) => kind !== JOKER);
  const go = (from: number, left: number): { kinds: Kind[]; ways: number }[] => {
    if (left === 0) return [{ kinds: [], ways: 1 }];
    return kinds.slice(from).flatMap((kind, offset) =>
      Array.from({ length: Math.min(left, unseen.count(kind)) }, (_, more) => more + 1).flatMap((count) =>
        go(from + offset + 1, left - count).map((rest) => ({
          kinds: [...Array<Kind>(count).fill(kind), ...rest.kinds],
          ways: rest.ways * choose(unseen.count(kind), count),
        })),
      ),
    );
  };
  return go(0, size).map(({ kinds: drawn, ways }) => ({ tiles: Tiles.of(drawn), ways }));
}

function choose(from: number, pick: number): number {
  return pick === 0 ? 1 : (choose(from - 1, pick - 1) * from) / pick;
}

/**
 * One pass by brute force: every draw that may come in, every way of the card, and `valueOf` for
 * the largest value. `keep` is the rack less what is given.
 */
export function plainPass(
  ways: readonly PlainWay[],
  known: Known,
  give: readonly Kind[],
  valueOf: (way: PlainWay, after: Known) => number,
): { readonly expectedAway: number; readonly reach: number } {
  const kept = known.rack.minus(Tiles.of(give));
  let aways = 0;
  let values = 0;
  let all = 0;
  for (const { tiles, ways: count } of draws(known.unseen, give.length)) {
    const rack = kept.plus(tiles);
    const after = { rack, gone: known.gone.plus(Tiles.of(give)), unseen: known.unseen.minus(tiles) };
    aways += count * ways.reduce((least, { way }) => Math.min(least, plainAway(way, rack)), 14);
    values += count * ways.reduce((most, way) => Math.max(most, valueOf(way, after)), 0);
    all += count;
  }
  return { expectedAway: aways / all, reach: values / all };
}

/** So many draws in all, for checks of the sum. */
export function allDraws(unseen: Tiles, size: number): number {
  const tiles = KINDS.filter((kind) => kind !== JOKER).reduce((sum, kind) => sum + unseen.count(kind), 0);
  return choose(tiles, size);
}
