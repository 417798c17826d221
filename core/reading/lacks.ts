import type { Deficits } from './deficits.ts';
import { PlaceMap } from './place-map.ts';

/**
 * A lack is what a way lacks of one kind, packed into one number: tiles for larger groups (0 to
 * 14), naturals for singles and pairs (0 to 14) and copies unseen (0 to 8). Lacks of singles and
 * pairs alone are smaller than all others.
 */
export function packLack(plain: number, wild: number, unseen: number): number {
  return (wild * 16 + plain) * 16 + unseen;
}

export function plainOfLack(lack: number): number {
  return (lack >> 4) & 15;
}

export function wildOfLack(lack: number): number {
  return lack >> 8;
}

export function unseenOfLack(lack: number): number {
  return lack & 15;
}

const LACK_CODES = 4096;
const MOST_LACKS = 14;

/**
 * All multisets of lacks met so far, as a tree: a multiset, its lacks sorted, hangs below the
 * multiset without the last one. Ways that lack the same have the same node, whatever their
 * tiles are, and whatever is computed for a node serves all of them and all nodes below it.
 * Node 0 lacks nothing. Nodes are numbered in order of appearance.
 */
export class LackTree {
  #size = 1;
  readonly #parents: number[] = [0];
  readonly #lacks: number[] = [0];
  readonly #children = new PlaceMap();
  readonly #sorted = new Uint16Array(MOST_LACKS);

  get size(): number {
    return this.#size;
  }

  parentOf(node: number): number {
    return this.#parents[node] as number;
  }

  /** The lack by which a node differs from its parent. */
  lackOf(node: number): number {
    return this.#lacks[node] as number;
  }

  /** The node of all that a way lacks. */
  nodeOf(deficits: Deficits): number {
    return this.#walk(deficits, true, true);
  }

  /** The node of the kinds that lack only in singles and pairs. */
  plainNodeOf(deficits: Deficits): number {
    return this.#walk(deficits, true, false);
  }

  /** The node of the kinds that lack in larger groups. */
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
      const lack = packLack(plain, wild, deficits.unseen[next] as number);
      let place = length;
      for (; place > 0 && (sorted[place - 1] as number) > lack; place -= 1) sorted[place] = sorted[place - 1] as number;
      sorted[place] = lack;
      length += 1;
    }
    let node = 0;
    for (let place = 0; place < length; place += 1) node = this.#childOf(node, sorted[place] as number);
    return node;
  }

  #childOf(node: number, lack: number): number {
    const key = node * LACK_CODES + lack;
    const known = this.#children.get(key);
    if (known >= 0) return known;
    const child = this.#size;
    this.#size += 1;
    this.#children.set(key, child);
    this.#parents.push(node);
    this.#lacks.push(lack);
    return child;
  }
}
