import { JOKER, KIND_COUNT, type Kind } from '../tiles/kinds.ts';
import { countShortages, type Shortages } from './shortages.ts';
import { NO_WAY, type TableCard, touchAt } from './table-card.ts';

/** Aways lie four to a word, so that several at a time can be asked whether one is small. */
const FOUR_ONES = 0x01010101;
const HIGH_BITS = 0x80808080 | 0;
/** Scratch memory: what was counted last. */
const SHORT: Shortages = { plain: 0, wild: 0 };

/**
 * A rack at the simulated table, every way's away kept up to date tile by tile. Mutable and made of typed arrays,
 * because the simulated table changes it some hundred times a game.
 */
export class TableRack {
  readonly counts = new Uint8Array(KIND_COUNT);
  /** Tiles of each kind laid open beside it; always 0 for a rack alone. */
  readonly exposed = new Uint8Array(KIND_COUNT);
  readonly wildShort: Int8Array;
  size = 0;
  protected readonly card: TableCard;
  protected readonly aways: Uint8Array;
  /** The same memory as `aways`. */
  readonly #words: Int32Array;
  /** The smallest away; not known to be more than a lower bound once one of the nearest ways went farther. */
  #least: number;
  #isLeastKnown: boolean;

  constructor(card: TableCard) {
    this.card = card;
    this.#words = new Int32Array(4 * Math.ceil(card.compiled.wayCount / 16));
    this.aways = new Uint8Array(this.#words.buffer).fill(NO_WAY);
    this.aways.set(card.allAway);
    this.wildShort = card.allWild.slice();
    this.#least = card.leastAway;
    this.#isLeastKnown = true;
  }

  /** Back to an empty rack. */
  clear(): void {
    this.counts.fill(0);
    this.aways.set(this.card.allAway);
    this.wildShort.set(this.card.allWild);
    this.size = 0;
    this.#least = this.card.leastAway;
    this.#isLeastKnown = true;
  }

  /** Becomes like another rack of the same card; nothing lies open beside either. */
  copy(other: TableRack): void {
    this.clear();
    this.counts.set(other.counts);
    this.aways.set(other.aways);
    this.wildShort.set(other.wildShort);
    this.size = other.size;
    this.#least = other.#least;
    this.#isLeastKnown = other.#isLeastKnown;
  }

  add(kind: Kind): void {
    const count = this.counts[kind] as number;
    this.counts[kind] = count + 1;
    this.size += 1;
    if (kind === JOKER) this.#shiftAll(count, -1);
    else if (this.exposed[kind] === 0) this.#bringNearer(touchAt(kind, count));
    else this.#shiftUsers(kind, count, -1);
  }

  remove(kind: Kind): void {
    const count = (this.counts[kind] as number) - 1;
    this.counts[kind] = count;
    this.size -= 1;
    if (kind === JOKER) this.#shiftAll(count, 1);
    else if (this.exposed[kind] === 0) this.#takeFarther(touchAt(kind, count));
    else this.#shiftUsers(kind, count, 1);
  }

  awayOf(way: number): number {
    return this.aways[way] as number;
  }

  plainShortOf(way: number): number {
    const beyond = (this.wildShort[way] as number) - (this.counts[JOKER] as number);
    return (this.aways[way] as number) - Math.max(0, beyond);
  }

  least(): number {
    if (this.#isLeastKnown) return this.#least;
    while (this.#least < NO_WAY && this.nextWithin(this.#least, 0) < 0) this.#least += 1;
    this.#isLeastKnown = true;
    return this.#least;
  }

  listWithin(limit: number, into: Int32Array): number {
    const aways = this.aways;
    const words = this.#words;
    const lift = (NO_WAY - limit) * FOUR_ONES;
    let length = 0;
    for (let word = 0; word < words.length; word += 4) {
      const far =
        ((words[word] as number) + lift) &
        ((words[word + 1] as number) + lift) &
        ((words[word + 2] as number) + lift) &
        ((words[word + 3] as number) + lift);
      if ((far & HIGH_BITS) === HIGH_BITS) continue;
      const end = (word << 2) + 16;
      for (let way = word << 2; way < end; way += 1) {
        if ((aways[way] as number) > limit) continue;
        into[length] = way;
        length += 1;
      }
    }
    return length;
  }

  nextWithin(limit: number, from: number): number {
    const aways = this.aways;
    const words = this.#words;
    let way = from;
    for (; (way & 3) !== 0; way += 1) if ((aways[way] as number) <= limit) return way;
    // A byte stays below its high bit only if its away is at most the limit.
    const lift = (NO_WAY - limit) * FOUR_ONES;
    for (let word = way >> 2; word < words.length; word += 1) {
      if ((((words[word] as number) + lift) & HIGH_BITS) === HIGH_BITS) continue;
      way = word << 2;
      while ((aways[way] as number) > limit) way += 1;
      return way;
    }
    return -1;
  }

  /** Aways move by at most `by`, nobody knows which. */
  protected lowerLeast(by: number): void {
    this.#least += Math.min(0, by);
    this.#isLeastKnown = false;
  }

  protected recount(way: number): void {
    countShortages(this.card, way, this.counts, this.exposed, SHORT);
    this.wildShort[way] = SHORT.wild;
    this.aways[way] = SHORT.plain + Math.max(0, SHORT.wild - (this.counts[JOKER] as number));
  }

  #bringNearer(at: number): void {
    const { touched, touchStarts } = this.card;
    const { wildShort } = this;
    const aways = this.aways;
    const jokers = this.counts[JOKER] as number;
    const middle = touchStarts[at + 1] as number;
    const end = touchStarts[at + 2] as number;
    let least = this.#least;
    let place = touchStarts[at] as number;
    for (; place < middle; place += 1) {
      const way = touched[place] as number;
      const away = (aways[way] as number) - 1;
      aways[way] = away;
      if (away < least) least = away;
    }
    for (; place < end; place += 1) {
      const way = touched[place] as number;
      const short = wildShort[way] as number;
      wildShort[way] = short - 1;
      if (short <= jokers) continue;
      const away = (aways[way] as number) - 1;
      aways[way] = away;
      if (away < least) least = away;
    }
    this.#least = least;
  }

  /** The smallest away is no longer known if one of the nearest ways is among them. */
  #takeFarther(at: number): void {
    const { touched, touchStarts } = this.card;
    const { wildShort } = this;
    const aways = this.aways;
    const jokers = this.counts[JOKER] as number;
    const middle = touchStarts[at + 1] as number;
    const end = touchStarts[at + 2] as number;
    const least = this.#least;
    let place = touchStarts[at] as number;
    let isKnown = this.#isLeastKnown;
    for (; place < middle; place += 1) {
      const way = touched[place] as number;
      const away = aways[way] as number;
      aways[way] = away + 1;
      if (away === least) isKnown = false;
    }
    for (; place < end; place += 1) {
      const way = touched[place] as number;
      const short = wildShort[way] as number;
      wildShort[way] = short + 1;
      if (short < jokers) continue;
      const away = aways[way] as number;
      aways[way] = away + 1;
      if (away === least) isKnown = false;
    }
    this.#isLeastKnown = isKnown;
  }

  /** The same both ways for a kind that lies open, where a rack's tiles fill other groups than they would. */
  #shiftUsers(kind: Kind, count: number, by: number): void {
    const { compiled, userPlain, userWild } = this.card;
    const { users, userStarts } = compiled;
    const { wildShort } = this;
    const jokers = this.counts[JOKER] as number;
    const reach = count + (this.exposed[kind] as number);
    const end = userStarts[kind + 1] as number;
    this.lowerLeast(by);
    for (let place = userStarts[kind] as number; place < end; place += 1) {
      const plain = userPlain[place] as number;
      const way = users[place] as number;
      let moves = count < plain;
      if (!moves && reach < plain + (userWild[place] as number)) {
        const short = (wildShort[way] as number) + by;
        wildShort[way] = short;
        moves = (by < 0 ? short + 1 : short) > jokers;
      }
      if (moves) this.aways[way] = (this.aways[way] as number) + by;
    }
  }

  /** A joker comes or goes beside `count` others: it fills the larger groups of every way that is missing more. */
  #shiftAll(count: number, by: number): void {
    const { wildShort } = this;
    const aways = this.aways;
    this.lowerLeast(by);
    for (let way = 0; way < wildShort.length; way += 1) {
      if ((wildShort[way] as number) > count) aways[way] = (aways[way] as number) + by;
    }
  }
}
