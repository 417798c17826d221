import { binomialChance } from './binomials.ts';
import { plainOfLack, unseenOfLack, wildOfLack } from './lacks.ts';
import type { ReachMoment } from './reach-model.ts';

/** Chances of one kind, a row for each moment; rows of `open`, `closed` and `deaf` have wild + 1 places. */
export interface ReachFactor {
  readonly wild: number;
  /** No plain tile lacks and so many places of larger groups are filled, one call allowed. */
  readonly open: Float64Array;
  /** The same without a call. */
  readonly closed: Float64Array;
  /** The same without a call, and no copy discarded while a larger group still lacks one. */
  readonly deaf: Float64Array;
  /** One plain tile lacks and a copy of it is discarded as the last tile; one place a moment. */
  readonly calling: Float64Array;
}

/** MODEL.md, M3 to M6, for one kind. */
export function reachFactor(moments: readonly ReachMoment[], lack: number): ReachFactor {
  const plain = plainOfLack(lack);
  const wild = wildOfLack(lack);
  const unseen = unseenOfLack(lack);
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
  return { wild, open, closed, deaf, calling };
}

/** Chances of the unseen jokers, a row of `JOKER_ROW` places for each moment. */
export interface JokerChances {
  /** So many or more come. */
  readonly atLeast: Float64Array;
  /** Exactly so many come. */
  readonly exactly: Float64Array;
}

/** Wide enough for every shortage, 0 to 14. */
export const JOKER_ROW = 16;

/** MODEL.md, M7. */
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
