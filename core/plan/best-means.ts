import type { Kind } from '../tiles/kinds.ts';
import { FutureLists } from './future-lists.ts';
import type { Futures } from './futures.ts';
import { type Incoming, meanOfBest } from './incoming.ts';
import { MULTISETS } from './multisets.ts';
import { TAKES, type WayTakes } from './way-takes.ts';

/** Ways and passes are worked off in portions of this many, a few milliseconds each. */
const WAY_PORTION = 64;
const PASS_PORTION = 4;

/** Lists of futures are kept up to so many entries, some three megabytes. */
const MOST_ENTRIES = 1 << 18;

/** What a table of passes is made from. */
export interface PassWork {
  readonly wayCount: number;
  /** The rack's 36 counts. */
  readonly counts: Uint8Array;
  readonly passes: readonly (readonly Kind[])[];
  readonly takes: WayTakes;
  /** What may come in, by one or more laws; a mean is taken over each. */
  readonly incomings: readonly Incoming[];
}

/**
 * The exact mean, for each pass and over what may come in, of the best value over all ways, under
 * one kind of value; one list for each law of what comes in. Yields the part done, 0 to 1.
 *
 * The best value for a multiset of incoming tiles is the largest that any part of it gives to any
 * way, so that one table by multisets does it (incoming.ts). Only these entries are put in:
 *
 * - from ways that, with the tiles most welcome to them, would exceed the pass's floor, which is
 *   the best value over all ways if nothing came in. A way that can't exceed the floor changes no
 *   entry, because every entry is at least the floor. What a way can't exceed without the pass it
 *   can't exceed after it either: taking tiles never raises a value.
 * - entries above the floor.
 *
 * Passes that take the same tiles from a way share its list of futures. Lists of more than `mostEntries`
 * entries in all are put into a table for each pass.
 */
export function* bestMeans(
  work: PassWork,
  futures: Futures,
  mostEntries = MOST_ENTRIES,
): Generator<number, Float64Array[]> {
  const means = new BestMeans(work, futures, mostEntries);
  for (let way = 0; way < work.wayCount; way += WAY_PORTION) {
    means.value(way, Math.min(work.wayCount, way + WAY_PORTION));
    yield (0.1 * way) / work.wayCount;
  }
  const order = means.findFloors();
  for (let place = 0; place < order.length; place += WAY_PORTION) {
    for (const way of order.subarray(place, place + WAY_PORTION)) means.list(way);
    yield 0.1 + (0.5 * place) / order.length;
  }
  const answer = work.incomings.map(() => new Float64Array(work.passes.length));
  for (let pass = 0; pass < work.passes.length; pass += 1) {
    for (const [place, mean] of means.meansOf(pass).entries()) (answer[place] as Float64Array)[pass] = mean;
    if (pass % PASS_PORTION === PASS_PORTION - 1) yield 0.6 + (0.4 * pass) / work.passes.length;
  }
  return answer;
}

class BestMeans {
  readonly #work: PassWork;
  readonly #futures: Futures;
  readonly #mostEntries: number;
  /** The passes' kinds, three each, zeros in front. */
  readonly #flat: Uint8Array;
  readonly #kept: Uint8Array;
  /** By way: its value before the pass. */
  readonly #now: Float64Array;
  /** By pass: the best value if nothing came in. */
  readonly #floors: Float64Array;
  #lowestFloor = -1;
  readonly #lists = new FutureLists();
  /** By pass, the numbers of its lists. */
  readonly #listsOf: readonly number[][];
  /** Work space for the table of one pass. */
  readonly #table = new Float64Array(MULTISETS);
  /** The tables of all passes, once a large card has more lists than are kept. */
  #tables: Float64Array | undefined;

  constructor(work: PassWork, futures: Futures, mostEntries: number) {
    this.#work = work;
    this.#mostEntries = mostEntries;
    this.#futures = futures;
    this.#kept = work.counts.slice();
    this.#flat = new Uint8Array(3 * work.passes.length);
    for (const [pass, kinds] of work.passes.entries()) this.#flat.set(kinds, 3 * pass + 3 - kinds.length);
    this.#now = new Float64Array(work.wayCount);
    this.#floors = new Float64Array(work.passes.length);
    this.#listsOf = Array.from(work.passes, () => []);
  }

  value(from: number, to: number): void {
    for (let way = from; way < to; way += 1) this.#now[way] = this.#futures.now(way, this.#work.counts);
  }

  /** Gives the ways, best first; when one's value before the pass is under every floor, no later one raises any. */
  findFloors(): Uint32Array {
    const { takes, passes } = this.#work;
    const order = new Uint32Array(this.#now.length).map((_, way) => way);
    order.sort((one, other) => (this.#now[other] as number) - (this.#now[one] as number));
    const known = new Float64Array(TAKES);
    for (const way of order) {
      if ((this.#now[way] as number) <= this.#lowestFloor) break;
      known.fill(-1);
      takes.setWay(way);
      for (let pass = 0; pass < passes.length; pass += 1) {
        const take = takes.takeOf(this.#flat, 3 * pass);
        if ((known[take] as number) < 0) known[take] = this.#futures.now(way, this.#keptAfter(pass));
        if ((known[take] as number) > (this.#floors[pass] as number)) this.#floors[pass] = known[take] as number;
      }
      this.#lowestFloor = this.#floors.reduce((least, floor) => Math.min(least, floor), Infinity);
    }
    return order;
  }

  /** The futures of one way after each pass, as far as they may matter to it. */
  list(way: number): void {
    const { takes, passes, counts } = this.#work;
    if (this.#futures.bound(way, counts) <= this.#lowestFloor) return;
    const whole = this.#keepList(way, counts);
    // Not the list alone: it is empty where nothing more helps, and yet what is given away may come back.
    const most = Math.max(this.#now[way] as number, this.#lists.largest(whole));
    if (most <= this.#lowestFloor) return;
    const bounds = new Map<number, number>();
    const lists = new Map<number, number>([[0, whole]]);
    takes.setWay(way);
    for (let pass = 0; pass < passes.length; pass += 1) {
      const floor = this.#floors[pass] as number;
      if (most <= floor) continue;
      const take = takes.takeOf(this.#flat, 3 * pass);
      if (this.#boundOf(bounds, take, way, pass) <= floor) continue;
      let list = lists.get(take);
      if (list === undefined) {
        list = this.#keepList(way, this.#keptAfter(pass));
        lists.set(take, list);
      }
      (this.#listsOf[pass] as number[]).push(list);
    }
    if (this.#lists.length > this.#mostEntries) this.#putDown();
  }

  /** Raises every pass's table by its lists, and forgets these. */
  #putDown(): void {
    this.#tables ??= new Float64Array(MULTISETS * this.#work.passes.length);
    for (let pass = 0; pass < this.#listsOf.length; pass += 1) this.#tableOf(pass);
    this.#lists.clear();
  }

  /** The table of a pass so far; its lists are then forgotten. */
  #tableOf(pass: number): Float64Array {
    const start = pass * MULTISETS;
    const table = this.#tables?.subarray(start, start + MULTISETS) ?? this.#table.fill(0);
    const lists = this.#listsOf[pass] as number[];
    for (const list of lists) this.#lists.raise(table, list, this.#floors[pass] as number);
    lists.length = 0;
    return table;
  }

  #boundOf(bounds: Map<number, number>, take: number, way: number, pass: number): number {
    const known = bounds.get(take);
    if (known !== undefined) return known;
    const bound = this.#futures.bound(way, this.#keptAfter(pass));
    bounds.set(take, bound);
    return bound;
  }

  #keepList(way: number, counts: Uint8Array): number {
    const futures = this.#futures;
    const floor = this.#lowestFloor;
    futures.look(way, counts, floor);
    for (let entry = 0; entry < futures.length; entry += 1) {
      const value = futures.values[entry] as number;
      if (value > floor) this.#lists.add(futures.places[entry] as number, value);
    }
    return this.#lists.close();
  }

  meansOf(pass: number): number[] {
    const table = this.#tableOf(pass);
    table[0] = this.#floors[pass] as number;
    return this.#work.incomings.map((incoming) => meanOfBest(table, incoming));
  }

  /** The 36 counts kept after a pass, in the same array each time. */
  #keptAfter(pass: number): Uint8Array {
    const kept = this.#kept;
    kept.set(this.#work.counts);
    for (const kind of this.#work.passes[pass] as readonly Kind[]) kept[kind] = (kept[kind] as number) - 1;
    return kept;
  }
}
