import type { Kind } from '../tiles/kinds.ts';
import { ValueLists } from './value-lists.ts';
import type { WayValues } from './way-values.ts';
import { type Incoming, meansOfBest } from './incoming.ts';
import { MULTISETS, SMALL_MULTISETS, type RemovedSets } from './multisets.ts';

/** Ways and passes are processed in batches of this size, a few milliseconds each. */
const WAY_BATCH = 64;
const PASS_BATCH = 4;

/** Lists of values are kept up to this many entries, some three megabytes. */
const MOST_ENTRIES = 1 << 18;

/** What a table of passes is made from. */
export interface PassWork {
  readonly wayCount: number;
  /** The rack's 36 counts. */
  readonly counts: Uint8Array;
  readonly passes: readonly (readonly Kind[])[];
  readonly removed: RemovedSets;
  /** What may come in, by one or more laws; a mean is taken over each. */
  readonly incomings: readonly [Incoming, Incoming?];
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
 * Passes that remove the same tiles from a way share its list of values. Lists of more than `mostEntries`
 * entries in all are put into a table for each pass.
 */
export function* bestMeans(
  work: PassWork,
  wayValues: WayValues,
  mostEntries = MOST_ENTRIES,
): Generator<number, Float64Array[]> {
  const means = new BestMeans(work, wayValues, mostEntries);
  for (let way = 0; way < work.wayCount; way += WAY_BATCH) {
    means.value(way, Math.min(work.wayCount, way + WAY_BATCH));
    yield (0.1 * way) / work.wayCount;
  }
  const order = means.findFloors();
  for (let place = 0; place < order.length; place += WAY_BATCH) {
    for (const way of order.subarray(place, place + WAY_BATCH)) means.list(way);
    yield 0.1 + (0.5 * place) / order.length;
  }
  const answer = work.incomings.map(() => new Float64Array(work.passes.length));
  for (let pass = 0; pass < work.passes.length; pass += 1) {
    for (const [place, mean] of means.meansOf(pass).entries()) (answer[place] as Float64Array)[pass] = mean;
    if (pass % PASS_BATCH === PASS_BATCH - 1) yield 0.6 + (0.4 * pass) / work.passes.length;
  }
  return answer;
}

class BestMeans {
  readonly #work: PassWork;
  readonly #wayValues: WayValues;
  readonly #mostEntries: number;
  /** The passes' kinds, three each, zeros in front. */
  readonly #flat: Uint8Array;
  readonly #kept: Uint8Array;
  /** By way: its value before the pass. */
  readonly #now: Float64Array;
  /** By pass: the best value if nothing came in. */
  readonly #floors: Float64Array;
  #lowestFloor = -1;
  readonly #lists = new ValueLists();
  /** By pass, the numbers of its lists. */
  readonly #listsOf: readonly number[][];
  /** Work space for the table of one pass. */
  readonly #table = new Float64Array(MULTISETS);
  /** The tables of all passes, once a large card has more lists than are kept. */
  #tables: Float64Array | undefined;

  constructor(work: PassWork, wayValues: WayValues, mostEntries: number) {
    this.#work = work;
    this.#mostEntries = mostEntries;
    this.#wayValues = wayValues;
    this.#kept = work.counts.slice();
    this.#flat = new Uint8Array(3 * work.passes.length);
    for (const [pass, kinds] of work.passes.entries()) this.#flat.set(kinds, 3 * pass + 3 - kinds.length);
    this.#now = new Float64Array(work.wayCount);
    this.#floors = new Float64Array(work.passes.length);
    this.#listsOf = Array.from(work.passes, () => []);
  }

  value(from: number, to: number): void {
    for (let way = from; way < to; way += 1) this.#now[way] = this.#wayValues.now(way, this.#work.counts);
  }

  /** Gives the ways, best first; when one's value before the pass is under every floor, no later one raises any. */
  findFloors(): Uint32Array {
    const { removed, passes } = this.#work;
    const order = new Uint32Array(this.#now.length).map((_, way) => way);
    order.sort((one, other) => (this.#now[other] as number) - (this.#now[one] as number));
    const known = new Float64Array(SMALL_MULTISETS);
    for (const way of order) {
      if ((this.#now[way] as number) <= this.#lowestFloor) break;
      known.fill(-1);
      removed.setWay(way);
      for (let pass = 0; pass < passes.length; pass += 1) {
        const set = removed.numberOf(this.#flat, 3 * pass);
        if ((known[set] as number) < 0) known[set] = this.#wayValues.now(way, this.#keptAfter(pass));
        if ((known[set] as number) > (this.#floors[pass] as number)) this.#floors[pass] = known[set] as number;
      }
      this.#lowestFloor = this.#floors.reduce((least, floor) => Math.min(least, floor), Infinity);
    }
    return order;
  }

  /** The values of one way after each pass, as far as they may matter to it. */
  list(way: number): void {
    const { removed, passes, counts } = this.#work;
    if (this.#wayValues.bound(way, counts) <= this.#lowestFloor) return;
    const whole = this.#keepList(way, counts);
    // Not the list alone: it is empty where nothing more helps, and yet what is given away may come back.
    const most = Math.max(this.#now[way] as number, this.#lists.largest(whole));
    if (most <= this.#lowestFloor) return;
    const bounds = new Map<number, number>();
    const lists = new Map<number, number>([[0, whole]]);
    removed.setWay(way);
    for (let pass = 0; pass < passes.length; pass += 1) {
      const floor = this.#floors[pass] as number;
      if (most <= floor) continue;
      const set = removed.numberOf(this.#flat, 3 * pass);
      if (this.#boundOf(bounds, set, way, pass) <= floor) continue;
      let list = lists.get(set);
      if (list === undefined) {
        list = this.#keepList(way, this.#keptAfter(pass));
        lists.set(set, list);
      }
      (this.#listsOf[pass] as number[]).push(list);
    }
    if (this.#lists.length > this.#mostEntries) this.#moveToTables();
  }

  /** Raises every pass's table by its lists, and forgets these. */
  #moveToTables(): void {
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

  #boundOf(bounds: Map<number, number>, set: number, way: number, pass: number): number {
    const known = bounds.get(set);
    if (known !== undefined) return known;
    const bound = this.#wayValues.bound(way, this.#keptAfter(pass));
    bounds.set(set, bound);
    return bound;
  }

  #keepList(way: number, counts: Uint8Array): number {
    const values = this.#wayValues;
    const floor = this.#lowestFloor;
    values.list(way, counts, floor);
    for (let entry = 0; entry < values.length; entry += 1) {
      const value = values.values[entry] as number;
      if (value > floor) this.#lists.add(values.places[entry] as number, value);
    }
    return this.#lists.close();
  }

  meansOf(pass: number): number[] {
    const table = this.#tableOf(pass);
    table[0] = this.#floors[pass] as number;
    return meansOfBest(table, this.#work.incomings);
  }

  /** The 36 counts kept after a pass, in the same array each time. */
  #keptAfter(pass: number): Uint8Array {
    const kept = this.#kept;
    kept.set(this.#work.counts);
    for (const kind of this.#work.passes[pass] as readonly Kind[]) kept[kind] = (kept[kind] as number) - 1;
    return kept;
  }
}
