import type { Random } from '../base/random.ts';
import { mayBePassed, PASS_SIZE, type PassStep } from '../exchange/steps.ts';
import type { IncomingWeights } from '../table/incoming-rates.ts';
import { KIND_COUNT, type Kind } from '../tiles/kinds.ts';

const ALL_ALIKE = new Float64Array(KIND_COUNT).fill(1);

/**
 * What comes in by passes: every unseen tile that is no joker as likely as its weight says, and tiles given away before
 * so many times as likely as others of their kind; all unseen ones alike, and none that was given away, without weights.
 * Tiles that came in are not drawn again. The draws depend on the tiles, the weights and the stream only, so that two
 * choices with the same stream meet the same tiles.
 */
export class IncomingDraws {
  readonly #unseen: Uint8Array;
  readonly #given: Uint8Array;
  readonly #weights: IncomingWeights | undefined;
  readonly #left = new Uint8Array(KIND_COUNT);
  /** Given away and not come back. */
  readonly #away = new Uint8Array(KIND_COUNT);
  readonly #cumulated = new Float64Array(KIND_COUNT);
  /** Draws of tiles since all were put back, those that had to be repeated among them. */
  drawn = 0;
  /** Whether the tiles of the last draw had been given away. */
  #cameBack: readonly boolean[] = [];

  /** `unseen`, `given`: 36 counts, no copy in both. */
  constructor(unseen: Uint8Array, given: Uint8Array, weights?: IncomingWeights) {
    this.#unseen = unseen;
    this.#given = given;
    this.#weights = weights;
  }

  /** Puts all tiles back. */
  restart(): void {
    this.drawn = 0;
    this.#left.set(this.#unseen);
    this.#away.set(this.#given);
  }

  /** 36 counts of what is still unseen, jokers too; live. */
  get left(): Uint8Array {
    return this.#left;
  }

  /**
   * Draws the tiles of one pass: any three tiles with a chance in proportion to the product of their
   * weights. Drawn one by one with replacement, and all three again if one tile was drawn twice.
   */
  draw(random: Random, step: PassStep): Kind[] {
    const weights = this.#weights?.weights[step] ?? ALL_ALIKE;
    const returned = this.#weights?.returned[step] ?? 0;
    let all = 0;
    for (let kind = 0; kind < KIND_COUNT; kind += 1) {
      const copies = (this.#left[kind] as number) + returned * (this.#away[kind] as number);
      if (mayBePassed(kind as Kind)) all += (weights[kind] as number) * copies;
      this.#cumulated[kind] = all;
    }
    for (;;) {
      this.drawn += 1;
      const kinds = [this.#pick(random, all), this.#pick(random, all), this.#pick(random, all)];
      const places = kinds.map((kind) => this.#pickCopy(random, kind, returned));
      if (new Set(places.map((place, tile) => KIND_COUNT * place + (kinds[tile] as Kind))).size < PASS_SIZE) continue;
      this.#cameBack = places.map((place, tile) => place >= (this.#left[kinds[tile] as Kind] as number));
      return kinds;
    }
  }

  /** Takes the first tiles of the last draw, which came in. */
  take(kinds: readonly Kind[]): void {
    for (const [tile, kind] of kinds.entries()) {
      const from = this.#cameBack[tile] === true ? this.#away : this.#left;
      from[kind] = (from[kind] as number) - 1;
    }
  }

  /** Lays tiles aside that were given away; they may come back later. */
  give(kinds: readonly Kind[]): void {
    for (const kind of kinds) this.#away[kind] = (this.#away[kind] as number) + 1;
  }

  #pick(random: Random, all: number): Kind {
    const mark = random.fraction() * all;
    let kind = 1;
    while (kind < KIND_COUNT - 1 && (this.#cumulated[kind] as number) <= mark) kind += 1;
    return kind as Kind;
  }

  /** Which of a kind's copies it is, first the unseen ones, then those given away. */
  #pickCopy(random: Random, kind: Kind, returned: number): number {
    const left = this.#left[kind] as number;
    const mark = random.fraction() * (left + returned * (this.#away[kind] as number));
    return mark < left ? Math.floor(mark) : left + Math.floor((mark - left) / returned);
  }
}
