import { binomialChance } from './binomials.ts';
import type { Deficits } from './deficits.ts';
import type { CalibrationKnot, ReachModel, ReachMoment } from './reach-model.ts';

/**
 * Reach by MODEL.md for many ways: chances of single kinds are computed once and kept, a way's
 * reach is then a short product. One table serves every reading with its model; it grows only
 * with the deficits that occur (a few hundred small arrays).
 */
export class ReachTable {
  readonly model: ReachModel;
  readonly #moments: readonly ReachMoment[];
  readonly #factors: (Factor | undefined)[] = [];
  /** Chances that so many or more (`atLeast`), or so many exactly, of the unseen jokers come, by number unseen. */
  readonly #jokers: JokerChances[];
  /** Work space of `#completeAt`: chances by places of larger groups filled, 0 to 14. */
  readonly #filled = new Float64Array(WORK);
  readonly #filledCalling = new Float64Array(WORK);
  readonly #filledDeaf = new Float64Array(WORK);

  constructor(model: ReachModel) {
    this.model = model;
    this.#moments = model.moments;
    this.#jokers = Array.from({ length: MOST_JOKERS + 1 }, (_, unseen) => jokerChances(model.moments, unseen));
  }

  /** The reach of a way from what it lacks: 1 when complete, 0 when a tile that it needs is dead. */
  reachOf(deficits: Deficits, unseenJokers: number, concealed: boolean): number {
    if (deficits.away === 0) return 1;
    return calibrated(this.model.calibration, this.rawOf(deficits, unseenJokers, concealed));
  }

  /** The chance before calibration. */
  rawOf(deficits: Deficits, unseenJokers: number, concealed: boolean): number {
    const jokers = this.#jokers[unseenJokers] as JokerChances;
    let sum = 0;
    for (let moment = 0; moment < this.#moments.length; moment += 1) {
      const weight = (this.#moments[moment] as ReachMoment).weight;
      sum += weight * this.#completeAt(moment, deficits, jokers, concealed);
    }
    return sum;
  }

  /** The chance that the way is complete at one moment, the last tile perhaps called. */
  #completeAt(moment: number, deficits: Deficits, jokers: JokerChances, concealed: boolean): number {
    const filledSoFar = this.#filled;
    const filledCalling = this.#filledCalling;
    const filledDeaf = this.#filledDeaf;
    let ready = 1;
    let calling = 0;
    let length = 1;
    filledSoFar[0] = 1;
    filledCalling[0] = 0;
    filledDeaf[0] = 1;
    for (let place = 0; place < deficits.length; place += 1) {
      const plain = deficits.plain[place] as number;
      const wild = deficits.wild[place] as number;
      const factor = this.#factorOf(plain, wild, deficits.unseen[place] as number);
      if (wild === 0) {
        const all = factor.closed[moment] as number;
        calling = calling * all + ready * (factor.calling[moment] as number);
        ready *= all;
      } else {
        const start = moment * (wild + 1);
        const fills = concealed ? factor.closed : factor.open;
        if (concealed) convolve(filledDeaf, length, factor.deaf, start, wild);
        convolve(filledCalling, length, fills, start, wild);
        if (plain > 0) addScaled(filledCalling, filledSoFar, length, factor.calling[moment] as number);
        convolve(filledSoFar, length, fills, start, wild);
        length += wild;
      }
    }
    const { shortage } = deficits;
    if (shortage === 0) return ready + calling;
    const { atLeast, exactly } = jokers;
    const start = moment * JOKER_WIDTH;
    let complete = 0;
    for (let filled = 0; filled < length; filled += 1) {
      const still = filled < shortage ? shortage - filled : 0;
      complete +=
        ((ready + calling) * (filledSoFar[filled] as number) + ready * (filledCalling[filled] as number)) *
        (atLeast[start + still] as number);
      if (!concealed || filled >= shortage) continue;
      // One tile of a larger group lacks, and a copy of it is discarded: all cases less the deaf ones.
      const heard = Math.max(0, (filledSoFar[filled] as number) - (filledDeaf[filled] as number));
      complete += ready * heard * (exactly[start + still - 1] as number);
    }
    return complete;
  }

  #factorOf(plain: number, wild: number, unseen: number): Factor {
    const code = (plain * 16 + wild) * 16 + unseen;
    const known = this.#factors[code];
    if (known !== undefined) return known;
    const factor = factorFor(this.#moments, plain, wild, unseen);
    this.#factors[code] = factor;
    return factor;
  }
}

const TABLES = new WeakMap<ReachModel, ReachTable>();

/** The one table of a model; tables are kept as long as their model is. */
export function reachTableOf(model: ReachModel): ReachTable {
  const known = TABLES.get(model);
  if (known !== undefined) return known;
  const table = new ReachTable(model);
  TABLES.set(model, table);
  return table;
}

/** The chance after calibration, along straight lines between the knots. */
export function calibrated(knots: readonly CalibrationKnot[], raw: number): number {
  let last = knots[0] as CalibrationKnot;
  for (const knot of knots) {
    if (raw <= knot.raw) {
      if (knot.raw === last.raw) return knot.reach;
      return last.reach + ((raw - last.raw) * (knot.reach - last.reach)) / (knot.raw - last.raw);
    }
    last = knot;
  }
  return last.reach;
}

/** Chances of one kind, a row for each moment; rows of `open`, `closed` and `deaf` have wild + 1 places. */
interface Factor {
  /** No plain tile lacks and so many places of larger groups are filled, one call allowed. */
  readonly open: Float64Array;
  /** The same without a call. */
  readonly closed: Float64Array;
  /** The same without a call, and no copy discarded while a larger group still lacks one. */
  readonly deaf: Float64Array;
  /** One plain tile lacks and a copy of it is discarded as the last tile. */
  readonly calling: Float64Array;
}

interface JokerChances {
  readonly atLeast: Float64Array;
  readonly exactly: Float64Array;
}

const MOST_JOKERS = 8;
const JOKER_WIDTH = 16;
const WORK = 32;

/** Multiplies the polynomial in `into` (so many terms) by the `wild` + 1 terms of `fills` from `start`. */
function convolve(into: Float64Array, length: number, fills: Float64Array, start: number, wild: number): void {
  for (let total = length + wild - 1; total >= 0; total -= 1) {
    let sum = 0;
    const least = Math.max(0, total - length + 1);
    const most = Math.min(wild, total);
    for (let more = least; more <= most; more += 1) {
      sum += (into[total - more] as number) * (fills[start + more] as number);
    }
    into[total] = sum;
  }
}

function addScaled(into: Float64Array, from: Float64Array, length: number, by: number): void {
  for (let place = 0; place < length; place += 1) into[place] = (into[place] as number) + by * (from[place] as number);
}

function factorFor(moments: readonly ReachMoment[], plain: number, wild: number, unseen: number): Factor {
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
  return { open, closed, deaf, calling };
}

function jokerChances(moments: readonly ReachMoment[], unseen: number): JokerChances {
  const atLeast = new Float64Array(moments.length * JOKER_WIDTH);
  const exactly = new Float64Array(moments.length * JOKER_WIDTH);
  for (const [moment, { joker }] of moments.entries()) {
    let tail = 0;
    for (let come = unseen; come >= 0; come -= 1) {
      const chance = binomialChance(unseen, come, joker);
      tail += chance;
      exactly[moment * JOKER_WIDTH + come] = chance;
      atLeast[moment * JOKER_WIDTH + come] = tail;
    }
  }
  return { atLeast, exactly };
}

function add(into: Float64Array, place: number, more: number): void {
  into[place] = (into[place] as number) + more;
}
