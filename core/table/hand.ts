import { JOKER, KIND_COUNT, type Kind } from '../tiles/kinds.ts';
import type { Exposure, HandView } from './hand-view.ts';
import { groupCode, holdsGroups, type TableCard } from './table-card.ts';

/**
 * Added to the away of a way that a hand can't become any more, whatever it draws. The shortages of
 * such a way are no longer kept exact, so ask `isOpen`, not for equality.
 */
export const BARRED = 64;

/** Whether an away belongs to a way that the exposures still fit. */
export function isOpen(away: number): boolean {
  return away < BARRED / 2;
}

/**
 * One seat's rack and exposures, every way's shortage kept up to date tile by tile. Mutable and
 * made of typed arrays, because the simulated table changes it some hundred times a game.
 */
export class Hand implements HandView {
  readonly counts = new Uint8Array(KIND_COUNT);
  readonly exposed = new Uint8Array(KIND_COUNT);
  readonly exposedGroups = new Uint8Array(KIND_COUNT);
  readonly plainShort: Int8Array;
  readonly wildShort: Int8Array;
  readonly barred: Uint8Array;
  exposures: Exposure[] = [];
  size = 0;
  readonly #card: TableCard;
  #least = -1;

  constructor(card: TableCard) {
    this.#card = card;
    this.plainShort = new Int8Array(card.compiled.wayCount);
    this.wildShort = new Int8Array(card.compiled.wayCount);
    this.barred = new Uint8Array(card.compiled.wayCount);
    this.clear();
  }

  /** Back to an empty rack without exposures. */
  clear(): void {
    this.counts.fill(0);
    this.exposed.fill(0);
    this.exposedGroups.fill(0);
    this.barred.fill(0);
    this.plainShort.set(this.#card.allPlain);
    this.wildShort.set(this.#card.allWild);
    this.exposures = [];
    this.size = 0;
    this.#least = -1;
  }

  add(kind: Kind): void {
    const count = this.counts[kind] as number;
    this.counts[kind] = count + 1;
    this.size += 1;
    this.#least = -1;
    this.#shift(kind, count, -1);
  }

  remove(kind: Kind): void {
    const count = (this.counts[kind] as number) - 1;
    this.counts[kind] = count;
    this.size -= 1;
    this.#least = -1;
    this.#shift(kind, count, 1);
  }

  awayOf(way: number): number {
    const wild = (this.wildShort[way] as number) - (this.counts[JOKER] as number);
    return (this.plainShort[way] as number) + (wild > 0 ? wild : 0) + (this.barred[way] as number);
  }

  least(): number {
    if (this.#least >= 0) return this.#least;
    const { plainShort, wildShort, barred } = this;
    const jokers = this.counts[JOKER] as number;
    let least = 2 * BARRED;
    for (let way = 0; way < plainShort.length; way += 1) {
      const wild = (wildShort[way] as number) - jokers;
      const away = (plainShort[way] as number) + (wild > 0 ? wild : 0) + (barred[way] as number);
      if (away < least) least = away;
    }
    this.#least = least;
    return least;
  }

  /** Whether `kind` as the 14th tile makes a hand; a joker, which no group asks for by itself, is not looked at. */
  winsWith(kind: Kind): boolean {
    if (this.least() !== 1) return false;
    const { users, userStarts } = this.#card.compiled;
    const end = userStarts[kind + 1] as number;
    for (let place = userStarts[kind] as number; place < end; place += 1) {
      if (this.awayOf(users[place] as number) === 1 && this.#helps(place, kind)) return true;
    }
    return false;
  }

  /** The way of most points that the 14 tiles make; -1 if they make none. */
  completed(): number {
    const { points } = this.#card;
    let best = -1;
    for (let way = 0; way < this.plainShort.length; way += 1) {
      if (this.awayOf(way) === 0 && (best < 0 || (points[way] as number) > (points[best] as number))) best = way;
    }
    return best;
  }

  mayExpose(kind: Kind, size: number): boolean {
    const { users, userStarts, concealed } = this.#card.compiled;
    const wanted = (this.exposedGroups[kind] as number) + groupCode(size);
    const end = userStarts[kind + 1] as number;
    for (let place = userStarts[kind] as number; place < end; place += 1) {
      const way = users[place] as number;
      if (this.barred[way] !== 0 || concealed[way] !== 0) continue;
      if (holdsGroups(this.#card.groups[way * KIND_COUNT + kind] as number, wanted)) return true;
    }
    return false;
  }

  /** Lays down a group: `called` is the discard among it, `jokers` of the rest are jokers, all others natural. */
  expose(kind: Kind, size: number, jokers: number): void {
    const naturals = size - 1 - jokers;
    this.counts[kind] = (this.counts[kind] as number) - naturals;
    this.counts[JOKER] = (this.counts[JOKER] as number) - jokers;
    this.size -= naturals + jokers;
    this.exposures = [...this.exposures, { kind, size, jokers }];
    this.exposed[kind] = (this.exposed[kind] as number) + size;
    this.exposedGroups[kind] = (this.exposedGroups[kind] as number) + groupCode(size);
    this.#least = -1;
    this.#barAllBut(kind);
  }

  /** Puts a natural tile in the place of a joker of an exposure; the joker is taken by whoever swaps. */
  giveUpJoker(place: number): void {
    this.exposures = this.exposures.map((each, at) => (at === place ? { ...each, jokers: each.jokers - 1 } : each));
  }

  /** A tile of `kind` comes or goes beside `count` others; for a joker nothing changes, because no way asks for one. */
  #shift(kind: Kind, count: number, by: number): void {
    const { compiled, userPlain, userWild } = this.#card;
    const { users, userStarts } = compiled;
    const { plainShort, wildShort } = this;
    const reach = count + (this.exposed[kind] as number);
    const end = userStarts[kind + 1] as number;
    for (let place = userStarts[kind] as number; place < end; place += 1) {
      const plain = userPlain[place] as number;
      const way = users[place] as number;
      if (count < plain) plainShort[way] = (plainShort[way] as number) + by;
      else if (reach < plain + (userWild[place] as number)) wildShort[way] = (wildShort[way] as number) + by;
    }
  }

  #helps(place: number, kind: Kind): boolean {
    const count = this.counts[kind] as number;
    const plain = this.#card.userPlain[place] as number;
    if (count < plain) return true;
    const wild = (this.#card.userWild[place] as number) - (this.exposed[kind] as number);
    const way = this.#card.compiled.users[place] as number;
    return count - plain < wild && (this.wildShort[way] as number) > (this.counts[JOKER] as number);
  }

  #barAllBut(kind: Kind): void {
    const { compiled, groups } = this.#card;
    const { users, userStarts, concealed } = compiled;
    const before = this.barred.slice();
    this.barred.fill(BARRED);
    const wanted = this.exposedGroups[kind] as number;
    const end = userStarts[kind + 1] as number;
    for (let place = userStarts[kind] as number; place < end; place += 1) {
      const way = users[place] as number;
      const held = groups[way * KIND_COUNT + kind] as number;
      if (before[way] !== 0 || concealed[way] !== 0 || !holdsGroups(held, wanted)) continue;
      this.barred[way] = 0;
      this.#recount(way);
    }
  }

  #recount(way: number): void {
    const { starts, needKind, needPlain, needWild } = this.#card.compiled;
    let plainShort = 0;
    let wildShort = 0;
    const end = starts[way + 1] as number;
    for (let place = starts[way] as number; place < end; place += 1) {
      const kind = needKind[place] as number;
      const wild = (needWild[place] as number) - (this.exposed[kind] as number);
      const over = (this.counts[kind] as number) - (needPlain[place] as number);
      if (over < 0) plainShort -= over;
      wildShort += Math.max(0, wild - Math.max(0, over));
    }
    this.plainShort[way] = plainShort;
    this.wildShort[way] = wildShort;
  }
}
