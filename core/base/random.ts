/**
 * Reproducible random numbers: xoshiro128** by David Blackman and Sebastiano Vigna (public
 * domain, 2018), seeded through SplitMix32. The same seed gives the same stream on every
 * machine; `jump` and `longJump` make streams that cannot overlap, so that shards of a
 * simulation may be counted in any order. Constants from the authors' reference code, checked
 * in the tests against the matrix power they stand for.
 */
export interface Random {
  /** A whole number, uniform over 0 to 2^32 - 1. */
  bits(): number;
  /** A whole number, uniform over 0 to `bound` - 1 without bias; `bound` from 1 to 2^32. */
  below(bound: number): number;
  /** A fraction in [0, 1) with 32 random bits. */
  fraction(): number;
  /** A new stream 2^64 draws ahead; this one is left as it is. */
  jumped(): Random;
  /** A new stream 2^96 draws ahead; this one is left as it is. */
  longJumped(): Random;
}

type State = [number, number, number, number];

const JUMP: State = [0x8764000b, 0xf542d2d3, 0x6fa035c3, 0x77f2db5b];
const LONG_JUMP: State = [0xb523952e, 0x0b6f099f, 0xccf5a0ef, 0x1c580662];

/** A stream for a seed: any whole number from 0 to 2^53 - 1; all its bits count. */
export function randomFromSeed(seed: number): Random {
  return randomFromState(stateFromSeed(seed));
}

/** A stream from the four words of its state, not all of them zero. */
export function randomFromState(state: State): Random {
  return new Xoshiro128(state);
}

class Xoshiro128 implements Random {
  // Four fields rather than an array: this is the innermost loop of every simulation.
  #a: number;
  #b: number;
  #c: number;
  #d: number;

  constructor([a, b, c, d]: State) {
    this.#a = a;
    this.#b = b;
    this.#c = c;
    this.#d = d;
  }

  bits(): number {
    const result = Math.imul(rotateLeft(Math.imul(this.#b, 5), 7), 9) >>> 0;
    const shifted = this.#b << 9;
    this.#c ^= this.#a;
    this.#d ^= this.#b;
    this.#b ^= this.#c;
    this.#a ^= this.#d;
    this.#c ^= shifted;
    this.#d = rotateLeft(this.#d, 11);
    return result;
  }

  below(bound: number): number {
    // Plain rejection (von Neumann, 1951) on the remainder: draws from the last whole multiple of the
    // bound on are thrown away, so that every remainder is equally likely.
    const limit = 0x1_0000_0000 - (0x1_0000_0000 % bound);
    let draw = this.bits();
    while (draw >= limit) draw = this.bits();
    return draw % bound;
  }

  fraction(): number {
    return this.bits() / 0x1_0000_0000;
  }

  jumped(): Random {
    return this.#ahead(JUMP);
  }

  longJumped(): Random {
    return this.#ahead(LONG_JUMP);
  }

  #ahead(polynomial: State): Random {
    const walker = new Xoshiro128([this.#a, this.#b, this.#c, this.#d]);
    const sum: State = [0, 0, 0, 0];
    for (const word of polynomial) {
      for (let bit = 0; bit < 32; bit += 1) {
        if ((word & (1 << bit)) !== 0) {
          sum[0] ^= walker.#a;
          sum[1] ^= walker.#b;
          sum[2] ^= walker.#c;
          sum[3] ^= walker.#d;
        }
        walker.bits();
      }
    }
    return new Xoshiro128(sum);
  }
}

function rotateLeft(value: number, by: number): number {
  return (value << by) | (value >>> (32 - by));
}

function stateFromSeed(seed: number): State {
  let mixed = (seed ^ Math.imul(Math.floor(seed / 0x1_0000_0000), 0x9e3779b1)) | 0;
  const next = (): number => {
    mixed = (mixed + 0x9e3779b9) | 0;
    let word = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad);
    word = Math.imul(word ^ (word >>> 15), 0x735a2d97);
    return word ^ (word >>> 15);
  };
  return [next(), next(), next(), next()];
}

/** Shuffles in place, every order equally likely (Fisher and Yates; Knuth, TAOCP 2, 3.4.2 P). */
export function shuffle<Item>(items: Item[], random: Random): Item[] {
  for (let last = items.length - 1; last > 0; last -= 1) {
    const pick = random.below(last + 1);
    const held = items[last] as Item;
    items[last] = items[pick] as Item;
    items[pick] = held;
  }
  return items;
}
