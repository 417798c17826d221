import { randomFromSeed, shuffle } from '../base/random.ts';
import { awayOfAll } from '../reading/away.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import type { Known } from '../reading/known.ts';
import { JOKER, KIND_COUNT, type Kind } from '../tiles/kinds.ts';
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
 * of how much the smallest away over all ways falls when the pass comes to such a rack. Estimated
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
  for (let rack = 0; rack < racks; rack += 1) {
    const counts = new Uint8Array(KIND_COUNT);
    for (const kind of shuffle(unseen, random).slice(0, RECEIVER_TILES)) counts[kind] = (counts[kind] as number) + 1;
    receiver.look(counts);
    for (const [pass, kinds] of passes.entries()) {
      const gain = receiver.gainOf(kinds);
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

/** By how many tiles one receiver's best away falls for tiles of a giver's rack. */
class ReceiverGains {
  readonly #compiled: CompiledCard;
  readonly #givable: Uint8Array;
  readonly #aways: Uint8Array;
  /** By place of a multiset of given tiles: the gain that exactly these bring. */
  readonly #gains = new Uint8Array(MULTISETS);
  #smallest = 14;

  /** `givable`: 36 counts of the giver's rack. */
  constructor(compiled: CompiledCard, givable: Uint8Array) {
    this.#compiled = compiled;
    this.#givable = givable;
    this.#aways = new Uint8Array(compiled.wayCount);
  }

  /** `counts`: 36 counts of the receiver's rack. */
  look(counts: Uint8Array): void {
    awayOfAll(this.#compiled, counts, this.#aways);
    this.#smallest = this.#aways.reduce((least, next) => Math.min(least, next), 14);
    this.#gains.fill(0);
    for (let way = 0; way < this.#compiled.wayCount; way += 1) {
      const behind = (this.#aways[way] as number) - this.#smallest;
      if (behind < 3) this.#addWay(way, behind, counts);
    }
  }

  /** At most three kinds, rising: the best gain of any part of them. */
  gainOf(kinds: readonly Kind[]): number {
    const [low, middle, high] = [...Array<number>(3 - kinds.length).fill(0), ...kinds] as [number, number, number];
    const gains = this.#gains;
    return Math.max(
      gains[placeOf(0, 0, low)] as number,
      gains[placeOf(0, 0, middle)] as number,
      gains[placeOf(0, 0, high)] as number,
      gains[placeOf(0, low, middle)] as number,
      gains[placeOf(0, low, high)] as number,
      gains[placeOf(0, middle, high)] as number,
      gains[placeOf(low, middle, high)] as number,
    );
  }

  /** Tiles that all help a way which is `behind` the best bring as many less `behind`. */
  #addWay(way: number, behind: number, counts: Uint8Array): void {
    const useful = this.#usefulKinds(way, counts);
    const { plain, wild, shortage } = useful;
    const give = (from: number, size: number, one: number, two: number, three: number, left: number): void => {
      const place = placeOfAny(one, two, three);
      if (size - behind > (this.#gains[place] as number)) this.#gains[place] = size - behind;
      if (size === 3) return;
      for (let kind = from; kind < KIND_COUNT; kind += 1) {
        const taken = Number(one === kind) + Number(two === kind) + Number(three === kind);
        if (taken >= (this.#givable[kind] as number)) continue;
        const isPlain = taken < (plain[kind] as number);
        if (!isPlain && (left === 0 || taken >= (plain[kind] as number) + (wild[kind] as number))) continue;
        give(kind, size + 1, two, three, kind, isPlain ? left : left - 1);
      }
    };
    give(1, 0, 0, 0, 0, shortage);
  }

  #usefulKinds(way: number, counts: Uint8Array): { plain: Uint8Array; wild: Uint8Array; shortage: number } {
    const { starts, needKind, needPlain, needWild } = this.#compiled;
    const plain = new Uint8Array(KIND_COUNT);
    const wild = new Uint8Array(KIND_COUNT);
    let shortage = -(counts[JOKER] as number);
    for (let place = starts[way] as number; place < (starts[way + 1] as number); place += 1) {
      const kind = needKind[place] as number;
      const over = (counts[kind] as number) - (needPlain[place] as number);
      plain[kind] = Math.max(0, -over);
      wild[kind] = Math.max(0, (needWild[place] as number) - Math.max(0, over));
      shortage += wild[kind];
    }
    return { plain, wild, shortage: Math.max(0, shortage) };
  }
}
