import type { GameRecord } from '../../core/game/record.ts';
import type { GameFigures } from '../../core/journal/figures.ts';
import type { StageTerms } from '../../core/reading/stage-terms.ts';
import type { Review } from '../../core/review/review.ts';
import type { TriedChoice } from '../../core/review/try-choice.ts';
import type { Answered } from './calls.ts';
import type { Calls } from './messages.ts';

/** What the Journal asks of a worker of its own. Progress is the part done, 0 to 1. */
export interface JournalCalls extends Calls {
  figures: { request: GameRecord; progress: never; answer: Answered<GameFigures> };
  /** The exact look-back. */
  review: { request: GameRecord; progress: number; answer: Answered<Review> };
  /** The same with the look ahead to the end of the exchange. */
  lookAhead: { request: LookAheadRequest; progress: number; answer: Answered<Review> };
  try: { request: TryRequest; progress: never; answer: Answered<TriedChoice> };
  /** An invented season with a card. */
  season: { request: SeasonRequest; progress: number; answer: Answered<readonly GameRecord[]> };
}

export interface LookAheadRequest {
  readonly record: GameRecord;
  readonly review: Review;
}

export interface TryRequest {
  readonly record: GameRecord;
  /** The terms of reach that the look-back was made with. */
  readonly stages: StageTerms;
  /** The place of the event in the game's list. */
  readonly place: number;
  readonly tiles: string;
}

export interface SeasonRequest {
  /** The card file's text. */
  readonly card: string;
  readonly appVersion: string;
}
