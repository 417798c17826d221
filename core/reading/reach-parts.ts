import { JOKER_ROW, type JokerChances, type ReachFactor } from './reach-factors.ts';
import type { ReachMoment } from './reach-model.ts';

/**
 * The kinds of a way fall into two parts that meet only at the end: those missing in singles and
 * pairs alone, and those missing in larger groups (and perhaps in a single or pair as well). At
 * each moment
 *
 *   complete = (ready + calling) · enough + ready · lastWild
 *
 * so that a way's raw chance is a short sum over moments, and each part serves many ways.
 */
export interface PlainPart {
  /** Whether a tile of a single or pair is missing at all. */
  readonly isMissing: boolean;
  /** By moment: the chance that nothing is missing. */
  readonly ready: Float64Array;
  /** By moment: the chance that one tile is missing and can be called as the last. */
  readonly calling: Float64Array;
}

/** Kinds with larger groups; rows have `length` places: 0, 1, … places of larger groups filled. */
export interface WildPart {
  readonly length: number;
  /** Whether some kind of the part is missing a tile of a single or pair, too. */
  readonly isPlainMissing: boolean;
  /** That many places are filled and no tile of a single or pair is missing. */
  readonly filled: Float64Array;
  /** The same with one tile of a single or pair missing that can be called; null where no kind of the part has plain tiles. */
  readonly calling: Float64Array | null;
  /** For concealed hands, the cases of `filled` in which no tile of a larger group can be called as the last. */
  readonly deaf: Float64Array | null;
}

export function emptyPlainPart(moments: number): PlainPart {
  return { isMissing: false, ready: new Float64Array(moments).fill(1), calling: new Float64Array(moments) };
}

export function withPlainKind(part: PlainPart, factor: ReachFactor): PlainPart {
  const ready = part.ready.map((chance, moment) => chance * (factor.closed[moment] as number));
  const calling = part.calling.map(
    (chance, moment) =>
      chance * (factor.closed[moment] as number) + (part.ready[moment] as number) * (factor.calling[moment] as number),
  );
  return { isMissing: true, ready, calling };
}

export function emptyWildPart(moments: number, concealed: boolean): WildPart {
  const ones = new Float64Array(moments).fill(1);
  return { length: 1, isPlainMissing: false, filled: ones, calling: null, deaf: concealed ? ones : null };
}

export function withWildKind(part: WildPart, factor: ReachFactor, moments: number): WildPart {
  const { length } = part;
  const fills = part.deaf === null ? factor.open : factor.closed;
  const filled = convolved(part.filled, length, fills, factor.wild, moments);
  const deaf = part.deaf && convolved(part.deaf, length, factor.deaf, factor.wild, moments);
  let calling = part.calling && convolved(part.calling, length, fills, factor.wild, moments);
  if (factor.calling.some((chance) => chance > 0)) {
    calling ??= new Float64Array(filled.length);
    addScaledRows(calling, length + factor.wild, part.filled, length, factor.calling);
  }
  const isPlainMissing = part.isPlainMissing || factor.plain > 0;
  return { length: length + factor.wild, isPlainMissing, filled, calling, deaf };
}

/** By moment and for one shortage, what the larger groups bring to the sum above. */
export interface WildChances {
  readonly isPlainMissing: boolean;
  readonly enough: Float64Array;
  /** Null where it is 0 throughout. */
  readonly lastWild: Float64Array | null;
}

/** `shortage`: tiles missing in larger groups after the rack's jokers. Weighted by the moments. */
export function wildChances(
  part: WildPart,
  moments: readonly ReachMoment[],
  jokers: JokerChances,
  shortage: number,
): WildChances {
  const enough = new Float64Array(moments.length);
  const lastWild = part.calling === null && part.deaf === null ? null : new Float64Array(moments.length);
  for (const [moment, { weight }] of moments.entries()) {
    for (let place = 0; place < part.length; place += 1) {
      const at = moment * part.length + place;
      const filled = part.filled[at] as number;
      const still = Math.max(0, shortage - place);
      const joker = weight * (jokers.atLeast[moment * JOKER_ROW + still] as number);
      enough[moment] = (enough[moment] as number) + filled * joker;
      if (lastWild === null) continue;
      let last = part.calling === null ? 0 : (part.calling[at] as number) * joker;
      if (part.deaf !== null && still > 0) {
        // One tile of a larger group is missing and a copy of it is discarded: all cases less the deaf ones.
        const heard = Math.max(0, filled - (part.deaf[at] as number));
        last += heard * weight * (jokers.exactly[moment * JOKER_ROW + still - 1] as number);
      }
      lastWild[moment] = (lastWild[moment] as number) + last;
    }
  }
  return { isPlainMissing: part.isPlainMissing, enough, lastWild };
}

/** The raw chance of a way from its two parts; the plain one is the row from `start` in longer lists. */
export function joinParts(ready: Float64Array, calling: Float64Array, start: number, wild: WildChances): number {
  const { enough, lastWild } = wild;
  let sum = 0;
  for (let moment = 0; moment < enough.length; moment += 1) {
    const chance = ready[start + moment] as number;
    sum += (chance + (calling[start + moment] as number)) * (enough[moment] as number);
    if (lastWild !== null) sum += chance * (lastWild[moment] as number);
  }
  return sum;
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
      for (let place = 0; place < length; place += 1) {
        product[shift + place] =
          (product[shift + place] as number) + chance * (rows[moment * length + place] as number);
      }
    }
  }
  return product;
}

function addScaledRows(into: Float64Array, width: number, rows: Float64Array, length: number, by: Float64Array): void {
  for (let moment = 0; moment < by.length; moment += 1) {
    for (let place = 0; place < length; place += 1) {
      const at = moment * width + place;
      into[at] = (into[at] as number) + (rows[moment * length + place] as number) * (by[moment] as number);
    }
  }
}
