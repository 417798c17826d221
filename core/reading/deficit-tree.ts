import type { Deficits } from './deficits.ts';

/**
 * A deficit is what is missing for a way of one kind, packed into one number: tiles for larger groups (0 to
 * 14), naturals for singles and pairs (0 to 14) and copies unseen (0 to 8). Deficits of singles and
 * pairs alone are smaller than all others.
 */
export function packDeficit(plain: number, wild: number, unseen: number): number {
  return (wild * 16 + plain) * 16 + unseen;
}

export function plainOfDeficit(deficit: number): number {
  return (deficit >> 4) & 15;
}

export function wildOfDeficit(deficit: number): number {
  return deficit >> 8;
}

export function unseenOfDeficit(deficit: number): number {
  return deficit & 15;
}

const DEFICIT_CODES = 4096;
const MOST_DEFICITS = 14;

/**
 * All multisets of deficits met so far, as a tree: a multiset, its deficits sorted, hangs below the
 * multiset without the last one. Ways with equal deficits have the same node, whatever their
 * tiles are, and whatever is computed for a node serves all of them and all nodes below it.
 * Node 0 has no deficit. Nodes are numbered in order of appearance.
 */
export class DeficitTree {
  #size = 1;
  readonly #parents: number[] = [0];
  readonly #deficits: number[] = [0];
  readonly #children = new PlaceMap();
  readonly #sorted = new Uint16Array(MOST_DEFICITS);

  get size(): number {
    return this.#size;
  }

  parentOf(node: number): number {
    return this.#parents[node] as number;
  }

  /** The deficit by which a node differs from its parent. */
  deficitOf(node: number): number {
    return this.#deficits[node] as number;
  }

  /** The node of all deficits of a way. */
  nodeOf(deficits: Deficits): number {
    return this.#walk(deficits, true, true);
  }

  /** The node of the kinds missing only in singles and pairs. */
  plainNodeOf(deficits: Deficits): number {
    return this.#walk(deficits, true, false);
  }

  /** The node of the kinds missing in larger groups. */
  wildNodeOf(deficits: Deficits): number {
    return this.#walk(deficits, false, true);
  }

  #walk(deficits: Deficits, plainKinds: boolean, wildKinds: boolean): number {
    const sorted = this.#sorted;
    let length = 0;
    for (let next = 0; next < deficits.length; next += 1) {
      const wild = deficits.wild[next] as number;
      const plain = deficits.plain[next] as number;
      if (wild > 0 ? !wildKinds : !plainKinds || plain === 0) continue;
      const deficit = packDeficit(plain, wild, deficits.unseen[next] as number);
      let place = length;
      for (; place > 0 && (sorted[place - 1] as number) > deficit; place -= 1)
        sorted[place] = sorted[place - 1] as number;
      sorted[place] = deficit;
      length += 1;
    }
    let node = 0;
    for (let place = 0; place < length; place += 1) node = this.#childOf(node, sorted[place] as number);
    return node;
  }

  #childOf(node: number, deficit: number): number {
    const key = node * DEFICIT_CODES + deficit;
    const known = this.#children.get(key);
    if (known >= 0) return known;
    const child = this.#size;
    this.#size += 1;
    this.#children.set(key, child);
    this.#parents.push(node);
    this.#deficits.push(deficit);
    return child;
  }
}

/**
 * A map from whole numbers (0 to 2^30) to whole numbers (0 to 2^31 - 1) that only grows: open
 * addressing with linear probing (Knuth, TAOCP 3, 6.4) and Fibonacci hashing. Several times as
 * fast as `Map` in the inner loops of a reading.
 */
export class PlaceMap {
  #size = 0;
  #bits: number;
  /** Keys plus one; 0 marks an empty place. */
  #keys: Int32Array;
  #values: Int32Array;

  constructor(bits = 10) {
    this.#bits = bits;
    this.#keys = new Int32Array(1 << bits);
    this.#values = new Int32Array(1 << bits);
  }

  /** The value of a key, or -1. */
  get(key: number): number {
    const place = this.#placeOf(key);
    return this.#keys[place] === 0 ? -1 : (this.#values[place] as number);
  }

  set(key: number, value: number): void {
    if (2 * this.#size >= this.#keys.length) this.#grow();
    const place = this.#placeOf(key);
    if (this.#keys[place] === 0) this.#size += 1;
    this.#keys[place] = key + 1;
    this.#values[place] = value;
  }

  /** Where a key is, or the empty place where it would be. */
  #placeOf(key: number): number {
    const keys = this.#keys;
    const last = keys.length - 1;
    let place = Math.imul(key, GOLDEN) >>> (32 - this.#bits);
    while (keys[place] !== 0 && keys[place] !== key + 1) place = (place + 1) & last;
    return place;
  }

  #grow(): void {
    const keys = this.#keys;
    const values = this.#values;
    this.#bits += 1;
    this.#keys = new Int32Array(1 << this.#bits);
    this.#values = new Int32Array(1 << this.#bits);
    for (let from = 0; from < keys.length; from += 1) {
      const key = keys[from] as number;
      if (key === 0) continue;
      const place = this.#placeOf(key - 1);
      this.#keys[place] = key;
      this.#values[place] = values[from] as number;
    }
  }
}

/** 2^32 over the golden ratio, as a signed number. */
const GOLDEN = 0x9e3779b9 | 0;
