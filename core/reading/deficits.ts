import type { Way } from '../card/way.ts';
import { JOKER, KIND_COUNT, KINDS } from '../tiles/kinds.ts';
import type { Tiles } from '../tiles/tiles.ts';
import { type CompiledCard, needsOf } from './compiled.ts';

/**
 * How many tiles of a way a rack is missing: 14 less the most tiles that can lie in the way at once,
 * jokers only in groups of three and more. No search is needed: a natural tile that a single or a
 * pair wants goes there first, because only naturals can; what is over goes to the larger groups,
 * and jokers make up for what is still missing there. Any number of tiles may be in the rack.
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

/** Room for the kinds of one way: 14 tiles hold at most 14 kinds. */
const MOST_KINDS = 14;

/**
 * What is missing for one way, as plain arrays that are filled again for each way (a hot loop). Only kinds
 * with a deficit are listed, kinds rising.
 */
export interface Deficits {
  /** How many kinds are listed. */
  length: number;
  readonly kind: Uint8Array;
  /** Natural tiles missing in groups of one and two. */
  readonly plain: Uint8Array;
  /** Tiles missing in groups of three and more, before any joker. */
  readonly wild: Uint8Array;
  /** Copies of the kind not yet seen. */
  readonly unseen: Uint8Array;
  /** Tiles missing in groups of three and more after the rack's jokers; 0 or more. */
  shortage: number;
  /** Tiles missing in all. */
  away: number;
}

export function emptyDeficits(): Deficits {
  return {
    length: 0,
    kind: new Uint8Array(MOST_KINDS),
    plain: new Uint8Array(MOST_KINDS),
    wild: new Uint8Array(MOST_KINDS),
    unseen: new Uint8Array(MOST_KINDS),
    shortage: 0,
    away: 0,
  };
}

const NONE_EXPOSED = new Uint8Array(KIND_COUNT);

/**
 * `fillAllDeficits`, but for the larger groups where the rack's jokers cover all that is missing in them: those are left
 * out.
 */
export function fillDeficits(
  compiled: CompiledCard,
  way: number,
  counts: ArrayLike<number>,
  unseen: ArrayLike<number>,
  into: Deficits,
  exposed: ArrayLike<number> = NONE_EXPOSED,
): void {
  fillAllDeficits(compiled, way, counts, unseen, into, exposed);
  if (into.shortage === 0) dropWild(into);
}

/**
 * Fills `into` with what is missing for way number `way`. `counts`, `unseen` and `exposed` are 36 counts each; exposed
 * tiles fill larger groups, and the way must hold the groups that they lie in.
 */
export function fillAllDeficits(
  compiled: CompiledCard,
  way: number,
  counts: ArrayLike<number>,
  unseen: ArrayLike<number>,
  into: Deficits,
  exposed: ArrayLike<number>,
): void {
  const { starts, needKind, needPlain, needWild } = compiled;
  const end = starts[way + 1] as number;
  let length = 0;
  let plainShort = 0;
  let wildShort = 0;
  for (let place = starts[way] as number; place < end; place += 1) {
    const kind = needKind[place] as number;
    const over = (counts[kind] as number) - (needPlain[place] as number);
    const plain = Math.max(0, -over);
    const wild = Math.max(0, (needWild[place] as number) - (exposed[kind] as number) - Math.max(0, over));
    if (plain + wild === 0) continue;
    into.kind[length] = kind;
    into.plain[length] = plain;
    into.wild[length] = wild;
    into.unseen[length] = unseen[kind] as number;
    length += 1;
    plainShort += plain;
    wildShort += wild;
  }
  into.length = length;
  into.shortage = Math.max(0, wildShort - (counts[JOKER] as number));
  into.away = plainShort + into.shortage;
}

function dropWild(deficits: Deficits): void {
  let length = 0;
  for (let place = 0; place < deficits.length; place += 1) {
    if (deficits.plain[place] === 0) continue;
    deficits.kind[length] = deficits.kind[place] as number;
    deficits.plain[length] = deficits.plain[place] as number;
    deficits.wild[length] = 0;
    deficits.unseen[length] = deficits.unseen[place] as number;
    length += 1;
  }
  deficits.length = length;
}
