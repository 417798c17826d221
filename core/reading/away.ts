import type { Way } from '../card/way.ts';
import { JOKER, KINDS } from '../tiles/kinds.ts';
import type { Tiles } from '../tiles/tiles.ts';
import { type CompiledCard, needsOf } from './compiled.ts';

/**
 * How many tiles a rack lacks for a way: 14 less the most tiles that can lie in the way at once,
 * jokers only in groups of three and more. No search is needed: a natural tile that a single or a
 * pair wants goes there first, because only naturals can; what is over goes to the larger groups,
 * and jokers make up what these still lack. Any number of tiles may be in the rack.
 */
export function away(way: Way, tiles: Tiles): number {
  const { plain, wild } = needsOf(way);
  let plainShort = 0;
  let wildShort = 0;
  for (const kind of KINDS) {
    const over = tiles.count(kind) - (plain[kind] as number);
    plainShort += Math.max(0, -over);
    wildShort += Math.max(0, (wild[kind] as number) - Math.max(0, over));
  }
  return plainShort + Math.max(0, wildShort - tiles.count(JOKER));
}

/**
 * `away` for every way of a card at once, into `into` (one number a way, at least `wayCount`
 * long). `counts` are the rack's 36 counts (`Tiles.toCounts`). Returns `into`.
 */
export function awayOfAll(compiled: CompiledCard, counts: Uint8Array, into: Uint8Array): Uint8Array {
  const { wayCount, starts, needKind, needPlain, needWild } = compiled;
  const jokers = counts[JOKER] as number;
  let place = 0;
  for (let way = 0; way < wayCount; way += 1) {
    const end = starts[way + 1] as number;
    let plainShort = 0;
    let wildShort = -jokers;
    for (; place < end; place += 1) {
      const over = (counts[needKind[place] as number] as number) - (needPlain[place] as number);
      plainShort += Math.max(0, -over);
      wildShort += Math.max(0, (needWild[place] as number) - Math.max(0, over));
    }
    into[way] = plainShort + Math.max(0, wildShort);
  }
  return into;
}

/** The smallest away over all ways of a card; 14 for a card without ways. */
export function smallestAway(compiled: CompiledCard, counts: Uint8Array): number {
  const all = awayOfAll(compiled, counts, new Uint8Array(compiled.wayCount));
  return all.reduce((least, next) => Math.min(least, next), 14);
}
