import { JOKER, type Kind, KIND_COUNT } from '../tiles/kinds.ts';
import { LivingWays } from './living-ways.ts';
import type { SeatView } from './policy.ts';
import { groupCode, holdsGroups, type TableCard } from './table-card.ts';
import { MOST_WAYS, WeighedWays } from './weighed-ways.ts';
import type { ShortageWeights, Weigher } from './weights.ts';

/** Marks a line among the heaviest. */
const KEPT = -1;

/**
 * The living ways near to a rack, each with a weight, and what they would weigh after a call or a swap.
 * Scratch memory of a policy: filled anew at each decision. On the demo card a rack has some dozens of such
 * ways; where there are more than can be kept, the farthest are left out.
 */
export class NearWays extends WeighedWays {
  readonly #living: LivingWays;
  readonly #heaviestOfLine: Float64Array;
  /** Scratch memory: near ways, living or not. */
  readonly #found: Int32Array;

  constructor(card: TableCard, weights: Weigher | ShortageWeights) {
    const living = new LivingWays(card);
    super(card, weights, living.unseen);
    this.#living = living;
    this.#heaviestOfLine = new Float64Array(card.compiled.lines.length);
    this.#found = new Int32Array(card.compiled.wayCount + 1);
  }

  /**
   * Gathers the living ways at most `margin` tiles behind the nearest; widens if none of these is living; empty for a
   * dead hand. With `openJokers` those too that so many jokers of open groups, taken by swaps, would bring back to life.
   */
  collect(view: SeatView, margin: number, openJokers = 0): void {
    const { hand } = view;
    this.#living.lookAt(view, openJokers);
    this.begin(hand.counts, hand.exposed);
    const least = hand.least();
    for (let limit = least + margin; limit <= 14 + margin && this.length === 0; limit += 1) {
      let tried = limit;
      while (!this.#gather(view, tried) && tried > least) tried -= 1;
    }
  }

  /** Leaves of the gathered ways those of so many lines of the card, the ones with the heaviest ways; first on the card of equals. */
  keepLines(most: number): void {
    const { lineOf } = this.card.compiled;
    const heaviest = this.#heaviestOfLine.fill(0);
    for (let place = 0; place < this.length; place += 1) {
      const line = lineOf[this.ways[place] as number] as number;
      const weight = this.weights[place] as number;
      if (weight > (heaviest[line] as number)) heaviest[line] = weight;
    }
    for (let count = 0; count < most; count += 1) {
      let best = 0;
      for (let line = 1; line < heaviest.length; line += 1) {
        if ((heaviest[line] as number) > (heaviest[best] as number)) best = line;
      }
      heaviest[best] = KEPT;
    }
    const all = this.length;
    this.length = 0;
    for (let place = 0; place < all; place += 1) {
      if (heaviest[lineOf[this.ways[place] as number] as number] !== KEPT) continue;
      if (this.length < place) this.moveTo(this.length, place);
      this.length += 1;
    }
  }

  /** Whether some way at most `limit` away is living. Nothing is gathered. */
  someLives(view: SeatView, limit: number): boolean {
    this.#living.lookAt(view);
    let way = view.hand.nextWithin(limit, 0);
    while (way >= 0 && !this.#living.includes(way)) way = view.hand.nextWithin(limit, way + 1);
    return way >= 0;
  }

  /**
   * What the near ways weigh once `size` tiles of `kind` are exposed, the called one, `jokers` jokers
   * and naturals: only those that are open and hold such a group still to expose.
   */
  totalAfterCall(view: SeatView, kind: number, size: number, jokers: number): number {
    const { groups, compiled } = this.card;
    const wanted = (view.hand.exposedGroups[kind] as number) + groupCode(size);
    this.#lay(kind, size, jokers);
    let sum = 0;
    for (let place = 0; place < this.length; place += 1) {
      const way = this.ways[place] as number;
      if (compiled.concealed[way] !== 0 || !holdsGroups(groups[way * KIND_COUNT + kind] as number, wanted)) continue;
      sum += this.weighAnew(way);
    }
    this.#lay(kind, -size, -jokers);
    return sum;
  }

  /**
   * Lays a group open for trial, the called tile, `jokers` jokers and naturals: only the open ways stay that hold such a
   * group still to expose. To go back, gather anew.
   */
  openGroup(view: SeatView, kind: Kind, size: number, jokers: number): void {
    const { groups, compiled } = this.card;
    const wanted = (view.hand.exposedGroups[kind] as number) + groupCode(size);
    this.#lay(kind, size, jokers);
    const all = this.length;
    this.length = 0;
    for (let place = 0; place < all; place += 1) {
      const way = this.ways[place] as number;
      if (compiled.concealed[way] !== 0 || !holdsGroups(groups[way * KIND_COUNT + kind] as number, wanted)) continue;
      this.ways[this.length] = way;
      this.length += 1;
    }
    this.weighAllAnew();
  }

  /** Gives a tile of `kind` for a joker of an open group, for trial; with -1 takes it back. */
  swap(kind: Kind, by: 1 | -1 = 1): void {
    this.counts[kind] = (this.counts[kind] as number) - by;
    this.counts[JOKER] = (this.counts[JOKER] as number) + by;
    this.weighAllAnew();
  }

  #gather({ hand }: SeatView, limit: number): boolean {
    this.empty();
    const { ways } = this;
    const found = this.#found;
    const end = hand.listWithin(limit, found);
    let length = 0;
    let place = 0;
    for (; place < end && length < MOST_WAYS; place += 1) {
      const way = found[place] as number;
      ways[length] = way;
      length += this.#living.includes(way) ? 1 : 0;
    }
    this.length = length;
    this.weighAll(hand);
    return place === end;
  }

  /** Lays a group down for trial, or takes it back with negative numbers. */
  #lay(kind: number, size: number, jokers: number): void {
    const called = Math.sign(size);
    this.counts[kind] = (this.counts[kind] as number) - (size - called - jokers);
    this.counts[JOKER] = (this.counts[JOKER] as number) - jokers;
    this.exposed[kind] = (this.exposed[kind] as number) + size;
  }
}
