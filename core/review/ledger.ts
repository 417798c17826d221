import { type Decision, type DecisionKind, isRight, judgementOf } from './decision.ts';

/**
 * What moved the chance to win. `deal`: the tiles dealt, against a mean deal. `received`: the tiles that passes brought.
 * `draws`: own draws. `others`: what the others discarded, called, stopped and won. `choice`: what the user chose
 * against the steady player's choice, more or less. `rest`: what was not entered, passes or play.
 */
export const PART_KINDS = ['deal', 'received', 'draws', 'others', 'choice', 'rest'] as const;
export type PartKind = (typeof PART_KINDS)[number];

/** What each part of a ledger is, in words for a player. */
export const PART_WORDS: Readonly<Record<PartKind, string>> = {
  deal: 'Deal',
  received: 'Tiles passed to you',
  draws: 'Your draws',
  others: 'The others',
  rest: 'Not entered',
  choice: 'Your choices',
};

export interface LedgerPart {
  readonly kind: PartKind;
  /** The place of the event in the game's list. */
  readonly place: number;
  /** Which choice of that event it was; null for what was not chosen, or is not judged. */
  readonly decision: DecisionKind | null;
  readonly amount: number;
  /** The same by the forecast alone, before what its decision was found to cost. */
  readonly forecast: number;
  /** The chance after it, 0 to 1. */
  readonly chance: number;
}

/** How a game's chance came about: `start` plus all parts is `end`. */
export interface Ledger {
  /** The mean chance of a deal. */
  readonly start: number;
  readonly parts: readonly LedgerPart[];
  readonly totals: Readonly<Record<PartKind, number>>;
  /** The result, 1 for the user's win and 0 for none; without a result the chance at the last event. */
  readonly end: number;
}

/** A ledger being written: each entry says where the chance stands after it. */
export class LedgerBook {
  readonly #start: number;
  readonly #parts: LedgerPart[] = [];
  #chance: number;

  constructor(start: number) {
    this.#start = start;
    this.#chance = start;
  }

  get chance(): number {
    return this.#chance;
  }

  /** Moves the chance; the difference is the part's amount. No move is no part. */
  move({ kind, place, decision, chance }: Pick<LedgerPart, 'kind' | 'place' | 'decision' | 'chance'>): void {
    if (chance !== this.#chance) this.end({ kind, place, decision, chance });
  }

  /** The last move, which is a part in any case: what was taken off a choice before it goes there. */
  end({ kind, place, decision, chance }: Pick<LedgerPart, 'kind' | 'place' | 'decision' | 'chance'>): void {
    const amount = chance - this.#chance;
    this.add({ kind, place, decision, amount, forecast: amount });
  }

  add(part: Omit<LedgerPart, 'chance'>): void {
    this.#chance += part.amount;
    this.#parts.push({ ...part, chance: this.#chance });
  }

  close(): Ledger {
    const total = (kind: PartKind): number =>
      this.#parts.filter((part) => part.kind === kind).reduce((sum, { amount }) => sum + amount, 0);
    const totals = {
      deal: total('deal'),
      received: total('received'),
      draws: total('draws'),
      others: total('others'),
      choice: total('choice'),
      rest: total('rest'),
    };
    return { start: this.#start, parts: this.#parts, totals, end: this.#chance };
  }
}

/**
 * The ledger with each choice booked as it was judged: it never counts for more against the user than the list says that
 * it gave up, and not at all where nothing was better. The forecast is for a moment; the list is for comparing choices
 * (core/chance/CHANCE.md). What is taken off a choice goes to what came next, so that the parts still add up.
 */
export function asJudged({ start, parts }: Ledger, decisions: readonly Decision[]): Ledger {
  const least = new Map(decisions.map((decision) => [`${decision.place} ${decision.kind}`, leastOf(decision)]));
  const book = new LedgerBook(start);
  let moved = 0;
  for (const part of parts) {
    const amount = part.forecast - moved;
    const judged = Math.max(amount, least.get(`${part.place} ${part.decision}`) ?? -Infinity);
    moved = judged - amount;
    book.add({ ...part, amount: judged });
  }
  return book.close();
}

/** The least that a decision may move the chance, 0 or less. */
function leastOf(decision: Decision): number {
  const { cost, verdict } = judgementOf(decision);
  if (isRight(verdict)) return 0;
  // Until it is looked ahead, a choice of the exchange has a cost for now alone, in reach.
  return decision.step !== null && decision.ahead === null ? -Infinity : -cost;
}

/** A ledger in whole games of a hundred: a chance is not known to less. */
export interface WholeLedger {
  readonly start: number;
  /** Parts that moved anything, choices last; they add up, so that one may be a game off from its own rounding. */
  readonly parts: readonly { readonly kind: PartKind; readonly amount: number; readonly at: number }[];
  readonly end: number;
}

/** What the user chose stands last, after all that came. */
const SHOWN_ORDER: readonly PartKind[] = ['deal', 'received', 'draws', 'others', 'rest', 'choice'];

export function wholeLedger({ start, totals, end }: Ledger): WholeLedger {
  const whole = (chance: number): number => Math.round(100 * chance);
  let chance = start;
  const parts = SHOWN_ORDER.filter((kind) => totals[kind] !== 0).map((kind) => {
    const before = whole(chance);
    chance += totals[kind];
    return { kind, amount: whole(chance) - before, at: whole(chance) };
  });
  return { start: whole(start), parts, end: whole(end) };
}
