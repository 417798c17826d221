import { JOKER } from '../tiles/kinds.ts';
import type { CompiledCard } from './compiled.ts';

/** Room for the kinds of one way: 14 tiles hold at most 14 kinds. */
const MOST_KINDS = 14;

/**
 * What one way lacks, as plain arrays that are filled again for each way (a hot loop). Only kinds
 * with a deficit are listed, kinds rising.
 */
export interface Deficits {
  /** How many kinds are listed. */
  length: number;
  readonly kind: Uint8Array;
  /** Naturals lacking in groups of one and two. */
  readonly plain: Uint8Array;
  /** Tiles lacking in groups of three and more, before any joker. */
  readonly wild: Uint8Array;
  /** Copies of the kind not yet seen. */
  readonly unseen: Uint8Array;
  /** Tiles lacking in groups of three and more after the rack's jokers; 0 or more. */
  shortage: number;
  /** Tiles lacking in all. */
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

/**
 * Fills `into` with what way number `way` lacks. `counts` and `unseen` are 36 counts each. When
 * the rack's jokers cover all that the larger groups lack, those are left out.
 */
export function fillDeficits(
  compiled: CompiledCard,
  way: number,
  counts: Uint8Array,
  unseen: Uint8Array,
  into: Deficits,
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
    const wild = Math.max(0, (needWild[place] as number) - Math.max(0, over));
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
  if (into.shortage === 0) dropWild(into);
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
