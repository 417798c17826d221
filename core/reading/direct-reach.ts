import { packDeficit } from './deficit-tree.ts';
import type { Deficits } from './deficits.ts';
import { calibrated } from './reach.ts';
import { JOKER_ROW, type JokerChances, jokerChances, type ReachFactor, reachFactor } from './reach-factors.ts';
import type { ReachModel } from './reach-model.ts';

/** Places for the polynomials of larger groups: 0 to 14 places filled. */
const WIDTH = 15;
const JOKER_COUNTS = 9;

/**
 * Reach by MODEL.md of one way at a time, from its deficits alone: the same number as `ReachTable`, which shares work
 * between the ways of a reading, but without memory that grows. For simulated games, in which hardly anything is met
 * twice. Nothing is allocated while it reads.
 */
export class DirectReach {
  readonly #model: ReachModel;
  readonly #factors: (ReachFactor | undefined)[] = [];
  readonly #jokers: readonly JokerChances[];
  #filled = new Float64Array(WIDTH);
  #calling = new Float64Array(WIDTH);
  #deaf = new Float64Array(WIDTH);
  #spare = new Float64Array(WIDTH);
  readonly #weights: Float64Array;
  /** The factors of the way that is read. */
  readonly #found: ReachFactor[] = [];

  constructor(model: ReachModel) {
    this.#model = model;
    this.#weights = Float64Array.from(model.moments, ({ weight }) => weight);
    this.#jokers = Array.from({ length: JOKER_COUNTS }, (_, unseen) => jokerChances(model.moments, unseen));
  }

  /** 1 when complete, 0 when a tile that it needs is dead. */
  of(deficits: Deficits, unseenJokers: number, concealed: boolean): number {
    return this.reachOf(this.rawAbove(deficits, unseenJokers, concealed, 0));
  }

  /** The reach that a raw chance stands for. */
  reachOf(raw: number): number {
    return calibrated(this.#model.calibration, raw);
  }

  /**
   * The raw chance of a way if it is more than `least`, otherwise some number that is at most `least`: the more time there
   * is, the likelier a way, so that the last moments tell early that the sum over all can't be enough.
   */
  rawAbove(deficits: Deficits, unseenJokers: number, concealed: boolean, least: number): number {
    if (deficits.away === 0) return 1;
    this.#findFactors(deficits);
    const { moments } = this.#model;
    const jokers = this.#jokers[unseenJokers] as JokerChances;
    let sum = 0;
    let rest = 1;
    for (let moment = moments.length - 1; moment >= 0; moment -= 1) {
      const enough = (least - sum) / rest;
      const chance = this.#at(moment, deficits, jokers, concealed, enough);
      if (chance <= enough) return 0;
      const weight = this.#weights[moment] as number;
      sum += weight * chance;
      rest -= weight;
    }
    return sum;
  }

  #findFactors({ length, plain, wild, unseen }: Deficits): void {
    for (let place = 0; place < length; place += 1) {
      this.#found[place] = this.#factorOf(
        packDeficit(plain[place] as number, wild[place] as number, unseen[place] as number),
      );
    }
  }

  /**
   * The chance that the way is complete at one moment: (ready + calling) · enough + ready · last (reach-parts.ts), where
   * enough and last are together at most 1. 0 if it is seen to be at most `least`.
   */
  #at(moment: number, deficits: Deficits, jokers: JokerChances, concealed: boolean, least: number): number {
    let ready = 1;
    let calling = 0;
    for (let place = 0; place < deficits.length; place += 1) {
      if (deficits.wild[place] !== 0) continue;
      const { closed, calling: called } = this.#found[place] as ReachFactor;
      const share = closed[moment] as number;
      calling = calling * share + ready * (called[moment] as number);
      ready *= share;
    }
    if (ready + calling <= least) return 0;
    let length = 1;
    this.#filled[0] = 1;
    this.#calling[0] = 0;
    this.#deaf[0] = 1;
    for (let place = 0; place < deficits.length; place += 1) {
      const wild = deficits.wild[place] as number;
      if (wild === 0) continue;
      this.#join(this.#found[place] as ReachFactor, moment, length, concealed);
      length += wild;
    }
    return this.#completed(ready, calling, moment, length, deficits.shortage, jokers, concealed);
  }

  /** Takes a kind with larger groups into the three polynomials. */
  #join(factor: ReachFactor, moment: number, length: number, concealed: boolean): void {
    const fills = concealed ? factor.closed : factor.open;
    const start = moment * (factor.wild + 1);
    const last = factor.calling[moment] as number;
    const next = this.#spare;
    // The calling cases: those before with this kind filled, and those filled before with this kind's last single or pair called.
    multiply(this.#calling, length, fills, start, factor.wild, next);
    if (last > 0)
      for (let at = 0; at < length; at += 1) next[at] = (next[at] as number) + last * (this.#filled[at] as number);
    this.#spare = this.#calling;
    this.#calling = next;
    const filled = this.#spare;
    multiply(this.#filled, length, fills, start, factor.wild, filled);
    this.#spare = this.#filled;
    this.#filled = filled;
    if (!concealed) return;
    const deaf = this.#spare;
    multiply(this.#deaf, length, factor.deaf, start, factor.wild, deaf);
    this.#spare = this.#deaf;
    this.#deaf = deaf;
  }

  #completed(
    ready: number,
    calling: number,
    moment: number,
    length: number,
    shortage: number,
    { atLeast, exactly }: JokerChances,
    concealed: boolean,
  ): number {
    const row = moment * JOKER_ROW;
    let enough = 0;
    let last = 0;
    for (let place = 0; place < length; place += 1) {
      const filled = this.#filled[place] as number;
      const still = Math.max(0, shortage - place);
      const joker = atLeast[row + still] as number;
      enough += filled * joker;
      last += (this.#calling[place] as number) * joker;
      if (!concealed || still === 0) continue;
      // One tile of a larger group is missing and a copy of it is discarded: all cases less the deaf ones.
      last += Math.max(0, filled - (this.#deaf[place] as number)) * (exactly[row + still - 1] as number);
    }
    return (ready + calling) * enough + ready * last;
  }

  #factorOf(deficit: number): ReachFactor {
    const known = this.#factors[deficit];
    if (known !== undefined) return known;
    const factor = reachFactor(this.#model.moments, deficit);
    this.#factors[deficit] = factor;
    return factor;
  }
}

/** `into` = the polynomial `one` of `length` places times the `wild + 1` places of `other` from `start` on. */
function multiply(
  one: Float64Array,
  length: number,
  other: Float64Array,
  start: number,
  wild: number,
  into: Float64Array,
): void {
  const first = other[start] as number;
  for (let place = 0; place < length; place += 1) into[place] = first * (one[place] as number);
  for (let place = length; place < length + wild; place += 1) into[place] = 0;
  for (let more = 1; more <= wild; more += 1) {
    const chance = other[start + more] as number;
    if (chance === 0) continue;
    for (let place = 0; place < length; place += 1) {
      into[place + more] = (into[place + more] as number) + chance * (one[place] as number);
    }
  }
}
