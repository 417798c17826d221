import type { Way } from '../card/way.ts';
import { JOKER } from '../tiles/kinds.ts';
import { binomial } from './binomials.ts';
import { compileCard } from './compiled.ts';
import { emptyDeficits, fillDeficits } from './deficits.ts';
import type { Known } from './known.ts';
import { DeficitTree, PlaceMap, plainOfDeficit, unseenOfDeficit, wildOfDeficit } from './deficit-tree.ts';

/**
 * The exact chance that draws without replacement from the unseen tiles (jokers included)
 * complete a way, keeping every rack tile.
 *
 * The draws follow the multivariate hypergeometric law, so the chance is a count of draws over
 * C(N, draws), and the count is one coefficient of a product of polynomials: in z the tiles
 * drawn, in y the useful tiles among them for the larger groups. A kind of which `u` are unseen,
 * `p` are needed natural and `w` more are wanted by larger groups brings the factor
 *
 *   Σ over x from p to u of C(u, x) z^x y^min(w, x - p).
 *
 * Kinds of which every copy helps the larger groups (p = 0, w ≥ u) act like one big kind together
 * with the unseen jokers, the *pool*; kinds that are not missing are the *rest*. All terms
 * are positive: nothing cancels, and doubles keep about 14 digits.
 */
export class DrawProducts {
  readonly tree: DeficitTree;
  readonly #products: (DrawProduct | undefined)[];

  constructor(tree: DeficitTree) {
    this.tree = tree;
    this.#products = [{ dead: false, pool: 0, size: 0, mostUseful: 0, terms: Float64Array.of(1) }];
  }

  /** The product over the deficits of a node; it depends on no rack. */
  productOf(node: number): DrawProduct {
    const known = this.#products[node];
    if (known !== undefined) return known;
    const product = times(this.productOf(this.tree.parentOf(node)), this.tree.deficitOf(node));
    this.#products[node] = product;
    return product;
  }
}

/** A product of factors: the term z^drawn y^useful stands at drawn * (mostUseful + 1) + useful. */
export interface DrawProduct {
  /** More naturals are needed than are unseen. */
  readonly dead: boolean;
  /** Unseen tiles of the kinds of which every copy helps; they are not in the terms. */
  readonly pool: number;
  /** Unseen tiles of the other kinds: the highest power of z. */
  readonly size: number;
  readonly mostUseful: number;
  readonly terms: Float64Array;
}

/** Shortages are at most 14; the pool is smaller than 128. */
const SHORTAGES = 15;
const POOLS = 128;

/** Draw reach for one rack and one number of draws; nodes of equal deficits share an answer. */
export class DrawReachTable {
  readonly #products: DrawProducts;
  readonly #unseenSize: number;
  readonly #unseenJokers: number;
  readonly #draws: number;
  readonly #allDraws: number;
  readonly #tails = new Map<number, Float64Array>();
  readonly #answers: number[] = [];
  readonly #answerPlaces = new PlaceMap();

  /** `draws` from 0 to `unseenSize`, which counts the `unseenJokers`. */
  constructor(products: DrawProducts, unseenSize: number, unseenJokers: number, draws: number) {
    this.#products = products;
    this.#unseenSize = unseenSize;
    this.#unseenJokers = unseenJokers;
    this.#draws = draws;
    this.#allDraws = binomial(unseenSize, draws);
  }

  /** `shortage`: tiles missing in larger groups after the rack's jokers. */
  chanceOf(node: number, shortage: number): number {
    const key = node * SHORTAGES + shortage;
    const known = this.#answerPlaces.get(key);
    if (known >= 0) return this.#answers[known] as number;
    const answer = this.#count(this.#products.productOf(node), shortage) / this.#allDraws;
    this.#answerPlaces.set(key, this.#answers.push(answer) - 1);
    return answer;
  }

  #count(product: DrawProduct, shortage: number): number {
    if (product.dead) return 0;
    const tails = this.#tailsOf(product.size, shortage > 0 ? product.pool + this.#unseenJokers : 0);
    const width = product.mostUseful + 1;
    const mostDrawn = Math.min(product.size, this.#draws);
    let count = 0;
    for (let drawn = 0; drawn <= mostDrawn; drawn += 1) {
      const row = (this.#draws - drawn) * SHORTAGES;
      for (let useful = 0; useful < width; useful += 1) {
        const still = useful < shortage ? shortage - useful : 0;
        count += (product.terms[drawn * width + useful] as number) * (tails[row + still] as number);
      }
    }
    return count;
  }

  /** For n draws from pool and rest: how many sets hold at least s of the pool, at n * SHORTAGES + s. */
  #tailsOf(taken: number, pool: number): Float64Array {
    const key = taken * POOLS + pool;
    const known = this.#tails.get(key);
    if (known !== undefined) return known;
    const rest = this.#unseenSize - taken - pool;
    const tails = new Float64Array((this.#draws + 1) * SHORTAGES);
    const fewest = Math.max(0, this.#draws - taken);
    for (let drawn = fewest; drawn <= this.#draws; drawn += 1) {
      let sum = 0;
      for (let hits = Math.min(drawn, pool); hits >= 0; hits -= 1) {
        sum += binomial(pool, hits) * binomial(rest, drawn - hits);
        if (hits < SHORTAGES) tails[drawn * SHORTAGES + hits] = sum;
      }
    }
    this.#tails.set(key, tails);
    return tails;
  }
}

/** `drawReach` of one way, for a call now and then; a reading of a whole card shares one table. */
export function drawReach(way: Way, known: Known, draws: number): number {
  const line = { id: '', section: '', name: '', pattern: '', concealed: false, points: 0, note: '', ways: [way] };
  const compiled = compileCard({ title: '', season: '', sections: [{ name: '', lines: [line] }] });
  const deficits = emptyDeficits();
  fillDeficits(compiled, 0, known.rack.toCounts(), known.unseen.toCounts(), deficits);
  const products = new DrawProducts(new DeficitTree());
  const table = new DrawReachTable(products, known.unseen.size, known.unseen.count(JOKER), draws);
  return table.chanceOf(products.tree.nodeOf(deficits), deficits.shortage);
}

function times(product: DrawProduct, deficit: number): DrawProduct {
  const plain = plainOfDeficit(deficit);
  const wild = wildOfDeficit(deficit);
  const unseen = unseenOfDeficit(deficit);
  if (product.dead || plain > unseen) return { ...product, dead: true };
  if (plain === 0 && wild >= unseen) return { ...product, pool: product.pool + unseen };
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
  return { dead: false, pool: product.pool, size, mostUseful, terms };
}
