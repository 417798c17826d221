import type { Random } from '../base/random.ts';
import type { PassStep } from '../exchange/steps.ts';
import { playExchange } from './exchange.ts';
import { type Choice, type History, OtherSeat, OwnSeat } from './future-seats.ts';
import { fetchReturned } from './future-return.ts';
import { type KnownDeal, knownDeal, layKnownDeal, type Position } from './future-world.ts';
import { playOut } from './play.ts';
import { POLICIES, type PolicyName } from './policies/names.ts';
import { makeTable, playerAt, SEAT_COUNT, type Table } from './table.ts';
import type { TableCard } from './table-card.ts';
import type { TableEvent } from './trace.ts';

/** Who plays on in a future, and what is known besides the position. */
export interface FutureTerms {
  /** The user's seat after the choice on trial. */
  readonly own: PolicyName;
  /** The three other seats, in the passes before it, too. */
  readonly others: PolicyName;
  /** How many tiles the player across asks for in the courtesy, if that is known. */
  readonly offered?: number;
}

/** What people are taken to do unless told otherwise. */
export const USUAL_TERMS: FutureTerms = { own: 'planner', others: 'soft' };

/** How one future came out for the user. */
export interface Future {
  readonly won: boolean;
  /** Tiles away when play begins. */
  readonly away: number;
}

/**
 * Futures of a position. Each deals the unseen tiles anew, so that the deal agrees with all that
 * the user has seen; plays the passes so far again, the user's as they were, the others' by policy
 * but for what they gave to the user; then tries a choice and plays on to the end. With the same
 * stream two choices meet the same deal, wall and likings.
 */
export class Futures {
  readonly #table: Table;
  readonly #deal: KnownDeal;
  readonly #own: OwnSeat;
  #begun: PassStep | undefined;

  constructor(card: TableCard, position: Position, terms: FutureTerms = USUAL_TERMS) {
    const { step, passes, stops } = position.exchange;
    if (step === null) throw new Error('a future begins while a pass is due');
    const history: History = {
      passes,
      due: step,
      stopped: stops.includes('left2'),
      offered: terms.offered,
      beforeStep: (begun) => this.#beforeStep(begun),
    };
    this.#deal = knownDeal(position);
    this.#own = new OwnSeat(POLICIES[terms.own](card), history);
    const policies = Array.from({ length: SEAT_COUNT }, (_, seat) => {
      if (seat === position.seat) return this.#own;
      const gifts = this.#deal.gifts.filter(({ giver }) => giver === seat);
      return new OtherSeat(
        POLICIES[terms.others](card),
        history,
        new Map(gifts.map((gift) => [gift.step, gift.tiles])),
      );
    });
    this.#table = makeTable(card, policies);
  }

  /** One future of a choice; all chance comes from `random`. */
  play(choice: Choice, random: Random): Future {
    this.#own.choice = choice;
    this.#begun = undefined;
    const { seat } = this.#deal;
    layKnownDeal(this.#table, this.#deal, random);
    playExchange(this.#table);
    const away = playerAt(this.#table, seat).hand.least();
    return { won: playOut(this.#table).winner === seat, away };
  }

  /** Every event of one future, as `formatTrace` prints it; the deal is not among them. */
  trace(choice: Choice, random: Random): TableEvent[] {
    const events: TableEvent[] = [];
    this.#table.trace = events;
    this.play(choice, random);
    this.#table.trace = undefined;
    return events;
  }

  /** Gives the giver of a step what it is known to give, before anybody decides what to pass. */
  #beforeStep(step: PassStep): void {
    if (step === this.#begun) return;
    this.#begun = step;
    const gift = this.#deal.gifts.find((each) => each.step === step);
    if (gift === undefined) return;
    const { hand } = playerAt(this.#table, gift.giver);
    for (const kind of gift.kept) hand.add(kind);
    fetchReturned(this.#table, this.#deal.seat, gift);
  }
}
