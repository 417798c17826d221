import { mapped, type Steps } from '../base/steps.ts';
import { cardMark } from '../card/mark.ts';
import type { GameEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import type { GameRecord } from '../game/record.ts';
import type { StageTerms } from '../reading/reach-model.ts';
import type { CardChance } from '../chance/card-chance.ts';
import { CourseWriter } from './course.ts';
import type { Decision } from './decision.ts';
import type { GameChance } from './game-chance.ts';
import { type Ledger, asJudged } from './ledger.ts';
import { judgePass } from './passes.ts';
import type { PlayedGame } from './played-game.ts';
import { judgePlay } from './review-play.ts';
import type { Yardstick } from './yardstick.ts';

/** Raised whenever the same game would be judged otherwise, or in other words, so that kept reviews are computed anew. */
export const REVIEW_VERSION = 13;

/** The look-back of a game. */
export interface Review {
  readonly id: string;
  readonly reviewVersion: typeof REVIEW_VERSION;
  /** What the card was: a mark of the document kept with the game (`cardMark`). */
  readonly card: string;
  /** Where the model of reach has its numbers from, in words. */
  readonly model: string;
  /** The terms of that model for each stage of play: with them the same numbers come out again. */
  readonly stages: StageTerms;
  /** What the chance to win was made of: with it the same ledger comes out again. */
  readonly chance: CardChance;
  readonly decisions: readonly Decision[];
  readonly ledger: Ledger;
  /** What all choices of this stage gave up together, each against the best; the ledger sets them against the steady player's. */
  readonly cost: number;
  /** Whether it was looked ahead to the end of the exchange too (look-ahead.ts). */
  readonly lookedAhead: boolean;
}

/** How far a review has come: events done, of all. */
export interface ReviewProgress {
  readonly done: number;
  readonly of: number;
}

/**
 * Reviews a game event by event, so that a worker may stop in between; the last answer is the exact
 * review, still without the look ahead. `chance`: the chance to win with the game's card.
 */
export function* reviewSteps(record: GameRecord, game: PlayedGame, chance: GameChance): Steps<ReviewProgress, Review> {
  const { events } = game;
  const reviewer = new Reviewer(game, chance);
  const course = new CourseWriter(game, chance);
  for (const place of events.keys()) {
    yield* mapped(reviewer.step(place), () => ({ done: place, of: events.length }));
    course.write(place);
    yield { done: place + 1, of: events.length };
  }
  const decisions = reviewer.decisions.map((each) => ({ ...each, notes: notesAbout(game.last, each.place) }));
  const cost = decisions.reduce((sum, each) => sum + each.cost, 0);
  return {
    id: record.id,
    reviewVersion: REVIEW_VERSION,
    card: cardMark(record.card),
    model: game.yardstick.source,
    stages: game.yardstick.stages,
    chance: chance.fit,
    decisions,
    ledger: asJudged(course.book.close(), decisions),
    cost,
    lookedAhead: false,
  };
}

/** What the user noted about an event. */
export function notesAbout({ notes }: GameState, place: number): string[] {
  return notes.filter(({ about }) => about === place).map(({ text }) => text);
}

class Reviewer {
  readonly decisions: Decision[] = [];
  readonly #game: PlayedGame;
  readonly #chance: GameChance;

  constructor(game: PlayedGame, chance: GameChance) {
    this.#game = game;
    this.#chance = chance;
  }

  *step(place: number): Steps<undefined, void> {
    const event = this.#game.events[place] as GameEvent;
    const before = this.#game.before(place);
    if (event.type === 'gave') {
      const choices = yield* this.#game.passesDue(place);
      this.decisions.push(judgePass(this.#at(before), before, event, place, choices));
      return;
    }
    const decision = yield* judgePlay(this.#game, this.#chance, place);
    if (decision !== null) this.decisions.push(decision);
  }

  #at(state: GameState): Yardstick {
    return this.#game.yardstick.at(state);
  }
}
