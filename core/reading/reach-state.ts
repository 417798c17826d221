import { JOKER_ROW, type JokerChances, type ReachFactor } from './reach-factors.ts';
import type { ReachMoment } from './reach-model.ts';

/**
 * Where some of a way's kinds stand, moment by moment; kinds are added one by one and in any
 * order. Rows of the three lists `filled…` have `length` places: 0, 1, … places of larger groups filled.
 */
export interface ReachState {
  readonly length: number;
  /** No plain tile lacks, over the kinds that take no joker. */
  readonly ready: Float64Array;
  /** Of these one plain tile lacks and can be called. */
  readonly calling: Float64Array;
  /** Kinds with larger groups: so many places filled and no plain tile lacking. */
  readonly filled: Float64Array;
  /** The same, one plain tile lacking that can be called; null where no such kind has plain tiles. */
  readonly filledCalling: Float64Array | null;
  /** For concealed hands, the part of `filled` in which no tile of a larger group can be called as the last. */
  readonly filledDeaf: Float64Array | null;
}

export function emptyReachState(moments: number, concealed: boolean): ReachState {
  const ones = new Float64Array(moments).fill(1);
  return {
    length: 1,
    ready: ones,
    calling: new Float64Array(moments),
    filled: ones,
    filledCalling: null,
    filledDeaf: concealed ? ones : null,
  };
}

/** The state with one more kind. */
export function withFactor(state: ReachState, factor: ReachFactor): ReachState {
  return factor.wild === 0 ? withPlainKind(state, factor) : withWildKind(state, factor);
}

function withPlainKind(state: ReachState, factor: ReachFactor): ReachState {
  const ready = state.ready.map((chance, moment) => chance * (factor.closed[moment] as number));
  const calling = state.calling.map(
    (chance, moment) =>
      chance * (factor.closed[moment] as number) + (state.ready[moment] as number) * (factor.calling[moment] as number),
  );
  return { ...state, ready, calling };
}

function withWildKind(state: ReachState, factor: ReachFactor): ReachState {
  const { length } = state;
  const moments = state.ready.length;
  const fills = state.filledDeaf === null ? factor.open : factor.closed;
  const filled = convolved(state.filled, length, fills, factor.wild, moments);
  let filledCalling = state.filledCalling && convolved(state.filledCalling, length, fills, factor.wild, moments);
  if (factor.calling.some((chance) => chance > 0)) {
    filledCalling ??= new Float64Array(filled.length);
    for (let moment = 0; moment < moments; moment += 1) {
      for (let place = 0; place < length; place += 1) {
        const at = moment * (length + factor.wild) + place;
        const more = (state.filled[moment * length + place] as number) * (factor.calling[moment] as number);
        filledCalling[at] = (filledCalling[at] as number) + more;
      }
    }
  }
  const filledDeaf = state.filledDeaf && convolved(state.filledDeaf, length, factor.deaf, factor.wild, moments);
  return { ...state, length: length + factor.wild, filled, filledCalling, filledDeaf };
}

/** Row by row the product of two polynomials. */
function convolved(
  rows: Float64Array,
  length: number,
  fills: Float64Array,
  wild: number,
  moments: number,
): Float64Array {
  const width = length + wild;
  const product = new Float64Array(moments * width);
  for (let moment = 0; moment < moments; moment += 1) {
    for (let more = 0; more <= wild; more += 1) {
      const chance = fills[moment * (wild + 1) + more] as number;
      const shift = moment * width + more;
      const row = moment * length;
      for (let place = 0; place < length; place += 1) {
        product[shift + place] = (product[shift + place] as number) + chance * (rows[row + place] as number);
      }
    }
  }
  return product;
}

/** The chance, over all moments, that the way is complete: the unseen jokers and the last call come in. */
export function completeChance(
  state: ReachState,
  moments: readonly ReachMoment[],
  jokers: JokerChances,
  shortage: number,
): number {
  let sum = 0;
  for (let moment = 0; moment < moments.length; moment += 1) {
    const chance = completeAt(state, moment, jokers, shortage);
    sum += chance * (moments[moment] as ReachMoment).weight;
  }
  return sum;
}

function completeAt(state: ReachState, moment: number, jokers: JokerChances, shortage: number): number {
  const { length, filled, filledCalling, filledDeaf } = state;
  const ready = state.ready[moment] as number;
  const either = ready + (state.calling[moment] as number);
  if (shortage === 0) return either;
  let sum = 0;
  for (let place = 0; place < length; place += 1) {
    const at = moment * length + place;
    const still = Math.max(0, shortage - place);
    const enough = jokers.atLeast[moment * JOKER_ROW + still] as number;
    sum += either * (filled[at] as number) * enough;
    if (filledCalling !== null) sum += ready * (filledCalling[at] as number) * enough;
    if (filledDeaf === null || still === 0) continue;
    // One tile of a larger group lacks and a copy of it is discarded: all cases less the deaf ones.
    const heard = Math.max(0, (filled[at] as number) - (filledDeaf[at] as number));
    sum += ready * heard * (jokers.exactly[moment * JOKER_ROW + still - 1] as number);
  }
  return sum;
}
