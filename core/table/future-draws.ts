import type { Random } from '../base/random.ts';
import { PASS_SIZE } from '../exchange/state.ts';
import { JOKER, KIND_COUNT, type Kind } from '../tiles/kinds.ts';

/**
 * What comes in by passes when every unseen tile that is no joker is as likely, or as likely as its
 * weight says. Tiles that came in are not drawn again. The draws depend on the pool, the weights
 * and the stream only, so that two choices with the same stream meet the same tiles.
 */
export class IncomingDraws {
  readonly #unseen: Uint8Array;
  readonly #weights: Float64Array;
  readonly #left = new Uint8Array(KIND_COUNT);
  readonly #cumulated = new Float64Array(KIND_COUNT);

  /** `unseen`: 36 counts; `weights`: 36 numbers over 0. */
  constructor(unseen: Uint8Array, weights: ArrayLike<number>) {
    this.#unseen = unseen;
    this.#weights = Float64Array.from(weights);
    this.#weights[JOKER] = 0;
  }

  /** Puts all tiles back. */
  restart(): void {
    this.#left.set(this.#unseen);
  }

  /** 36 counts of what is still unseen, jokers too; live. */
  get left(): Uint8Array {
    return this.#left;
  }

  /**
   * Draws the tiles of one pass: any three tiles with a chance in proportion to the product of their
   * weights. Drawn one by one with replacement, and all three again if one tile was drawn twice.
   */
  draw(random: Random): Kind[] {
    let all = 0;
    for (let kind = 0; kind < KIND_COUNT; kind += 1) {
      all += (this.#weights[kind] as number) * (this.#left[kind] as number);
      this.#cumulated[kind] = all;
    }
    for (;;) {
      const kinds = [this.#pick(random, all), this.#pick(random, all), this.#pick(random, all)];
      const copies = kinds.map((kind) => KIND_COUNT * random.below(this.#left[kind] as number) + kind);
      if (new Set(copies).size === PASS_SIZE) return kinds;
    }
  }

  /** Takes tiles that came in from what is still unseen. */
  take(kinds: readonly Kind[]): void {
    for (const kind of kinds) this.#left[kind] = (this.#left[kind] as number) - 1;
  }

  #pick(random: Random, all: number): Kind {
    const mark = random.fraction() * all;
    let kind = 1;
    while (kind < KIND_COUNT - 1 && (this.#cumulated[kind] as number) <= mark) kind += 1;
    return kind as Kind;
  }
}
