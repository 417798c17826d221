import { type Kind, KIND_COUNT, KINDS, SUPPLY, supplyOf } from '../tiles/kinds.ts';
import type { PossibleWays } from './policy.ts';
import type { TableCard } from './table-card.ts';
import { TableRack } from './table-rack.ts';

/**
 * Which ways the tiles that don't lie face up could still make, for whoever has nothing open: those are
 * the same for all four seats. Kept as the rack of somebody who holds all these tiles: a way can
 * still be made if nothing is missing for it.
 */
export class StillPossible implements PossibleWays {
  readonly #rack: TableRack;
  readonly #full: TableRack;

  constructor(card: TableCard) {
    this.#rack = new TableRack(card);
    this.#full = new TableRack(card);
    for (const kind of KINDS) for (let count = supplyOf(kind); count > 0; count -= 1) this.#full.add(kind);
    this.#rack.copy(this.#full);
  }

  follow(gone: ArrayLike<number>): void {
    const { counts } = this.#rack;
    for (let kind = 0; kind < KIND_COUNT; kind += 1) {
      const left = (SUPPLY[kind] as number) - (gone[kind] as number);
      const count = counts[kind] as number;
      if (left === count) continue;
      if (left > count + 1) return this.#restart(gone);
      this.#shift(kind as Kind, left);
    }
  }

  includes(way: number): boolean {
    return this.#rack.awayOf(way) === 0;
  }

  /** For another game. */
  #restart(gone: ArrayLike<number>): void {
    this.#rack.copy(this.#full);
    for (const kind of KINDS) this.#shift(kind, supplyOf(kind) - (gone[kind] as number));
  }

  #shift(kind: Kind, left: number): void {
    while ((this.#rack.counts[kind] as number) > left) this.#rack.remove(kind);
    while ((this.#rack.counts[kind] as number) < left) this.#rack.add(kind);
  }
}
