import type { PassSize } from '../exchange/steps.ts';
import { packDeficit } from '../reading/deficit-tree.ts';
import type { Deficits } from '../reading/deficits.ts';
import type { ReachFactor } from '../reading/reach-factors.ts';
import type { ReachTable } from '../reading/reach.ts';
import { SMALL_MULTISETS } from './multisets.ts';

const MOST_KINDS = 14;

/**
 * All that may come in for the kinds of one way missing only in singles and pairs: choices of up
 * to three useful tiles, each with the chances of that part of the way after it (reach-parts.ts),
 * moment by moment. Products over kinds are built from shared beginnings and ends, so that a
 * choice costs two or three multiplications a moment.
 */
export class PlainValues {
  length = 0;
  /** Tiles that these kinds are missing before anything comes in. */
  missing = 0;
  readonly sizes = new Uint8Array(SMALL_MULTISETS);
  /** Three kinds a choice, zeros in front. */
  readonly kinds = new Uint8Array(3 * SMALL_MULTISETS);
  /** A row of moments for each choice. */
  readonly ready: Float64Array;
  readonly calling: Float64Array;

  readonly #reach: ReachTable;
  readonly #moments: number;
  readonly #size: PassSize;
  #count = 0;
  readonly #kind = new Uint8Array(MOST_KINDS);
  readonly #most = new Uint8Array(MOST_KINDS);
  /** By kind, the factors after 0, 1, 2, 3 tiles. */
  readonly #factors: ReachFactor[] = [];
  /** Row `k`: the product of the unchanged factors from kind `k` on. */
  readonly #ends: Rows;
  /** Two rows for each tile chosen: the product so far, and it with one factor changed. */
  readonly #work: Rows;

  constructor(reach: ReachTable, size: PassSize) {
    this.#reach = reach;
    this.#size = size;
    this.#moments = reach.model.moments.length;
    this.ready = new Float64Array(SMALL_MULTISETS * this.#moments);
    this.calling = new Float64Array(SMALL_MULTISETS * this.#moments);
    this.#ends = newRows(MOST_KINDS + 1, this.#moments);
    this.#work = newRows(2 * 4 + 1, this.#moments);
  }

  list(deficits: Deficits): void {
    this.#gather(deficits);
    setOne(this.#ends, this.#count * this.#moments, this.#moments);
    for (let place = this.#count - 1; place >= 0; place -= 1)
      this.#multiply(this.#ends, place + 1, place, 0, this.#ends, place);
    this.length = 0;
    setOne(this.#work, 0, this.#moments);
    this.#choose(0, 0, 0, 0, 0, 0);
  }

  #gather(deficits: Deficits): void {
    this.#count = 0;
    this.missing = 0;
    for (let place = 0; place < deficits.length; place += 1) {
      const plain = deficits.plain[place] as number;
      if (plain === 0 || deficits.wild[place] !== 0) continue;
      const unseen = deficits.unseen[place] as number;
      const most = Math.min(this.#size, plain, unseen);
      this.missing += plain;
      this.#kind[this.#count] = deficits.kind[place] as number;
      this.#most[this.#count] = most;
      for (let more = 0; more <= most; more += 1) {
        this.#factors[4 * this.#count + more] = this.#reach.factorOf(packDeficit(plain - more, 0, unseen - more));
      }
      this.#count += 1;
    }
  }

  /** Ends the choice whose product over the kinds before `from` is in `row`, and goes on from it. */
  #choose(from: number, size: number, one: number, two: number, three: number, row: number): void {
    this.#end(from, size, one, two, three, row);
    if (size === this.#size) return;
    const changed = row + 1;
    const next = row + 2;
    copyRow(this.#work, row, changed, this.#moments);
    for (let place = from; place < this.#count; place += 1) {
      const kind = this.#kind[place] as number;
      const most = Math.min(this.#most[place] as number, this.#size - size);
      if (most > 0) {
        this.#multiply(this.#work, changed, place, 1, this.#work, next);
        this.#choose(place + 1, size + 1, two, three, kind, next);
      }
      if (most > 1) {
        this.#multiply(this.#work, changed, place, 2, this.#work, next);
        this.#choose(place + 1, size + 2, three, kind, kind, next);
      }
      if (most > 2) {
        this.#multiply(this.#work, changed, place, 3, this.#work, next);
        this.#choose(place + 1, size + 3, kind, kind, kind, next);
      }
      this.#multiply(this.#work, changed, place, 0, this.#work, changed);
    }
  }

  /** The product with the factor of one kind after `tiles` tiles, into a row of `into`. */
  #multiply(from: Rows, row: number, place: number, tiles: number, into: Rows, intoRow: number): void {
    const { closed, calling } = this.#factors[4 * place + tiles] as ReachFactor;
    const start = row * this.#moments;
    const target = intoRow * this.#moments;
    for (let moment = 0; moment < this.#moments; moment += 1) {
      const ready = from.ready[start + moment] as number;
      const all = closed[moment] as number;
      into.calling[target + moment] =
        (from.calling[start + moment] as number) * all + ready * (calling[moment] as number);
      into.ready[target + moment] = ready * all;
    }
  }

  #end(from: number, size: number, one: number, two: number, three: number, row: number): void {
    const { length } = this;
    this.sizes[length] = size;
    this.kinds[3 * length] = one;
    this.kinds[3 * length + 1] = two;
    this.kinds[3 * length + 2] = three;
    const work = this.#work;
    const ends = this.#ends;
    const moments = this.#moments;
    for (let moment = 0; moment < moments; moment += 1) {
      const ready = work.ready[row * moments + moment] as number;
      const endReady = ends.ready[from * moments + moment] as number;
      this.calling[length * moments + moment] =
        (work.calling[row * moments + moment] as number) * endReady +
        ready * (ends.calling[from * moments + moment] as number);
      this.ready[length * moments + moment] = ready * endReady;
    }
    this.length += 1;
  }
}

interface Rows {
  readonly ready: Float64Array;
  readonly calling: Float64Array;
}

function newRows(rows: number, moments: number): Rows {
  return { ready: new Float64Array(rows * moments), calling: new Float64Array(rows * moments) };
}

function setOne(rows: Rows, start: number, moments: number): void {
  rows.ready.fill(1, start, start + moments);
  rows.calling.fill(0, start, start + moments);
}

function copyRow(rows: Rows, from: number, to: number, moments: number): void {
  rows.ready.copyWithin(to * moments, from * moments, (from + 1) * moments);
  rows.calling.copyWithin(to * moments, from * moments, (from + 1) * moments);
}
