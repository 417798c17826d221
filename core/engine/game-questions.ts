import { failure, type Result, success } from '../base/result.ts';
import { mapped, scaled, silent, type Steps } from '../base/steps.ts';
import { type MarkedCard, markedCard } from '../card/mark.ts';
import { fittedChance } from '../chance/card-chance.ts';
import type { CardFit } from '../chance/table-figures.ts';
import { type GameState, NEW_GAME } from '../game/game-state.ts';
import type { GameRecord } from '../game/record.ts';
import { likelyDrawn } from '../game/stage.ts';
import { stateOf, statesOf } from '../game/state.ts';
import { DEMO_GAMES, demoSeason } from '../journal/demo-season.ts';
import { figuresOf } from '../journal/figures.ts';
import type { GameFigures } from '../journal/findings.ts';
import { type RaceRule, USUAL_RULE } from '../plan/race.ts';
import { type StageTerms, termsAt } from '../reading/reach-model.ts';
import { GameChance } from '../review/game-chance.ts';
import { type CountedRace, type DueRace, judgedBy, lookAheadSteps, racesDue } from '../review/look-ahead.ts';
import { PlayedGame } from '../review/played-game.ts';
import { type Review, reviewSteps } from '../review/review.ts';
import { type TriedChoice, tryChoice } from '../review/try-choice.ts';
import { type GameYardstick, gameYardstick } from '../review/yardstick.ts';
import type { IncomingRates } from '../table/incoming-rates.ts';
import { USUAL_KIND } from '../table/kinds.ts';
import { fitTerms } from '../table/reach-fit.ts';
import { Tiles } from '../tiles/tiles.ts';
import { readyCard, type ReadyCard } from './cards.ts';
import type { Counts, Said } from './moment.ts';

/* The questions of a kept game: what it was, what its choices cost, and a season of invented ones. */

export interface LookBackRequest {
  readonly record: GameRecord;
  /** The terms of reach; those of the card's own simulated games unless given. */
  readonly stages?: StageTerms | null;
  /** What the card's own games brought at the kind of table that the game was played at; they are played unless it is given. */
  readonly fit?: CardFit | null;
  /** The exact review, where it is known already; it is then not made again. */
  readonly exact?: Review | null;
  /** How the look ahead runs; `null` for the exact review alone. */
  readonly rule?: RaceRule | null;
  /** What comes in by passes, for the look ahead; all tiles alike if null or left out. */
  readonly rates?: IncomingRates | null;
}

/** How far a look-back has come: the part done of its stage, 0 to 1, and the review each time it has grown. */
export interface LookBackProgress {
  readonly stage: 'exact' | 'ahead';
  readonly done: number;
  readonly review: Review | null;
}

/** The parts of an exact review that go by until the terms of reach are known, and then those of the chance. */
const FIT_PART = 0.2;
const CHANCE_PART = 0.3;

/**
 * The look-back of a game: the exact review first, then choice by choice what each costs by the end
 * of the exchange. All by one replay of its events, one set of models, and one table of each pass.
 */
export function* lookBack(request: LookBackRequest): Steps<LookBackProgress, Result<Review>> {
  const { record, exact = null, rule = USUAL_RULE, rates = null } = request;
  yield { stage: 'exact', done: 0, review: null };
  const ready = readyCard(markedCard(record.card));
  if (!ready.ok) return ready;
  const card = ready.value;
  const states = statesOf(record.events);
  if (!states.ok) return states;
  const yardstick = yield* inExact(yardstickOf(card, request.stages ?? exact?.stages ?? null), 0, FIT_PART);
  const game = playedGame(record, states.value, yardstick);
  let review = exact;
  if (review === null) {
    const fitted = request.fit
      ? fittedChance(request.fit)
      : yield* inExact(card.fittedAt(record.table ?? USUAL_KIND), FIT_PART, CHANCE_PART);
    const chance = new GameChance(card.table, fitted, { swapAfterCall: record.swapAfterCall });
    const steps = mapped(reviewSteps(record, game, chance), ({ done, of }) => done / of);
    review = yield* inExact(steps, FIT_PART + CHANCE_PART, 1 - FIT_PART - CHANCE_PART);
    yield { stage: 'exact', done: 1, review };
  }
  if (rule === null) return success(review);
  const ahead = lookAheadSteps(card.table, game, review, rule, rates);
  return success(yield* mapped(ahead, (progress) => ({ stage: 'ahead' as const, ...progress })));
}

export interface RacesRequest {
  readonly record: GameRecord;
  /** The exact review of the game. */
  readonly exact: Review;
  /** What comes in by passes; all tiles alike if null. */
  readonly rates: IncomingRates | null;
}

/** A race of a game, and what is said of the moment at which its choices stood, for `futures`. */
export interface RaceDocument extends DueRace {
  readonly said: Said;
}

/** The races that a look-back needs, to be counted by several workers; their results are for `judge`. */
export function* races(request: RacesRequest): Steps<undefined, Result<readonly RaceDocument[]>> {
  yield undefined;
  const game = gameOf(request);
  if (!game.ok) return game;
  const { stages, chance: fit } = request.exact;
  const due = yield* racesDue(game.value, request.rates);
  const { rates } = request;
  return success(
    due.map((race) => {
      const terms = termsAt(stages, likelyDrawn(game.value.before(race.place)));
      return { ...race, said: { terms, rates, offered: race.offered, fit } };
    }),
  );
}

export interface JudgeRequest {
  readonly record: GameRecord;
  /** The exact review of the game. */
  readonly exact: Review;
  /** All races of the game, counted. */
  readonly counted: readonly CountedRace[];
}

/** The whole review: the exact one with what all races have shown. */
export function* judge(request: JudgeRequest): Steps<undefined, Result<Review>> {
  yield undefined;
  const game = gameOf(request);
  if (!game.ok) return game;
  return success({ ...judgedBy(game.value, request.exact, request.counted), lookedAhead: true });
}

/** The game of a review, made ready by its terms of reach. */
function gameOf({
  record,
  exact,
}: {
  readonly record: GameRecord;
  readonly exact: Pick<Review, 'stages'>;
}): Result<PlayedGame> {
  const ready = readyCard(markedCard(record.card));
  if (!ready.ok) return ready;
  const states = statesOf(record.events);
  if (!states.ok) return states;
  return success(playedGame(record, states.value, gameYardstick(ready.value.compiled, exact.stages)));
}

function inExact<Value>(steps: Steps<number, Value>, start: number, share: number): Steps<LookBackProgress, Value> {
  return mapped(scaled(steps, start, share), (done) => ({ stage: 'exact', done, review: null }));
}

/** The yardstick of a card by the terms given, or by its own simulated games, which are played once. */
function* yardstickOf(card: ReadyCard, stages: StageTerms | null): Steps<number, GameYardstick> {
  if (stages !== null) return gameYardstick(card.compiled, stages);
  card.stages ??= yield* fitTerms(card.compiled);
  return gameYardstick(card.compiled, card.stages);
}

let keptGame: { readonly key: string; readonly game: PlayedGame } | undefined;

/** A game made ready to be looked back at; the last one is kept, since a person tries several choices of one game. */
function playedGame({ card, events }: GameRecord, states: readonly GameState[], yardstick: GameYardstick): PlayedGame {
  const key = JSON.stringify([markedCard(card).mark, yardstick.stages, events]);
  if (keptGame?.key !== key) keptGame = { key, game: new PlayedGame(events, states, yardstick) };
  return keptGame.game;
}

export interface TryRequest {
  readonly record: GameRecord;
  /** The terms of reach and the chance that the look-back was made with. */
  readonly exact: Pick<Review, 'stages' | 'chance'>;
  /** The place of the event in the game's list. */
  readonly place: number;
  readonly tiles: Counts;
  /** What comes in by passes; all tiles alike if null or left out. */
  readonly rates?: IncomingRates | null;
}

/** What another pass or discard would have led to, beside what the one that was made led to. */
export function* tryAnother(request: TryRequest): Steps<undefined, Result<TriedChoice>> {
  const { record, exact, place, tiles, rates = null } = request;
  yield undefined;
  const card = readyCard(markedCard(record.card));
  if (!card.ok) return card;
  const game = gameOf(request);
  if (!game.ok) return game;
  const { swapAfterCall } = record;
  const measure = { table: card.value.table, chance: exact.chance, rates, swapAfterCall };
  const tried = yield* tryChoice(game.value, measure, place, Tiles.fromCounts(tiles));
  if (tried === null) return failure('no-choice', 'These tiles can’t be given there. Choose others.');
  return success(tried);
}

export interface FiguresRequest {
  readonly record: GameRecord;
  /** The terms of reach; those of the card's own simulated games unless given. */
  readonly stages?: StageTerms | null;
}

/** What only the engine can say of a game: how far away it was at each moment, and what it aimed at. */
export function* figures({ record, stages = null }: FiguresRequest): Steps<undefined, Result<GameFigures>> {
  yield undefined;
  const ready = readyCard(markedCard(record.card));
  if (!ready.ok) return ready;
  const legal = stateOf(record.events);
  if (!legal.ok) return legal;
  const yardstick = yield* silent(yardstickOf(ready.value, stages));
  const { compiled, model } = yardstick.at(NEW_GAME);
  return success(figuresOf(record.events, compiled, model));
}

export interface SeasonRequest {
  readonly card: MarkedCard;
  readonly appVersion: string;
}

/** An invented season with a card; progress is the part done, 0 to 1. */
export function* season({ card, appVersion }: SeasonRequest): Steps<number, Result<readonly GameRecord[]>> {
  const ready = readyCard(card);
  if (!ready.ok) return ready;
  const task = { card: ready.value.file.card, document: card.document, appVersion };
  return success(yield* mapped(demoSeason(task), (games) => games / DEMO_GAMES));
}
