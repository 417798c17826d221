import { failure, type Result, success } from '../base/result.ts';
import type { Steps } from '../base/steps.ts';
import type { DueGames, PairCount } from '../future/play-costs.ts';
import { PlayGames } from '../review/play-games.ts';
import type { GameMoment } from './chance-questions.ts';
import { openMoment } from './moment.ts';

export interface PlayGamesRequest extends GameMoment {
  readonly due: DueGames;
}

/**
 * Plays games from a moment of play with the first choice of the advice and with others, by their places in its list; any
 * worker may play any of them (`PlayDuels`).
 */
export function* playGames(request: PlayGamesRequest): Steps<undefined, Result<readonly PairCount[]>> {
  const moment = openMoment(request);
  if (!moment.ok) return moment;
  const { card, chance, state } = moment.value;
  const games = state === null ? null : PlayGames.at({ table: card.table, chance }, state, request.at.events);
  if (games === null) return failure('no-choice', 'There is nothing to choose here.');
  return success(yield* games.count(request.due));
}
