import type { Random } from '../base/random.ts';
import type { PassStep } from '../exchange/steps.ts';
import type { Contest } from '../plan/race.ts';
import { playExchange } from '../table/exchange.ts';
import { playOut } from '../table/play.ts';
import { POLICIES } from '../table/policies/names.ts';
import { makeTable, playerAt, SEAT_COUNT, type Table } from '../table/table.ts';
import type { TableCard } from '../table/table-card.ts';
import type { TableEvent } from '../table/trace.ts';
import { fetchReturned, type KnownDeal, knownDeal, layKnownDeal, type Position } from './known-deal.ts';
import type { PassChoice } from './rivals.ts';
import { type History, OtherSeat, OwnSeat } from './seats.ts';
import { GAME_FIGURES } from './figures.ts';
import { type GameTerms, USUAL_GAME } from './terms.ts';

/**
 * Compares choices by whole games at the simulated table: the chance to win is the share of games
 * won, whatever the model of reach says; the second figure is the least away when play begins. The
 * luck of play is in every game, so that it takes some hundred times as many futures.
 */
export function gamesContest(
  card: TableCard,
  position: Position,
  choices: readonly PassChoice[],
  terms: GameTerms = USUAL_GAME,
): Contest {
  const futures = new GameFutures(card, position, terms);
  return {
    candidates: choices.length,
    figures: GAME_FIGURES,
    sample: (candidate, random, into) => {
      const { won, away } = futures.play(choices[candidate] as PassChoice, random);
      into[0] = won ? 1 : 0;
      into[1] = away;
    },
  };
}

/** How one future came out for the user. */
export interface GameFuture {
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
export class GameFutures {
  readonly #table: Table;
  readonly #deal: KnownDeal;
  readonly #own: OwnSeat;
  #begun: PassStep | undefined;

  constructor(card: TableCard, position: Position, terms: GameTerms = USUAL_GAME) {
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
  play(choice: PassChoice, random: Random): GameFuture {
    this.#own.choice = choice;
    this.#begun = undefined;
    const { seat } = this.#deal;
    layKnownDeal(this.#table, this.#deal, random);
    playExchange(this.#table);
    const away = playerAt(this.#table, seat).hand.least();
    return { won: playOut(this.#table).winner === seat, away };
  }

  /** Every event of one future, as `formatTrace` prints it; the deal is not among them. */
  trace(choice: PassChoice, random: Random): TableEvent[] {
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
