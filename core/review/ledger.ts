/**
 * What moved the worth of the hand. `deal`: the tiles dealt, against a mean deal. `promise`: what
 * the best choice of a pass adds on average, since a pass brings new tiles. `choice`: what the
 * user's choice gave up against the best; never above zero. `luck`: what really came, against its
 * mean. `table`: the turns of play: what an average draw adds, what others' discards and exposures
 * showed, and what the shorter wall takes away; draws and wall are one part because they make up
 * for each other. `rest`: from the last moment logged to the result.
 */
export const PART_KINDS = ['deal', 'promise', 'choice', 'luck', 'table', 'rest'] as const;
export type PartKind = (typeof PART_KINDS)[number];

export interface LedgerPart {
  readonly kind: PartKind;
  /** The place of the event in the game's list. */
  readonly place: number;
  readonly amount: number;
  /** The worth after it. */
  readonly worth: number;
}

/** How a game's worth came about: `start` plus all parts is `end`. */
export interface Ledger {
  /** The mean worth of a deal. */
  readonly start: number;
  readonly parts: readonly LedgerPart[];
  readonly totals: Readonly<Record<PartKind, number>>;
  /** The result, 1 for the user's win and 0 for none; without a result the worth at the last event. */
  readonly end: number;
}

/** A ledger being written: each entry says where the worth stands after it. */
export class LedgerBook {
  readonly #start: number;
  readonly #parts: LedgerPart[] = [];
  #worth: number;

  constructor(start: number) {
    this.#start = start;
    this.#worth = start;
  }

  get worth(): number {
    return this.#worth;
  }

  /** Moves the worth to `worth`; the difference is the part's amount. No move is no part. */
  move(kind: PartKind, place: number, worth: number): void {
    const amount = worth - this.#worth;
    if (amount === 0) return;
    this.#parts.push({ kind, place, amount, worth });
    this.#worth = worth;
  }

  close(): Ledger {
    const total = (kind: PartKind): number =>
      this.#parts.filter((part) => part.kind === kind).reduce((sum, { amount }) => sum + amount, 0);
    const totals = {
      deal: total('deal'),
      promise: total('promise'),
      choice: total('choice'),
      luck: total('luck'),
      table: total('table'),
      rest: total('rest'),
    };
    return { start: this.#start, parts: this.#parts, totals, end: this.#worth };
  }
}
