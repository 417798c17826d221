import { randomFromSeed, shuffle } from '../base/random.ts';
import { awayOfAll } from '../reading/deficits.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import type { Known } from '../reading/known.ts';
import { faceOf, JOKER, KIND_COUNT, type Kind } from '../tiles/kinds.ts';
import { MULTISETS, placeOf, placeOfAny } from './multisets.ts';

/** By how much a pass brings its receiver nearer to a hand, in tiles, 0 to 3. */
export interface Gift {
  readonly mean: number;
  /** The standard error of the mean, from the racks sampled. */
  readonly error: number;
}

export interface GiftOptions {
  /** Receiver's racks drawn; all passes are judged on the same ones. */
  readonly racks?: number;
  readonly seed?: number;
}

const RECEIVER_TILES = 13;
const RACKS_A_STEP = 5;

/**
 * The gift of each pass: the mean, over receivers' racks of 13 tiles drawn from the unseen ones,
 * of how much the smallest away over all ways falls when such a rack gets the pass. Estimated
 * from a seeded sample that all passes share, so that passes are compared on equal racks. Yields
 * the part done, 0 to 1.
 */
export function* giftSteps(
  compiled: CompiledCard,
  known: Known,
  passes: readonly (readonly Kind[])[],
  { racks = 200, seed = 1 }: GiftOptions = {},
): Generator<number, Gift[]> {
  const random = randomFromSeed(seed);
  const unseen = known.unseen.toKinds();
  const own = known.rack.toCounts();
  const sums = new Float64Array(passes.length);
  const squares = new Float64Array(passes.length);
  const receiver = new ReceiverGains(compiled, own);
  const parts = passes.map(partsOf);
  for (let rack = 0; rack < racks; rack += 1) {
    const counts = new Uint8Array(KIND_COUNT);
    for (const kind of shuffle(unseen, random).slice(0, RECEIVER_TILES)) counts[kind] = (counts[kind] as number) + 1;
    receiver.look(counts);
    for (let pass = 0; pass < parts.length; pass += 1) {
      const gain = receiver.gainOf(parts[pass] as Uint16Array);
      sums[pass] = (sums[pass] as number) + gain;
      squares[pass] = (squares[pass] as number) + gain * gain;
    }
    if (rack % RACKS_A_STEP === RACKS_A_STEP - 1) yield rack / racks;
  }
  return passes.map((_, pass) => {
    const mean = (sums[pass] as number) / racks;
    const variance = Math.max(0, (squares[pass] as number) / racks - mean * mean);
    return { mean, error: Math.sqrt(variance / (racks - 1)) };
  });
}

/**
 * How much the tiles of a pass hang together, whatever the card: what stays so in the receiver's hands may serve them,
 * even where no hand that is near asks for it. The sum over all pairs of tiles; nought for strangers.
 */
export function connection(tiles: readonly Kind[]): number {
  let sum = 0;
  for (const [place, one] of tiles.entries()) {
    for (const other of tiles.slice(place + 1)) sum += one === other ? PAIR : bondOf(one, other);
  }
  return sum;
}

/** Whether a receiver may use two tiles together: equal ones, near numbers of a suit, a number in two suits, two winds, two dragons. */
export function belongTogether(one: Kind, other: Kind): boolean {
  return one === other || bondOf(one, other) >= RELATED;
}

/** A pair hangs together more than any two tiles that differ. */
const PAIR = 4;
/** Numbers of a suit by how far apart they are. */
const NEIGHBOURS = [0, 3, 2, 1];
/** The same number in two suits, two winds, two dragons. */
const RELATED = 2;

function bondOf(one: Kind, other: Kind): number {
  const [a, b] = [faceOf(one), faceOf(other)];
  if (a.class !== 'number' || b.class !== 'number') return a.class === b.class ? RELATED : 0;
  if (a.suit !== b.suit) return a.number === b.number ? RELATED : 0;
  return NEIGHBOURS[Math.abs(a.number - b.number)] ?? 0;
}

/** The places of all that is part of a pass: of at most three kinds, rising. */
function partsOf(kinds: readonly Kind[]): Uint16Array {
  const [low, middle, high] = [...Array<number>(3 - kinds.length).fill(0), ...kinds] as [number, number, number];
  const singles = [low, middle, high].map((kind) => placeOf(0, 0, kind));
  const pairs = [placeOf(0, low, middle), placeOf(0, low, high), placeOf(0, middle, high)];
  return Uint16Array.from([...singles, ...pairs, placeOf(low, middle, high)]);
}

/** By how many tiles one receiver's best away falls for tiles of a giver's rack. */
class ReceiverGains {
  readonly #compiled: CompiledCard;
  readonly #givable: Uint8Array;
  readonly #aways: Uint8Array;
  /** By place of a multiset of given tiles: the gain that exactly these bring. */
  readonly #gains = new Uint8Array(MULTISETS);
  #smallest = 14;
  /** Of the way looked at last: the kinds that the giver can give to it, how many go to singles and pairs, how many in all. */
  readonly #kinds = new Uint8Array(KIND_COUNT);
  readonly #plain = new Uint8Array(KIND_COUNT);
  readonly #most = new Uint8Array(KIND_COUNT);
  #length = 0;
  /** Tiles that help it, all together. */
  #useful = 0;

  /** `givable`: 36 counts of the giver's rack. */
  constructor(compiled: CompiledCard, givable: Uint8Array) {
    this.#compiled = compiled;
    this.#givable = givable;
    this.#aways = new Uint8Array(compiled.wayCount);
  }

  /** `counts`: 36 counts of the receiver's rack. */
  look(counts: Uint8Array): void {
    awayOfAll(this.#compiled, counts, this.#aways);
    let smallest = 14;
    for (const away of this.#aways) if (away < smallest) smallest = away;
    this.#smallest = smallest;
    this.#gains.fill(0);
    for (let way = 0; way < this.#compiled.wayCount; way += 1) {
      const behind = (this.#aways[way] as number) - this.#smallest;
      if (behind < 3) this.#addWay(way, behind, counts);
    }
  }

  /** The best gain of any part of a pass. */
  gainOf(parts: Uint16Array): number {
    let best = 0;
    for (let part = 0; part < parts.length; part += 1) {
      best = Math.max(best, this.#gains[parts[part] as number] as number);
    }
    return best;
  }

  /** Tiles that all help a way which is `behind` the best bring as many less `behind`. */
  #addWay(way: number, behind: number, counts: Uint8Array): void {
    const jokersShort = this.#lookFor(way, counts);
    if (this.#useful > behind) this.#give(0, 0, behind, jokersShort, 0, 0, 0);
  }

  /** Notes what the rack can give to the way, and returns how many tiles the way is missing that jokers could stand for. */
  #lookFor(way: number, counts: Uint8Array): number {
    const { starts, needKind, needPlain, needWild } = this.#compiled;
    this.#length = 0;
    this.#useful = 0;
    let short = -(counts[JOKER] as number);
    for (let place = starts[way] as number; place < (starts[way + 1] as number); place += 1) {
      const kind = needKind[place] as number;
      const over = (counts[kind] as number) - (needPlain[place] as number);
      const plain = Math.max(0, -over);
      const wild = Math.max(0, (needWild[place] as number) - Math.max(0, over));
      short += wild;
      const most = Math.min(plain + wild, this.#givable[kind] as number);
      if (most === 0) continue;
      this.#kinds[this.#length] = kind;
      this.#plain[this.#length] = plain;
      this.#most[this.#length] = most;
      this.#length += 1;
      this.#useful += most;
    }
    return Math.max(0, short);
  }

  /** All multisets of up to three tiles that help: those given so far, of which `wild` more may stand in larger groups. */
  #give(from: number, size: number, behind: number, wild: number, one: number, two: number, three: number): void {
    const place = placeOfAny(one, two, three);
    if (size - behind > (this.#gains[place] as number)) this.#gains[place] = size - behind;
    if (size === 3) return;
    for (let at = from; at < this.#length; at += 1) {
      const kind = this.#kinds[at] as number;
      const taken = Number(one === kind) + Number(two === kind) + Number(three === kind);
      if (taken >= (this.#most[at] as number)) continue;
      const isPlain = taken < (this.#plain[at] as number);
      if (!isPlain && wild === 0) continue;
      this.#give(at, size + 1, behind, isPlain ? wild : wild - 1, two, three, kind);
    }
  }
}
