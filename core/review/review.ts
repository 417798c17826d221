import { fingerprint } from '../base/fingerprint.ts';
import { expectValue, type Result, success } from '../base/result.ts';
import { writeGameFile } from '../game/file/write-game-file.ts';
import type { EndedEvent, GameEvent } from '../game/events.ts';
import { type GameState, NEW_GAME } from '../game/game-state.ts';
import { handView } from '../game/hand-view.ts';
import type { GameProblem } from '../game/problems.ts';
import type { GameRecord } from '../game/record.ts';
import { handSize } from '../game/seen.ts';
import type { StageTerms } from '../reading/stage-terms.ts';
import { applyEvent, stateOf } from '../game/state.ts';
import { meanAfterDraw } from './choices.ts';
import { type Decision } from './decision.ts';
import { type DealMean } from './deal-mean.ts';
import { type Ledger, LedgerBook } from './ledger.ts';
import { judgePass } from './review-pass.ts';
import { judgeCall, judgeDiscard, judgeLetGo, judgeSwap } from './review-play.ts';
import type { Gauge } from './gauge.ts';
import { worthOf } from './worth.ts';

/** Raised whenever the same game would be judged otherwise, so that kept reviews are computed anew. */
export const REVIEW_VERSION = 4;

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
  /** What the worth of a deal was compared with, sampled with a seed. */
  readonly deal: DealMean;
  readonly decisions: readonly Decision[];
  readonly ledger: Ledger;
  /** What all choices gave up together, as booked in the ledger: the choice of a second round is not in it. */
  readonly cost: number;
  /** Whether it was looked ahead to the end of the exchange too (look-ahead.ts). */
  readonly lookedAhead: boolean;
}

/** How far a review has come: events done, of all. */
export interface ReviewProgress {
  readonly done: number;
  readonly of: number;
}

/** What a kept review was made from; when it differs, compute the review anew. */
export function reviewKey(record: GameRecord, { stages }: Gauge): string {
  return fingerprint(`${REVIEW_VERSION} ${JSON.stringify(stages)} ${writeGameFile(record)}`);
}

/** Tells one card from another by the document kept with a game. */
export function cardMark({ card }: GameRecord): string {
  return fingerprint(JSON.stringify(card));
}

/**
 * Reviews a game event by event, so that a worker may stop between them; the last answer is the
 * exact review, still without the look ahead. `deal` is the mean worth of a deal of the user's size by this gauge. Refused when the
 * events can't be.
 */
export function* reviewSteps(
  record: GameRecord,
  gauge: Gauge,
  deal: DealMean,
): Generator<ReviewProgress, Result<Review, GameProblem>> {
  const last = stateOf(record.events);
  if (!last.ok) return last;
  const reviewer = new Reviewer(gauge, deal, record.events);
  for (const place of record.events.keys()) {
    reviewer.step(place);
    yield { done: place + 1, of: record.events.length };
  }
  const ledger = reviewer.book.close();
  const decisions = reviewer.decisions.map((each) => ({ ...each, notes: notesAbout(last.value, each.place) }));
  const cost = decisions.reduce((sum, each) => sum + each.cost, 0);
  return success({
    id: record.id,
    reviewVersion: REVIEW_VERSION,
    card: cardMark(record),
    model: gauge.source,
    stages: gauge.stages,
    deal,
    decisions,
    ledger,
    cost,
    lookedAhead: false,
  });
}

/** What the user noted about an event. */
export function notesAbout({ notes }: GameState, place: number): string[] {
  return notes.filter(({ about }) => about === place).map(({ text }) => text);
}

class Reviewer {
  readonly decisions: Decision[] = [];
  readonly book: LedgerBook;
  readonly #gauge: Gauge;
  readonly #events: readonly GameEvent[];
  #state: GameState = NEW_GAME;

  constructor(gauge: Gauge, deal: DealMean, events: readonly GameEvent[]) {
    this.#gauge = gauge;
    this.#events = events;
    this.book = new LedgerBook(deal.mean);
  }

  step(place: number): void {
    const event = this.#events[place] as GameEvent;
    const before = this.#state;
    this.#state = expectValue(applyEvent(before, event));
    this.#take(event, before, this.#state, place);
  }

  #take(event: GameEvent, before: GameState, after: GameState, place: number): void {
    switch (event.type) {
      case 'dealt':
        return this.book.move('deal', place, this.#worth(after));
      case 'gave':
        return this.#decide(judgePass(this.#gauge.at(before), before, event, place));
      case 'received':
        return after.exchange?.phase === 'receiving' ? undefined : this.book.move('luck', place, this.#worth(after));
      case 'drew':
        this.book.move('table', place, meanAfterDraw(this.#gauge.at(before), before));
        return this.book.move('luck', place, this.#worth(after));
      case 'discarded':
        return this.#discarded(event, before, after, place);
      case 'called':
        if (event.seat === before.seat) return this.#decide(judgeCall(this.#gauge.at(before), before, event, place));
        return this.book.move('table', place, this.#worth(after));
      case 'swapped':
        if (event.seat === before.seat)
          return this.#decide(judgeSwap(this.#gauge.at(before), before, after, event, place));
        return this.book.move('table', place, this.#worth(after));
      case 'ended':
        return this.#ended(event, after, place);
      case 'stopped':
      case 'noted':
        return undefined;
    }
  }

  #discarded(event: GameEvent & { type: 'discarded' }, before: GameState, after: GameState, place: number): void {
    if (event.seat === before.seat && handSize(before) === 14) {
      this.#decide(judgeDiscard(this.#gauge.at(before), before, event, place));
      // A turn later the wall is shorter: another stage of play may have begun.
      return this.book.move('table', place, this.#worth(after));
    }
    this.book.move('table', place, this.#worth(after));
    const letGo = judgeLetGo(this.#gauge.at(after), after, event, this.#events[place + 1], place);
    if (letGo !== null) this.#decide(letGo);
  }

  #ended({ result, winner }: EndedEvent, { seat }: GameState, place: number): void {
    if (result === 'abandoned' || seat === null) return;
    this.book.move('rest', place, winner === seat ? 1 : 0);
  }

  /** Books what the best choice promised, in play as a part of its turns, and what the one taken gave up. */
  #decide(decision: Decision): void {
    this.decisions.push(decision);
    this.book.move(decision.step === null ? 'table' : 'promise', decision.place, decision.best.worth);
    this.book.move('choice', decision.place, decision.chosen.worth);
  }

  #worth(state: GameState): number {
    return worthOf(this.#gauge.at(state), handView(state)).value;
  }
}
