import { rateOf, Z95 } from '../base/statistics.ts';
import type { BlockSums, Figure } from './race.ts';

/** Sums over all blocks of a race so far, added in the order of blocks. */
export class RaceTotals {
  readonly #candidates: number;
  readonly #figures: number;
  /** By candidate, its futures so far; and those that two candidates have in common. */
  readonly #samples: Float64Array;
  readonly #common: Float64Array;
  readonly #sums: Float64Array;
  readonly #squares: Float64Array;
  readonly #gaps: Float64Array;
  readonly #gapSquares: Float64Array;

  constructor(candidates: number, figures: number) {
    this.#candidates = candidates;
    this.#figures = figures;
    this.#samples = new Float64Array(candidates);
    this.#common = new Float64Array(candidates * candidates);
    this.#sums = new Float64Array(candidates * figures);
    this.#squares = new Float64Array(candidates * figures);
    this.#gaps = new Float64Array(candidates * candidates * figures);
    this.#gapSquares = new Float64Array(candidates * candidates * figures);
  }

  add(block: BlockSums): void {
    for (const one of block.alive) {
      this.#samples[one] = this.samplesOf(one) + block.samples;
      for (const other of block.alive) {
        const pair = one * this.#candidates + other;
        this.#common[pair] = (this.#common[pair] as number) + block.samples;
      }
    }
    addAll(this.#sums, block.sums);
    addAll(this.#squares, block.squares);
    addAll(this.#gaps, block.gaps);
    addAll(this.#gapSquares, block.gapSquares);
  }

  samplesOf(candidate: number): number {
    return this.#samples[candidate] as number;
  }

  /** Futures that two candidates have in common. */
  commonOf(one: number, other: number): number {
    return this.#common[one * this.#candidates + other] as number;
  }

  /** Sum and sum of squares of a figure of a candidate. */
  valueOf(candidate: number, figure: number): readonly [number, number] {
    const place = candidate * this.#figures + figure;
    return [this.#sums[place] as number, this.#squares[place] as number];
  }

  /** The same of one candidate less another, over the futures in common. */
  gapOf(one: number, other: number, figure: number): readonly [number, number] {
    const place = (one * this.#candidates + other) * this.#figures + figure;
    return [this.#gaps[place] as number, this.#gapSquares[place] as number];
  }
}

function addAll(into: Float64Array, more: Float64Array): void {
  for (let place = 0; place < into.length; place += 1) into[place] = (into[place] as number) + (more[place] as number);
}

/** A sampled number with its standard error and interval. */
export interface Estimate {
  readonly mean: number;
  readonly error: number;
  readonly low: number;
  readonly high: number;
}

/** A candidate's figure with its 95% interval: Wilson's for a share, the normal law's for a mean. */
export function valueEstimate(totals: RaceTotals, candidate: number, figure: number, { kind }: Figure): Estimate {
  const samples = totals.samplesOf(candidate);
  const [sum, squares] = totals.valueOf(candidate, figure);
  if (kind === 'mean') return meanEstimate(sum, squares, samples, Z95);
  const { low, high } = rateOf(sum, samples);
  const mean = sum / samples;
  return { mean, error: Math.sqrt((mean * (1 - mean)) / samples), low, high };
}

/** By how much a candidate is worse than another; within `z` standard errors, over the futures in common. */
export function lossEstimate(
  totals: RaceTotals,
  worse: number,
  better: number,
  figure: number,
  { kind, better: direction }: Figure,
  z: number,
): Estimate {
  const samples = totals.commonOf(worse, better);
  const [sum, squares] =
    direction === 'more' ? totals.gapOf(better, worse, figure) : totals.gapOf(worse, better, figure);
  if (worse === better) return { mean: 0, error: 0, low: 0, high: 0 };
  // Matched 0/1 pairs: half a pair more in each cell of the two by two table keeps the interval honest when few
  // pairs differ (Agresti and Min, "Simple improved confidence intervals for comparing matched proportions",
  // Statistics in Medicine 24 (2005), 729-740).
  if (kind === 'share') return { ...meanEstimate(sum, squares + 1, samples + 2, z), mean: sum / samples };
  return meanEstimate(sum, squares, samples, z);
}

function meanEstimate(sum: number, squares: number, samples: number, z: number): Estimate {
  const mean = sum / samples;
  const error = Math.sqrt(Math.max(0, squares / samples - mean * mean) / (samples - 1));
  return { mean, error, low: mean - z * error, high: mean + z * error };
}
