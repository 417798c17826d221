import { failure, type Result, success } from '../base/result.ts';
import type { Steps } from '../base/steps.ts';
import type { DueGames, PairCount } from '../future/play-costs.ts';
import { unseenTiles } from '../game/hand-view.ts';
import type { PointRules } from '../game/point-rules.ts';
import { PlayGames } from '../review/play-games.ts';
import { readOthers } from '../review/read-others.ts';
import { chanceAt, type GameMoment } from './chance-questions.ts';
import { openMoment } from './moment.ts';
import { type OthersDocument, othersDocument } from './others-document.ts';

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
  const { card, chance, state, said } = moment.value;
  const measure = { table: card.table, chance, swapAfterCall: said.swapAfterCall };
  const games = state === null ? null : PlayGames.at(measure, state, request.at.events);
  if (games === null) return failure('no-choice', 'There is nothing to choose here.');
  return success(yield* games.count(request.due));
}

export interface OthersRequest extends GameMoment {
  /** How the table pays. */
  readonly rules: PointRules;
}

/** What the others can hold at a moment of play, and what each tile of the rack risks (core/others/OTHERS.md). */
export function* others(request: OthersRequest): Steps<undefined, Result<OthersDocument>> {
  const moment = openMoment(request);
  if (!moment.ok) return moment;
  const { card, chance: fit, state } = moment.value;
  if (state === null || state.seat === null) return failure('no-deal', 'Nothing has been dealt yet.');
  yield undefined;
  const chance = chanceAt(request, moment.value);
  const reading = readOthers({ card: card.table, kind: fit.kind }, state, request.at.events);
  const { seat, rack } = state;
  const terms = { card: card.table, seat, rack, chance, unseen: unseenTiles(state), rules: request.rules };
  return success(othersDocument(reading, terms));
}
