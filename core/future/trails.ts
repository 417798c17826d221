import { KIND_COUNT } from '../tiles/kinds.ts';

/** Lists of 36 counts in a state. */
const LISTS = 3;
/** The step and the draws come before them. */
const HEAD = 3;
const SIZE = HEAD + LISTS * KIND_COUNT;
/** States kept of one sample; of more the later ones are not looked up. */
const MOST = 128;

/** All that the rest of a future depends on besides its stream: before a step, with so many draws of the stream used. */
export interface TrailState {
  readonly step: number;
  readonly drawn: number;
  /** 36 counts each: the rack, what was given away, and what is unseen; what came back is what these leave of the set. */
  readonly lists: readonly [Uint8Array, Uint8Array, Uint8Array];
}

/**
 * States that the futures of one sample went through, and how these came out: a future of another choice that arrives
 * at one of them goes on alike, since it meets the same tiles. Of two rivals that give the same tiles in another order
 * every other future does.
 */
export class Trails<Outcome> {
  readonly #states = new Uint8Array(MOST * SIZE);
  readonly #outcomes: (Outcome | undefined)[] = [];
  #length = 0;
  /** States of the future that is under way begin here. */
  #from = 0;

  /** For another stream. */
  clear(): void {
    this.#length = 0;
    this.#from = 0;
  }

  /** How a future came out that was in this state; notes the state if there was none. */
  meet({ step, drawn, lists }: TrailState): Outcome | undefined {
    if (this.#length === MOST) return undefined;
    const at = this.#length * SIZE;
    this.#states[at] = step;
    this.#states[at + 1] = drawn;
    this.#states[at + 2] = drawn >> 8;
    for (const [place, list] of lists.entries()) this.#states.set(list, at + HEAD + place * KIND_COUNT);
    for (let place = 0; place < this.#from; place += 1)
      if (this.#isSame(place * SIZE, at)) return this.#outcomes[place];
    this.#length += 1;
    return undefined;
  }

  /** The future under way came out so. */
  end(outcome: Outcome): Outcome {
    for (let place = this.#from; place < this.#length; place += 1) this.#outcomes[place] = outcome;
    this.#from = this.#length;
    return outcome;
  }

  #isSame(one: number, other: number): boolean {
    for (let byte = 0; byte < SIZE; byte += 1) {
      if (this.#states[one + byte] !== this.#states[other + byte]) return false;
    }
    return true;
  }
}
