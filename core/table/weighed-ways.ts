import { JOKER, KIND_COUNT } from '../tiles/kinds.ts';
import type { SeatHand } from './policy.ts';
import { countShortages, type Shortages } from './shortages.ts';
import { needKindOf, type TableCard, USE, useOf } from './table-card.ts';
import { type ShortageWeights, type TrialRack, USES, type Weigher } from './weights.ts';

/** Ways kept at once. */
export const MOST_WAYS = 1024;
/** Scratch memory: what was counted last. */
const SHORT: Shortages = { plain: 0, wild: 0 };
/** Kinds of a way at most. */
const KINDS_OF_WAY = 14;

/**
 * A list of ways, each with its weight for a rack from which tiles can be taken for trial.
 */
export class WeighedWays implements TrialRack {
  length = 0;
  readonly ways = new Int32Array(MOST_WAYS);
  readonly weights = new Float64Array(MOST_WAYS);
  /** The rack less what was taken for trial. */
  readonly counts = new Uint8Array(KIND_COUNT);
  /** Tiles of own exposures. */
  readonly exposed = new Uint8Array(KIND_COUNT);
  readonly unseen: Uint8Array;
  protected readonly card: TableCard;
  readonly #plainShort = new Int8Array(MOST_WAYS);
  readonly #wildShort = new Int8Array(MOST_WAYS);
  readonly #weigh: Weigher;
  /** The weights by the two shortages, if these are all that a weight depends on; with it, for each way its place there. */
  readonly #table: ShortageWeights | undefined;
  readonly #tableAt = new Int16Array(MOST_WAYS);
  /** Without such a table: what each way loses by each kind, and whether that still holds. */
  readonly #wayLosses: Float64Array;
  readonly #isKept = new Uint8Array(MOST_WAYS);
  readonly #losses = new Float64Array(KIND_COUNT);
  #areLossesKnown = false;

  /** `unseen`: 36 counts, which the owner keeps up to date. */
  constructor(card: TableCard, weights: Weigher | ShortageWeights, unseen: Uint8Array) {
    this.card = card;
    this.unseen = unseen;
    this.#table = typeof weights === 'function' ? undefined : weights;
    this.#weigh = typeof weights === 'function' ? weights : () => 0;
    this.#wayLosses = new Float64Array(typeof weights === 'function' ? MOST_WAYS * KINDS_OF_WAY : 0);
  }

  /** Begins anew without ways, with a rack and what is exposed beside it. */
  protected begin(counts: ArrayLike<number>, exposed: ArrayLike<number>): void {
    this.counts.set(counts);
    this.exposed.set(exposed);
    this.empty();
  }

  /** Leaves out all ways. */
  protected empty(): void {
    this.length = 0;
    this.#areLossesKnown = false;
  }

  /** Weighs all ways for the rack of a hand, by the shortages that it keeps. */
  protected weighAll(hand: SeatHand): void {
    const table = this.#table;
    const jokers = this.counts[JOKER] as number;
    for (let place = 0; place < this.length; place += 1) {
      const way = this.ways[place] as number;
      const wild = hand.wildShort[way] as number;
      const beyond = wild - jokers;
      const plain = hand.awayOf(way) - Math.max(0, beyond);
      this.#plainShort[place] = plain;
      this.#wildShort[place] = wild;
      this.#isKept[place] = 0;
      if (table === undefined) {
        this.weights[place] = this.#weigh(way, plain, Math.max(0, beyond), this);
      } else {
        const at = table.at(plain, beyond);
        this.#tableAt[place] = at;
        this.weights[place] = table.weights[at] as number;
      }
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

  /** For each kind of the rack the weight that the near ways lose with one tile of it; the same array each time. */
  losses(): Float64Array {
    if (this.#areLossesKnown) return this.#losses;
    this.#losses.fill(0);
    if (this.#table === undefined) this.#addLossesByRack();
    else this.#addLossesByShortages(this.#table);
    this.#areLossesKnown = true;
    return this.#losses;
  }

  /** Whether the way at `place` would lose by one tile of `kind` less. */
  uses(place: number, kind: number): boolean {
    const { needs, compiled } = this.card;
    const { starts } = compiled;
    const way = this.ways[place] as number;
    const end = starts[way + 1] as number;
    for (let at = starts[way] as number; at < end; at += 1) {
      const need = needs[at] as number;
      if (needKindOf(need) === kind) return this.#lossOf(place, need) > 0;
    }
    return false;
  }

  /** Natural tiles of `kind` that the way at `place` must keep for its singles and pairs. */
  plainNeed(place: number, kind: number): number {
    return this.card.compiled.plain[(this.ways[place] as number) * KIND_COUNT + kind] as number;
  }

  /** Takes one tile of `kind` from the trial rack; no joker. */
  take(kind: number): void {
    const { plain, wild } = this.card.compiled;
    const left = (this.counts[kind] as number) - 1;
    this.counts[kind] = left;
    // Nothing else changes when the last tile of a kind goes that no near way uses.
    if (left > 0) this.#areLossesKnown = false;
    for (let place = 0; place < this.length; place += 1) {
      const need = (this.ways[place] as number) * KIND_COUNT + kind;
      const needPlain = plain[need] as number;
      const wanted = needPlain + (wild[need] as number) - (this.exposed[kind] as number);
      if (wanted > 0) this.#isKept[place] = 0;
      if (left >= wanted) continue;
      this.#areLossesKnown = false;
      if (left < needPlain) this.#plainShort[place] = (this.#plainShort[place] as number) + 1;
      else this.#wildShort[place] = (this.#wildShort[place] as number) + 1;
      this.#reweigh(place);
    }
  }

  /** Whether the trial rack and the exposures make one of the near ways. */
  isComplete(): boolean {
    for (let place = 0; place < this.length; place += 1) {
      if (this.#plainShort[place] === 0 && this.#beyondJokers(place) <= 0) return true;
    }
    return false;
  }

  /** The weight that the near ways lose with one joker of the trial rack. */
  jokerLoss(): number {
    const jokers = this.counts[JOKER] as number;
    const before = this.total();
    let after = 0;
    this.counts[JOKER] = jokers - 1;
    for (let place = 0; place < this.length; place += 1) {
      const beyond = this.#beyondJokers(place);
      after += this.#weightOf(this.ways[place] as number, this.#plainShort[place] as number, beyond);
    }
    this.counts[JOKER] = jokers;
    return before - after;
  }

  protected moveTo(place: number, from: number): void {
    this.ways[place] = this.ways[from] as number;
    this.weights[place] = this.weights[from] as number;
    this.#plainShort[place] = this.#plainShort[from] as number;
    this.#wildShort[place] = this.#wildShort[from] as number;
    this.#tableAt[place] = this.#tableAt[from] as number;
  }

  protected weighAllAnew(): void {
    this.#areLossesKnown = false;
    for (let place = 0; place < this.length; place += 1) {
      countShortages(this.card, this.ways[place] as number, this.counts, this.exposed, SHORT);
      this.#plainShort[place] = SHORT.plain;
      this.#wildShort[place] = SHORT.wild;
      this.#isKept[place] = 0;
      this.#reweigh(place);
    }
  }

  protected weighAnew(way: number): number {
    countShortages(this.card, way, this.counts, this.exposed, SHORT);
    return this.#weightOf(way, SHORT.plain, SHORT.wild - (this.counts[JOKER] as number));
  }

  #reweigh(place: number): void {
    const short = this.#plainShort[place] as number;
    const beyond = this.#beyondJokers(place);
    if (this.#table !== undefined) this.#tableAt[place] = this.#table.at(short, beyond);
    this.weights[place] = this.#weightOf(this.ways[place] as number, short, beyond);
  }

  #weightOf(way: number, plainShort: number, beyond: number): number {
    const table = this.#table;
    if (table !== undefined) return table.weights[table.at(plainShort, beyond)] as number;
    return this.#weigh(way, plainShort, Math.max(0, beyond), this);
  }

  /** What is missing in the larger groups after all jokers of the rack; negative if jokers are to spare. */
  #beyondJokers(place: number): number {
    return (this.#wildShort[place] as number) - (this.counts[JOKER] as number);
  }

  /** By tables, for the ways in order: each way has one loss for each use of a tile. */
  #addLossesByShortages({ losses }: ShortageWeights): void {
    const { needs, compiled } = this.card;
    const { starts } = compiled;
    const { counts, exposed, ways, length } = this;
    const tableAt = this.#tableAt;
    const into = this.#losses;
    for (let place = 0; place < length; place += 1) {
      const way = ways[place] as number;
      const row = USES * (tableAt[place] as number);
      const end = starts[way + 1] as number;
      for (let at = starts[way] as number; at < end; at += 1) {
        const need = needs[at] as number;
        const kind = needKindOf(need);
        const use = useOf(need, exposed[kind] as number, counts[kind] as number);
        into[kind] = (into[kind] as number) + (losses[row + use] as number);
      }
    }
  }

  #addLossesByRack(): void {
    const { needs, compiled } = this.card;
    const { starts } = compiled;
    const into = this.#losses;
    for (let place = 0; place < this.length; place += 1) {
      const way = this.ways[place] as number;
      const start = starts[way] as number;
      const length = (starts[way + 1] as number) - start;
      for (let at = 0; at < length; at += 1) {
        const need = needs[start + at] as number;
        const kept = KINDS_OF_WAY * place + at;
        if (this.#isKept[place] === 0) this.#wayLosses[kept] = this.#lossOf(place, need);
        const loss = this.#wayLosses[kept] as number;
        if (loss > 0) into[needKindOf(need)] = (into[needKindOf(need)] as number) + loss;
      }
      this.#isKept[place] = 1;
    }
  }

  #lossOf(place: number, need: number): number {
    const kind = needKindOf(need);
    const count = this.counts[kind] as number;
    const use = useOf(need, this.exposed[kind] as number, count);
    const beyond = this.#beyondJokers(place);
    if (use === USE.none || (use === USE.wild && beyond < 0)) return 0;
    const short = this.#plainShort[place] as number;
    const way = this.ways[place] as number;
    this.counts[kind] = count - 1;
    const weight = use === USE.plain ? this.#weightOf(way, short + 1, beyond) : this.#weightOf(way, short, beyond + 1);
    this.counts[kind] = count;
    return (this.weights[place] as number) - weight;
  }
}
