import type { BlockSums } from './race.ts';

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
