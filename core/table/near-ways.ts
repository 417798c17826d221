import { JOKER, KIND_COUNT } from '../tiles/kinds.ts';
import type { SeatView } from './policy.ts';
import { groupCode, holdsGroups, type TableCard } from './table-card.ts';
import type { TrialRack, Weigher } from './weigher.ts';

/** Near ways kept at once. On the demo card a rack has some dozens; beyond the limit the farthest are left out. */
const MOST = 1024;

/**
 * The living ways near to a rack, each with a weight, and a copy of the rack from which tiles can
 * be taken for trial. A way is living if the tiles that the seat can't see could still complete it.
 * Scratch memory of a policy: filled anew at each decision.
 */
export class NearWays implements TrialRack {
  length = 0;
  readonly ways = new Int32Array(MOST);
  readonly weights = new Float64Array(MOST);
  /** The rack less what was taken for trial. */
  readonly counts = new Uint8Array(KIND_COUNT);
  /** Tiles of own exposures. */
  readonly exposed = new Uint8Array(KIND_COUNT);
  readonly unseen = new Uint8Array(KIND_COUNT);
  readonly #plainShort = new Int8Array(MOST);
  readonly #wildShort = new Int8Array(MOST);
  readonly #card: TableCard;
  readonly #weigh: Weigher;

  constructor(card: TableCard, weigh: Weigher) {
    this.#card = card;
    this.#weigh = weigh;
  }

  /** Gathers the living ways at most `margin` tiles behind the nearest; more if none of these lives. None of a dead hand. */
  collect(view: SeatView, margin: number): void {
    for (let kind = 0; kind < KIND_COUNT; kind += 1) {
      this.counts[kind] = view.hand.counts[kind] as number;
      this.exposed[kind] = view.hand.exposed[kind] as number;
      this.unseen[kind] = view.unseen(kind);
    }
    const least = view.hand.least();
    this.length = 0;
    for (let limit = least + margin; limit <= 14 + margin && this.length === 0; limit += 1) {
      let tried = limit;
      while (!this.#gather(view, tried) && tried > least) tried -= 1;
    }
  }

  /** What the near ways weigh together. */
  total(): number {
    let sum = 0;
    for (let place = 0; place < this.length; place += 1) sum += this.weights[place] as number;
    return sum;
  }

  /** The place of the heaviest way; -1 if there is none. */
  heaviest(): number {
    let best = -1;
    for (let place = 0; place < this.length; place += 1) {
      if (best < 0 || (this.weights[place] as number) > (this.weights[best] as number)) best = place;
    }
    return best;
  }

  /** Adds to `into`, for each kind of the rack, the weight that the near ways lose with one tile of it. */
  addLosses(into: Float64Array): void {
    const { starts, needKind } = this.#card.compiled;
    for (let place = 0; place < this.length; place += 1) {
      const way = this.ways[place] as number;
      const end = starts[way + 1] as number;
      for (let need = starts[way] as number; need < end; need += 1) {
        const kind = needKind[need] as number;
        const loss = this.#lossOf(place, need, kind);
        if (loss > 0) into[kind] = (into[kind] as number) + loss;
      }
    }
  }

  /** Whether the way at `place` would lose by one tile of `kind` less. */
  uses(place: number, kind: number): boolean {
    const { starts, needKind } = this.#card.compiled;
    const way = this.ways[place] as number;
    const end = starts[way + 1] as number;
    for (let need = starts[way] as number; need < end; need += 1) {
      if (needKind[need] === kind) return this.#lossOf(place, need, kind) > 0;
    }
    return false;
  }

  /** Takes one tile of `kind` from the trial rack; no joker. */
  take(kind: number): void {
    const { plain, wild } = this.#card.compiled;
    const left = (this.counts[kind] as number) - 1;
    this.counts[kind] = left;
    for (let place = 0; place < this.length; place += 1) {
      const need = (this.ways[place] as number) * KIND_COUNT + kind;
      const needPlain = plain[need] as number;
      const wanted = needPlain + (wild[need] as number) - (this.exposed[kind] as number);
      if (left >= wanted) continue;
      if (left < needPlain) this.#plainShort[place] = (this.#plainShort[place] as number) + 1;
      else this.#wildShort[place] = (this.#wildShort[place] as number) + 1;
      this.#reweigh(place);
    }
  }

  /**
   * What the near ways weigh once `size` tiles of `kind` are exposed, the called one, `jokers` jokers
   * and naturals: only those that are open and hold such a group still to expose.
   */
  totalAfterCall(view: SeatView, kind: number, size: number, jokers: number): number {
    const { groups, compiled } = this.#card;
    const wanted = (view.hand.exposedGroups[kind] as number) + groupCode(size);
    this.#lay(kind, size, jokers);
    let sum = 0;
    for (let place = 0; place < this.length; place += 1) {
      const way = this.ways[place] as number;
      if (compiled.concealed[way] !== 0 || !holdsGroups(groups[way * KIND_COUNT + kind] as number, wanted)) continue;
      sum += this.#weighAnew(way);
    }
    this.#lay(kind, -size, -jokers);
    return sum;
  }

  /** Natural tiles of `kind` that the way at `place` must keep for its singles and pairs. */
  plainNeed(place: number, kind: number): number {
    return this.#card.compiled.plain[(this.ways[place] as number) * KIND_COUNT + kind] as number;
  }

  #gather(view: SeatView, limit: number): boolean {
    const { plainShort, wildShort, barred, counts } = view.hand;
    const jokers = counts[JOKER] as number;
    const { wayCount } = this.#card.compiled;
    this.length = 0;
    for (let way = 0; way < wayCount; way += 1) {
      const wild = (wildShort[way] as number) - jokers;
      const away = (plainShort[way] as number) + (wild > 0 ? wild : 0) + (barred[way] as number);
      if (away > limit || !this.#lives(way)) continue;
      if (this.length === MOST) return false;
      this.ways[this.length] = way;
      this.#plainShort[this.length] = plainShort[way] as number;
      this.#wildShort[this.length] = wildShort[way] as number;
      this.#reweigh(this.length);
      this.length += 1;
    }
    return true;
  }

  #lives(way: number): boolean {
    const { starts, needKind, needPlain, needWild } = this.#card.compiled;
    const { counts } = this;
    const unseen = this.unseen;
    const exposed = this.exposed;
    let jokers = (counts[JOKER] as number) + (unseen[JOKER] as number);
    const end = starts[way + 1] as number;
    for (let need = starts[way] as number; need < end; need += 1) {
      const kind = needKind[need] as number;
      const over = (counts[kind] as number) + (unseen[kind] as number) - (needPlain[need] as number);
      if (over < 0) return false;
      const short = (needWild[need] as number) - (exposed[kind] as number) - over;
      if (short > 0) jokers -= short;
    }
    return jokers >= 0;
  }

  #lossOf(place: number, need: number, kind: number): number {
    const { needPlain, needWild } = this.#card.compiled;
    const count = this.counts[kind] as number;
    if (count === 0) return 0;
    const plain = needPlain[need] as number;
    const wanted = plain + (needWild[need] as number) - (this.exposed[kind] as number);
    const beyond = this.#beyondJokers(place);
    if (count > plain && (count > wanted || beyond < 0)) return 0;
    const short = this.#plainShort[place] as number;
    const way = this.ways[place] as number;
    this.counts[kind] = count - 1;
    const weight =
      count <= plain
        ? this.#weigh(way, short + 1, Math.max(0, beyond), this)
        : this.#weigh(way, short, beyond + 1, this);
    this.counts[kind] = count;
    return (this.weights[place] as number) - weight;
  }

  /** What the larger groups lack after all jokers of the rack; negative if jokers are to spare. */
  #beyondJokers(place: number): number {
    return (this.#wildShort[place] as number) - (this.counts[JOKER] as number);
  }

  #reweigh(place: number): void {
    const beyond = Math.max(0, this.#beyondJokers(place));
    this.weights[place] = this.#weigh(this.ways[place] as number, this.#plainShort[place] as number, beyond, this);
  }

  /** Lays a group down for trial, or takes it back with negative numbers. */
  #lay(kind: number, size: number, jokers: number): void {
    const called = Math.sign(size);
    this.counts[kind] = (this.counts[kind] as number) - (size - called - jokers);
    this.counts[JOKER] = (this.counts[JOKER] as number) - jokers;
    this.exposed[kind] = (this.exposed[kind] as number) + size;
  }

  #weighAnew(way: number): number {
    const { starts, needKind, needPlain, needWild } = this.#card.compiled;
    let plainShort = 0;
    let wildShort = -(this.counts[JOKER] as number);
    const end = starts[way + 1] as number;
    for (let need = starts[way] as number; need < end; need += 1) {
      const kind = needKind[need] as number;
      const over = (this.counts[kind] as number) - (needPlain[need] as number);
      if (over < 0) plainShort -= over;
      wildShort += Math.max(0, (needWild[need] as number) - (this.exposed[kind] as number) - Math.max(0, over));
    }
    return this.#weigh(way, plainShort, Math.max(0, wildShort), this);
  }
}
