import type { Way } from '../card/way.ts';
import { JOKER } from '../tiles/kinds.ts';
import { binomial } from './binomials.ts';
import { compileCard } from './compiled.ts';
import { type Deficits, emptyDeficits, fillDeficits } from './deficits.ts';
import type { Known } from './known.ts';

/**
 * The exact chance that `draws` tiles drawn without replacement from the unseen ones (jokers
 * included) complete a way, keeping every rack tile.
 *
 * The draws follow the multivariate hypergeometric law, so the chance is a count of draws over
 * C(N, draws), and the count is one coefficient of a product of polynomials: in z the tiles
 * drawn, in y the useful tiles among them for the larger groups. A kind of which `u` are unseen,
 * `p` are needed natural and `w` more are wanted by larger groups brings the factor
 *
 *   Σ over x from p to u of C(u, x) z^x y^min(w, x - p).
 *
 * Kinds of which every copy helps the larger groups (p = 0, w ≥ u) act like one big kind together
 * with the unseen jokers, the *pool*; kinds that the way does not lack are the *rest*. All terms
 * are positive: nothing cancels, and doubles keep about 14 digits.
 *
 * One table serves all ways of one reading: ways that lack the same share the answer, and products
 * are kept by prefix of the sorted factors.
 */
export class DrawReachTable {
  readonly #unseenSize: number;
  readonly #unseenJokers: number;
  readonly #draws: number;
  readonly #allDraws: number;
  readonly #one: Product = { number: 0, size: 0, mostUseful: 0, terms: Float64Array.of(1) };
  readonly #products = new Map<number, Product>();
  readonly #tails = new Map<number, Float64Array>();
  readonly #answers = new Map<number, number>();
  readonly #factors = new Uint16Array(MOST_FACTORS);

  /** `draws` from 0 to `unseenSize`, which counts the `unseenJokers`. */
  constructor(unseenSize: number, unseenJokers: number, draws: number) {
    this.#unseenSize = unseenSize;
    this.#unseenJokers = unseenJokers;
    this.#draws = draws;
    this.#allDraws = binomial(unseenSize, draws);
  }

  chanceOf(deficits: Deficits): number {
    const { shortage } = deficits;
    let pool = shortage > 0 ? this.#unseenJokers : 0;
    let length = 0;
    for (let place = 0; place < deficits.length; place += 1) {
      const plain = deficits.plain[place] as number;
      const wild = deficits.wild[place] as number;
      const unseen = deficits.unseen[place] as number;
      if (plain > unseen) return 0;
      if (plain === 0 && wild >= unseen) pool += unseen;
      else length = insertSorted(this.#factors, length, encodeFactor(plain, wild, unseen));
    }
    return this.#answer(this.#productOf(length), pool, shortage);
  }

  #productOf(length: number): Product {
    let product = this.#one;
    for (let place = 0; place < length; place += 1) {
      const factor = this.#factors[place] as number;
      const key = product.number * FACTOR_CODES + factor;
      let next = this.#products.get(key);
      if (next === undefined) {
        next = times(product, factor, this.#products.size + 1);
        this.#products.set(key, next);
      }
      product = next;
    }
    return product;
  }

  #answer(product: Product, pool: number, shortage: number): number {
    const key = (product.number * MOST_POOL + pool) * MOST_SHORTAGE + shortage;
    const known = this.#answers.get(key);
    if (known !== undefined) return known;
    const tails = this.#tailsOf(product.size, pool);
    const width = product.mostUseful + 1;
    const mostDrawn = Math.min(product.size, this.#draws);
    let count = 0;
    for (let drawn = 0; drawn <= mostDrawn; drawn += 1) {
      const row = (this.#draws - drawn) * MOST_SHORTAGE;
      for (let useful = 0; useful < width; useful += 1) {
        const still = useful < shortage ? shortage - useful : 0;
        count += (product.terms[drawn * width + useful] as number) * (tails[row + still] as number);
      }
    }
    const answer = count / this.#allDraws;
    this.#answers.set(key, answer);
    return answer;
  }

  /** For n draws from pool and rest: how many sets hold at least s of the pool, at n * MOST_SHORTAGE + s. */
  #tailsOf(taken: number, pool: number): Float64Array {
    const key = taken * MOST_POOL + pool;
    const known = this.#tails.get(key);
    if (known !== undefined) return known;
    const rest = this.#unseenSize - taken - pool;
    const tails = new Float64Array((this.#draws + 1) * MOST_SHORTAGE);
    for (let drawn = 0; drawn <= this.#draws; drawn += 1) {
      let sum = 0;
      for (let hits = Math.min(drawn, pool); hits >= 0; hits -= 1) {
        sum += binomial(pool, hits) * binomial(rest, drawn - hits);
        if (hits < MOST_SHORTAGE) tails[drawn * MOST_SHORTAGE + hits] = sum;
      }
    }
    this.#tails.set(key, tails);
    return tails;
  }
}

/** `drawReach` of one way, for a call now and then; a reading of a whole card shares one table. */
export function drawReach(way: Way, known: Known, draws: number): number {
  const line = { id: '', section: '', pattern: '', concealed: false, points: 0, note: '', ways: [way] };
  const compiled = compileCard({ title: '', season: '', sections: [{ name: '', lines: [line] }] });
  const deficits = emptyDeficits();
  fillDeficits(compiled, 0, known.rack.toCounts(), known.unseen.toCounts(), deficits);
  return new DrawReachTable(known.unseen.size, known.unseen.count(JOKER), draws).chanceOf(deficits);
}

/** A product of factors: the term z^drawn y^useful stands at drawn * (mostUseful + 1) + useful. */
interface Product {
  readonly number: number;
  /** Unseen tiles of its kinds: the highest power of z. */
  readonly size: number;
  readonly mostUseful: number;
  readonly terms: Float64Array;
}

const MOST_FACTORS = 14;
/** Deficits and shortages are at most 14, unseen copies of a kind at most 8. */
const MOST_SHORTAGE = 15;
const MOST_POOL = 128;
const FACTOR_CODES = 16 * 16 * 16;

function encodeFactor(plain: number, wild: number, unseen: number): number {
  return (plain * 16 + wild) * 16 + unseen;
}

function insertSorted(list: Uint16Array, length: number, value: number): number {
  let place = length;
  for (; place > 0 && (list[place - 1] as number) > value; place -= 1) list[place] = list[place - 1] as number;
  list[place] = value;
  return length + 1;
}

function times(product: Product, factor: number, number: number): Product {
  const plain = factor >> 8;
  const wild = (factor >> 4) & 15;
  const unseen = factor & 15;
  const size = product.size + unseen;
  const mostUseful = product.mostUseful + Math.min(wild, unseen - plain);
  const width = mostUseful + 1;
  const before = product.mostUseful + 1;
  const terms = new Float64Array((size + 1) * width);
  for (let more = plain; more <= unseen; more += 1) {
    const ways = binomial(unseen, more);
    const shift = more * width + Math.min(wild, more - plain);
    for (let drawn = 0; drawn <= product.size; drawn += 1) {
      for (let useful = 0; useful < before; useful += 1) {
        const place = drawn * width + useful + shift;
        terms[place] = (terms[place] as number) + ways * (product.terms[drawn * before + useful] as number);
      }
    }
  }
  return { number, size, mostUseful, terms };
}
