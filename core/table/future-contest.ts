import type { Contest } from '../plan/race.ts';
import { Futures, type FutureTerms, USUAL_TERMS } from './future.ts';
import { ExchangeFutures } from './future-exchange.ts';
import { type ExchangeTerms, USUAL_EXCHANGE } from './future-usual.ts';
import { EXCHANGE_FIGURES, GAME_FIGURES } from './future-figures.ts';
import type { Choice } from './future-seats.ts';
import type { Position } from './future-world.ts';
import type { TableCard } from './table-card.ts';

/**
 * Compares choices by the rest of the exchange: the chance to win is the best reach when play
 * begins, by the model of reach; the second figure is the least away then. Quick, and precise for
 * the model.
 */
export function exchangeContest(
  card: TableCard,
  position: Position,
  choices: readonly Choice[],
  terms: ExchangeTerms = USUAL_EXCHANGE,
): Contest {
  const futures = new ExchangeFutures(card, position, terms);
  return {
    candidates: choices.length,
    figures: EXCHANGE_FIGURES,
    sample: (candidate, random, into) => {
      const { reach, away } = futures.play(choices[candidate] as Choice, random);
      into[0] = reach;
      into[1] = away;
    },
  };
}

/**
 * Compares choices by whole games at the simulated table: the chance to win is the share of games
 * won, whatever the model of reach says; the second figure is the least away when play begins. The
 * luck of play is in every game, so that it takes some hundred times as many futures.
 */
export function gamesContest(
  card: TableCard,
  position: Position,
  choices: readonly Choice[],
  terms: FutureTerms = USUAL_TERMS,
): Contest {
  const futures = new Futures(card, position, terms);
  return {
    candidates: choices.length,
    figures: GAME_FIGURES,
    sample: (candidate, random, into) => {
      const { won, away } = futures.play(choices[candidate] as Choice, random);
      into[0] = won ? 1 : 0;
      into[1] = away;
    },
  };
}
