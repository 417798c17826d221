import type { CompiledCard } from '../reading/compiled.ts';
import type { Known } from '../reading/known.ts';
import type { ReachModel } from '../reading/reach-model.ts';
import { readerOf } from '../reading/reader.ts';
import type { Kind } from '../tiles/kinds.ts';
import { type Incoming, incomingOf, meanOfBest } from './incoming.ts';
import { MULTISETS } from './multisets.ts';
import { FutureLists } from './future-lists.ts';
import { distinctPasses, type PassSize } from './passes.ts';
import { WayFutures } from './way-futures.ts';
import { TAKES, WayTakes } from './way-takes.ts';

/** The exact numbers of every pass of a rack; lists run side by side. */
export interface PassTable {
  /** Kinds rising, in canonical order of passes. */
  readonly passes: readonly (readonly Kind[])[];
  /** The mean, over what comes in, of the smallest away over all ways. */
  readonly expectedAway: Float64Array;
  /** The mean, over what comes in, of the largest reach over all ways. */
  readonly reach: Float64Array;
}

/** Ways and passes are worked off in portions of this many, a few milliseconds each. */
const WAY_PORTION = 64;
const PASS_PORTION = 16;

/** The table of all passes of `size` tiles, or of the `passes` given. */
export function passTable(
  compiled: CompiledCard,
  known: Known,
  size: PassSize,
  model: ReachModel,
  passes?: readonly (readonly Kind[])[],
): PassTable {
  const steps = passTableSteps(compiled, known, size, model, passes);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/**
 * The same in steps of a few milliseconds: each yields the part done, 0 to 1.
 *
 * A pass's numbers are means, over what may come in, of the best value over all ways. The best
 * value for a multiset of incoming tiles is the largest that any part of it gives to any way, so
 * that one table by multisets does it (incoming.ts). Only these entries are put in:
 *
 * - from ways that, with the tiles most welcome to them, would exceed the pass's floor, which is
 *   the best value over all ways if nothing came in. A way that can't exceed the floor changes no
 *   entry, because every entry is at least the floor. The bound of a way is its best future if
 *   nothing were taken from it: taking tiles never raises a value.
 * - entries above the floor.
 *
 * Passes that take the same tiles from a way share its list of futures.
 */
export function* passTableSteps(
  compiled: CompiledCard,
  known: Known,
  size: PassSize,
  model: ReachModel,
  given?: readonly (readonly Kind[])[],
): Generator<number, PassTable> {
  const passes = given ?? distinctPasses(known.rack, size);
  const work = new PassWork(compiled, known, size, model, passes);
  for (let way = 0; way < compiled.wayCount; way += WAY_PORTION) {
    work.bound(way, Math.min(compiled.wayCount, way + WAY_PORTION));
    yield (0.2 * way) / compiled.wayCount;
  }
  work.findFloors();
  const near = work.nearWays();
  for (let place = 0; place < near.length; place += WAY_PORTION) {
    for (const way of near.subarray(place, place + WAY_PORTION)) work.listFutures(way);
    yield 0.2 + (0.5 * place) / near.length;
  }
  const expectedAway = new Float64Array(passes.length);
  const reach = new Float64Array(passes.length);
  for (let pass = 0; pass < passes.length; pass += 1) {
    expectedAway[pass] = 14 - work.meanHas(pass);
    reach[pass] = work.meanReach(pass);
    if (pass % PASS_PORTION === PASS_PORTION - 1) yield 0.7 + (0.3 * pass) / passes.length;
  }
  return { passes, expectedAway, reach };
}

/** One of the two values that a table is made for, while it is made. */
interface Side {
  /** By way: its value now, and the most that it may become. */
  readonly now: Float64Array;
  readonly most: Float64Array;
  /** By pass: the best value if nothing came in. */
  readonly floors: Float64Array;
  lowestFloor: number;
  readonly lists: FutureLists;
  /** By pass, the numbers of its lists. */
  readonly listsOf: readonly number[][];
}

class PassWork {
  readonly #compiled: CompiledCard;
  readonly #counts: Uint8Array;
  readonly #kept: Uint8Array;
  readonly #flat: Uint8Array;
  readonly #passes: readonly (readonly Kind[])[];
  readonly #incoming: Incoming;
  readonly #futures: WayFutures;
  readonly #takes: WayTakes;
  readonly #has: Side;
  readonly #reach: Side;
  readonly #table = new Float64Array(MULTISETS);

  constructor(
    compiled: CompiledCard,
    known: Known,
    size: PassSize,
    model: ReachModel,
    passes: readonly (readonly Kind[])[],
  ) {
    const unseen = known.unseen.toCounts();
    this.#compiled = compiled;
    this.#counts = known.rack.toCounts();
    this.#kept = known.rack.toCounts();
    this.#passes = passes;
    this.#flat = new Uint8Array(3 * passes.length);
    for (const [pass, kinds] of passes.entries()) this.#flat.set(kinds, 3 * pass + 3 - kinds.length);
    this.#incoming = incomingOf(unseen, size);
    this.#futures = new WayFutures(compiled, readerOf(model).reach, unseen, size);
    this.#takes = new WayTakes(compiled, this.#counts);
    this.#has = newSide(compiled.wayCount, passes.length);
    this.#reach = newSide(compiled.wayCount, passes.length);
  }

  /** What the ways from `from` on may become if nothing is taken from them. */
  bound(from: number, to: number): void {
    const futures = this.#futures;
    for (let way = from; way < to; way += 1) {
      futures.look(way, this.#counts);
      this.#has.now[way] = futures.has[0] as number;
      this.#reach.now[way] = futures.reaches[0] as number;
      let mostHas = 0;
      let mostReach = 0;
      for (let entry = 0; entry < futures.length; entry += 1) {
        mostHas = Math.max(mostHas, futures.has[entry] as number);
        mostReach = Math.max(mostReach, futures.reaches[entry] as number);
      }
      this.#has.most[way] = mostHas;
      this.#reach.most[way] = mostReach;
    }
  }

  findFloors(): void {
    this.#findFloor(this.#has, this.#futures.has);
    this.#findFloor(this.#reach, this.#futures.reaches);
  }

  /** Best ways first; when a way's value before the pass is under every floor, no later one raises any. */
  #findFloor(side: Side, values: Uint8Array | Float64Array): void {
    const order = new Uint32Array(side.now.length).map((_, way) => way);
    order.sort((one, other) => (side.now[other] as number) - (side.now[one] as number));
    const known = new Float64Array(TAKES);
    for (const way of order) {
      if ((side.now[way] as number) <= side.lowestFloor) break;
      known.fill(-1);
      this.#takes.setWay(way);
      for (let pass = 0; pass < this.#passes.length; pass += 1) {
        const take = this.#takes.takeOf(this.#flat, 3 * pass);
        if ((known[take] as number) < 0) known[take] = this.#valueNow(way, pass, values);
        if ((known[take] as number) > (side.floors[pass] as number)) side.floors[pass] = known[take] as number;
      }
      side.lowestFloor = side.floors.reduce((least, floor) => Math.min(least, floor), Infinity);
    }
  }

  #valueNow(way: number, pass: number, values: Uint8Array | Float64Array): number {
    this.#futures.lookNow(way, this.#keptAfter(pass));
    return values[0] as number;
  }

  /** The ways that may rise over some floor. */
  nearWays(): Uint32Array {
    const all = new Uint32Array(this.#compiled.wayCount).map((_, way) => way);
    return all.filter((way) => mayExceed(this.#has, way) || mayExceed(this.#reach, way));
  }

  /** The futures of one way after each pass, as far as they may matter to it. */
  listFutures(way: number): void {
    const known = new Map<number, { readonly has: number; readonly reach: number }>();
    const mostHas = this.#has.most[way] as number;
    const mostReach = this.#reach.most[way] as number;
    this.#takes.setWay(way);
    for (let pass = 0; pass < this.#passes.length; pass += 1) {
      const forHas = mostHas > (this.#has.floors[pass] as number);
      const forReach = mostReach > (this.#reach.floors[pass] as number);
      if (!forHas && !forReach) continue;
      const take = this.#takes.takeOf(this.#flat, 3 * pass);
      let lists = known.get(take);
      if (lists === undefined) {
        this.#futures.look(way, this.#keptAfter(pass));
        lists = {
          has: this.#keep(this.#has, this.#futures.has),
          reach: this.#keep(this.#reach, this.#futures.reaches),
        };
        known.set(take, lists);
      }
      if (forHas) (this.#has.listsOf[pass] as number[]).push(lists.has);
      if (forReach) (this.#reach.listsOf[pass] as number[]).push(lists.reach);
    }
  }

  #keep(side: Side, values: Uint8Array | Float64Array): number {
    const { places, length } = this.#futures;
    for (let entry = 0; entry < length; entry += 1) {
      const value = values[entry] as number;
      if (value > side.lowestFloor) side.lists.add(places[entry] as number, value);
    }
    return side.lists.close();
  }

  meanHas(pass: number): number {
    return this.#mean(this.#has, pass);
  }

  meanReach(pass: number): number {
    return this.#mean(this.#reach, pass);
  }

  #mean(side: Side, pass: number): number {
    const table = this.#table.fill(0);
    const floor = side.floors[pass] as number;
    for (const list of side.listsOf[pass] as number[]) side.lists.raise(table, list, floor);
    table[0] = floor;
    return meanOfBest(table, this.#incoming);
  }

  /** The 36 counts kept after a pass, in the same array each time. */
  #keptAfter(pass: number): Uint8Array {
    const kept = this.#kept;
    kept.set(this.#counts);
    for (const kind of this.#passes[pass] as readonly Kind[]) kept[kind] = (kept[kind] as number) - 1;
    return kept;
  }
}

function newSide(ways: number, passes: number): Side {
  return {
    now: new Float64Array(ways),
    most: new Float64Array(ways),
    floors: new Float64Array(passes),
    lowestFloor: -1,
    lists: new FutureLists(),
    listsOf: Array.from({ length: passes }, () => []),
  };
}

function mayExceed(side: Side, way: number): boolean {
  return (side.most[way] as number) > side.lowestFloor;
}
