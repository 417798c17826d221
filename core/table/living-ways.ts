import { JOKER, KIND_COUNT, SUPPLY } from '../tiles/kinds.ts';
import type { PossibleWays, SeatView } from './policy.ts';
import { needKindOf, needPlainOf, needWildOf, type TableCard } from './table-card.ts';

/** Which ways are living for a seat: the tiles that it holds or can't see could complete them. */
export class LivingWays {
  /** 36 counts of what the seat can't see. */
  readonly unseen = new Uint8Array(KIND_COUNT);
  readonly #card: TableCard;
  /** Tiles of rack and unseen together. */
  readonly #within = new Uint8Array(KIND_COUNT);
  #exposed: ArrayLike<number> = [];
  #possible: PossibleWays | undefined;

  constructor(card: TableCard) {
    this.#card = card;
  }

  /** Looks at a seat as it stands now; with `openJokers` jokers of open groups, which swaps would bring in. */
  lookAt({ hand, gone, stillPossible }: SeatView, openJokers = 0): void {
    this.#exposed = hand.exposed;
    this.#possible = hand.exposures.length === 0 && openJokers === 0 ? stillPossible : undefined;
    this.#possible?.follow(gone);
    for (let kind = 0; kind < KIND_COUNT; kind += 1) {
      const within = (SUPPLY[kind] as number) - (gone[kind] as number);
      this.#within[kind] = within;
      this.unseen[kind] = within - (hand.counts[kind] as number);
    }
    this.#within[JOKER] = (this.#within[JOKER] as number) + openJokers;
  }

  includes(way: number): boolean {
    return this.#possible === undefined ? this.#canBeMade(way) : this.#possible.includes(way);
  }

  #canBeMade(way: number): boolean {
    const { needs, compiled } = this.#card;
    const { starts } = compiled;
    const within = this.#within;
    const exposed = this.#exposed;
    let jokers = within[JOKER] as number;
    const end = starts[way + 1] as number;
    for (let at = starts[way] as number; at < end; at += 1) {
      const need = needs[at] as number;
      const kind = needKindOf(need);
      const over = (within[kind] as number) - needPlainOf(need);
      if (over < 0) return false;
      const short = needWildOf(need) - (exposed[kind] as number) - over;
      if (short > 0) jokers -= short;
    }
    return jokers >= 0;
  }
}
