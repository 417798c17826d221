import type { Deficits } from './deficits.ts';

/**
 * A lack is what a way lacks of one kind, packed into one number: naturals for singles and pairs
 * (0 to 14), tiles for larger groups (0 to 14) and copies unseen (0 to 8).
 */
export function packLack(plain: number, wild: number, unseen: number): number {
  return (plain * 16 + wild) * 16 + unseen;
}

export function plainOfLack(lack: number): number {
  return lack >> 8;
}

export function wildOfLack(lack: number): number {
  return (lack >> 4) & 15;
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
  readonly #children = new Map<number, number>();
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

  /** The node of what a way lacks. */
  nodeOf(deficits: Deficits): number {
    const sorted = this.#sorted;
    const { length } = deficits;
    for (let next = 0; next < length; next += 1) {
      const lack = packLack(
        deficits.plain[next] as number,
        deficits.wild[next] as number,
        deficits.unseen[next] as number,
      );
      let place = next;
      for (; place > 0 && (sorted[place - 1] as number) > lack; place -= 1) sorted[place] = sorted[place - 1] as number;
      sorted[place] = lack;
    }
    let node = 0;
    for (let place = 0; place < length; place += 1) node = this.#childOf(node, sorted[place] as number);
    return node;
  }

  #childOf(node: number, lack: number): number {
    const key = node * LACK_CODES + lack;
    const known = this.#children.get(key);
    if (known !== undefined) return known;
    const child = this.#size;
    this.#size += 1;
    this.#children.set(key, child);
    this.#parents.push(node);
    this.#lacks.push(lack);
    return child;
  }
}
