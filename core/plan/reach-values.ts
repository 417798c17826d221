import type { PassSize } from '../exchange/steps.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import { type Deficits, emptyDeficits, fillDeficits } from '../reading/deficits.ts';
import { knotsOf } from '../reading/reach-model.ts';
import { joinParts, type WildChances } from '../reading/reach-parts.ts';
import { calibrated, rawUnder, type ReachTable } from '../reading/reach.ts';
import { JOKER } from '../tiles/kinds.ts';
import { placeOfAny, SMALL_MULTISETS } from './multisets.ts';
import { PlainValues } from './plain-values.ts';
import type { WayValues } from './way-values.ts';

/** The reach of one way when tiles come in; see `WayValues`. */
export class ReachValues implements WayValues {
  length = 0;
  readonly places = new Uint16Array(SMALL_MULTISETS);
  readonly values = new Float64Array(SMALL_MULTISETS);

  readonly #compiled: CompiledCard;
  readonly #reach: ReachTable;
  readonly #unseen: Uint8Array;
  readonly #size: PassSize;
  readonly #deficits: Deficits = emptyDeficits();
  readonly #plain: PlainValues;
  readonly #wild = new WildOptions();
  #concealed = false;
  #floor = -1;
  /** Raw chances that are not over the floor, for ways that are missing tiles of singles and pairs, and for others. */
  #plainFloor = -1;
  #wildFloor = -1;

  /** `unseen`: 36 counts; `size`: tiles that come in at most. */
  constructor(compiled: CompiledCard, reach: ReachTable, unseen: Uint8Array, size: PassSize) {
    this.#compiled = compiled;
    this.#reach = reach;
    this.#unseen = unseen;
    this.#size = size;
    this.#plain = new PlainValues(reach, size);
  }

  list(way: number, counts: Uint8Array, floor: number): void {
    this.#start(way, counts);
    this.#plain.list(this.#deficits);
    this.#wild.length = 0;
    this.#receiveWild(0, 0, 0, 0, 0, this.#deficits.shortage);
    this.#wild.order();
    this.#join(floor);
  }

  now(way: number, counts: Uint8Array): number {
    this.#start(way, counts);
    const { away, shortage } = this.#deficits;
    if (away === 0) return 1;
    const plain = this.#reach.plainOf(this.#reach.tree.plainNodeOf(this.#deficits));
    return this.#reach.reachOf(plain, this.#wildPart(shortage));
  }

  /** No chance is over 1; no better bound is known that costs little. */
  bound(): number {
    return 1;
  }

  #start(way: number, counts: Uint8Array): void {
    fillDeficits(this.#compiled, way, counts, this.#unseen, this.#deficits);
    this.#concealed = this.#compiled.concealed[way] === 1;
  }

  /** All that may come in for kinds missing in larger groups; tiles beyond the shortage help no more. */
  #receiveWild(from: number, size: number, one: number, two: number, three: number, shortage: number): void {
    const { length, kind, plain, wild, unseen } = this.#deficits;
    this.#wild.add(size, one, two, three, this.#wildPart(shortage));
    if (size === this.#size) return;
    for (let place = from; place < length; place += 1) {
      if (wild[place] === 0 || unseen[place] === 0) continue;
      const list = plain[place] === 0 ? wild : plain;
      if (list === wild && shortage === 0) continue;
      shift(list, place, -1);
      shift(unseen, place, -1);
      const left = list === wild ? shortage - 1 : shortage;
      this.#receiveWild(place, size + 1, two, three, kind[place] as number, left);
      shift(list, place, 1);
      shift(unseen, place, 1);
    }
  }

  #wildPart(shortage: number): WildChances {
    const node = this.#reach.tree.wildNodeOf(this.#deficits);
    return this.#reach.wildOf(node, shortage, this.#unseen[JOKER] as number, this.#concealed);
  }

  /** The raw chances of a floor are kept, because it comes many times. */
  #setFloor(reach: number): void {
    if (reach === this.#floor) return;
    this.#floor = reach;
    this.#plainFloor = rawUnder(knotsOf(this.#reach.model, true), reach);
    this.#wildFloor = rawUnder(knotsOf(this.#reach.model, false), reach);
  }

  /** Every choice of one part with every choice of the other, as far as the tiles that come in go and the floor is exceeded. */
  #join(floor: number): void {
    this.#setFloor(floor);
    const plain = this.#plain;
    const wild = this.#wild;
    const { away } = this.#deficits;
    const { model } = this.#reach;
    const { moments } = model;
    const plainKnots = knotsOf(model, true);
    const wildKnots = knotsOf(model, false);
    let length = 0;
    for (let one = 0; one < plain.length; one += 1) {
      const plainSize = plain.sizes[one] as number;
      const end = wild.ends[this.#size - plainSize] as number;
      for (let place = 0; place < end; place += 1) {
        const other = wild.bySize[place] as number;
        const isWhole = plainSize + (wild.sizes[other] as number) === away;
        const part = wild.parts[other] as WildChances;
        const isPlainMissing = plainSize < plain.missing || part.isPlainMissing;
        const raw = isWhole ? 1 : joinParts(plain.ready, plain.calling, one * moments.length, part);
        if (raw <= (isPlainMissing ? this.#plainFloor : this.#wildFloor)) continue;
        this.places[length] = joinedPlace(plain.kinds, 3 * one, plainSize, wild.kinds, 3 * other);
        this.values[length] = isWhole ? 1 : calibrated(isPlainMissing ? plainKnots : wildKnots, raw);
        length += 1;
      }
    }
    this.length = length;
  }
}

/** Choices of what comes in for the kinds missing in larger groups, with their chances after it. */
class WildOptions {
  length = 0;
  readonly sizes = new Uint8Array(SMALL_MULTISETS);
  /** Three kinds a choice, zeros in front. */
  readonly kinds = new Uint8Array(3 * SMALL_MULTISETS);
  readonly parts: WildChances[] = [];
  /** The choices' places, those of fewer tiles first; those of at most s tiles end before `ends[s]`. */
  readonly bySize = new Uint16Array(SMALL_MULTISETS);
  readonly ends = new Uint16Array(4);

  add(size: number, one: number, two: number, three: number, part: WildChances): void {
    this.sizes[this.length] = size;
    this.kinds[3 * this.length] = one;
    this.kinds[3 * this.length + 1] = two;
    this.kinds[3 * this.length + 2] = three;
    this.parts[this.length] = part;
    this.length += 1;
  }

  /** Puts the choices of fewer tiles first. */
  order(): void {
    let end = 0;
    for (let size = 0; size < this.ends.length; size += 1) {
      for (let place = 0; place < this.length; place += 1) {
        if (this.sizes[place] !== size) continue;
        this.bySize[end] = place;
        end += 1;
      }
      this.ends[size] = end;
    }
  }
}

/** The place of two choices together, of three tiles at most: the second fills the zeros of the first. */
function joinedPlace(kinds: Uint8Array, start: number, size: number, others: Uint8Array, from: number): number {
  const three = kinds[start + 2] as number;
  const last = others[from + 2] as number;
  if (size === 0) return placeOfAny(others[from] as number, others[from + 1] as number, last);
  if (size === 1) return placeOfAny(three, others[from + 1] as number, last);
  return placeOfAny(size === 2 ? last : (kinds[start] as number), kinds[start + 1] as number, three);
}

function shift(list: Uint8Array, place: number, by: number): void {
  list[place] = (list[place] as number) + by;
}
