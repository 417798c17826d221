import { binomialChance } from './binomials.ts';
import { plainOfDeficit, unseenOfDeficit, wildOfDeficit } from './deficit-tree.ts';
import type { ReachMoment } from './reach-model.ts';

/** Chances of one kind, a row for each moment; rows of `open`, `closed` and `deaf` have wild + 1 places. */
export interface ReachFactor {
  /** Tiles missing in singles and pairs, and in larger groups. */
  readonly plain: number;
  readonly wild: number;
  /** The chance that no tile of a single or pair is missing and exactly w places of larger groups are filled, at place w; with at most one call. */
  readonly open: Float64Array;
  /** The same without a call. */
  readonly closed: Float64Array;
  /** The same without a call, and no copy discarded while one is still missing in a larger group. */
  readonly deaf: Float64Array;
  /** The chance that one tile of a single or pair is missing and a copy of it is discarded as the last tile; one place for each moment. */
  readonly calling: Float64Array;
}

/** MODEL.md, MD-M3 to MD-M6, for one kind. */
export function reachFactor(moments: readonly ReachMoment[], deficit: number): ReachFactor {
  const plain = plainOfDeficit(deficit);
  const wild = wildOfDeficit(deficit);
  const unseen = unseenOfDeficit(deficit);
  const width = wild + 1;
  const open = new Float64Array(moments.length * width);
  const closed = new Float64Array(moments.length * width);
  const deaf = new Float64Array(moments.length * width);
  const calling = new Float64Array(moments.length);
  for (const [moment, { drawn, called, last }] of moments.entries()) {
    const row = moment * width;
    for (let come = Math.max(0, plain - 1); come <= unseen; come += 1) {
      const chance = binomialChance(unseen, come, drawn);
      const noCall = (1 - called) ** (unseen - come);
      const noLast = (1 - last) ** (unseen - come);
      if (come < plain) {
        calling[moment] = chance * (1 - noLast);
        continue;
      }
      const filled = Math.min(wild, come - plain);
      add(closed, row + filled, chance);
      add(deaf, row + filled, filled < wild ? chance * noLast : chance);
      add(open, row + filled, chance * noCall);
      add(open, row + Math.min(wild, filled + 1), chance * (1 - noCall));
    }
  }
  return { plain, wild, open, closed, deaf, calling };
}

/** Chances of the unseen jokers, a row of `JOKER_ROW` places for each moment. */
export interface JokerChances {
  /** At place j: at least j come. */
  readonly atLeast: Float64Array;
  /** At place j: exactly j come. */
  readonly exactly: Float64Array;
}

/** Wide enough for every shortage, 0 to 14. */
export const JOKER_ROW = 16;

/** MODEL.md, MD-M7. */
export function jokerChances(moments: readonly ReachMoment[], unseen: number): JokerChances {
  const atLeast = new Float64Array(moments.length * JOKER_ROW);
  const exactly = new Float64Array(moments.length * JOKER_ROW);
  for (const [moment, { joker }] of moments.entries()) {
    let tail = 0;
    for (let come = unseen; come >= 0; come -= 1) {
      const chance = binomialChance(unseen, come, joker);
      tail += chance;
      exactly[moment * JOKER_ROW + come] = chance;
      atLeast[moment * JOKER_ROW + come] = tail;
    }
  }
  return { atLeast, exactly };
}

function add(into: Float64Array, place: number, more: number): void {
  into[place] = (into[place] as number) + more;
}
