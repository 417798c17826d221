import { type Result, success } from '../../../core/base/result.ts';
import { cardMark } from '../../../core/card/mark.ts';
import type { NotedEvent } from '../../../core/game/events.ts';
import type { GameRecord } from '../../../core/game/record.ts';
import { choiceCosts } from '../../../core/journal/choice-costs.ts';
import { ledgerSums } from '../../../core/journal/season-ledger.ts';
import type { Findings, GameFigures } from '../../../core/journal/findings.ts';
import type { Review } from '../../../core/review/review.ts';
import type { TriedChoice } from '../../../core/review/try-choice.ts';
import type { Tiles } from '../../../core/tiles/tiles.ts';
import type { GameChange } from '../../../main/desk/desk.ts';
import { type Answer, Ask } from '../../session/ask.ts';
import type { GameSession } from '../../session/game-session.ts';
import { lookBackAt, type LookBackOrder } from '../../session/look-back.ts';
import { Store } from '../../session/store.ts';
import type { AppContext } from '../../shell/app-context.ts';
import type { JournalStore } from '../journal/journal-store.ts';

/** Asks what other tiles at a place of the game would have led to. */
export type TryAnother = (place: number, tiles: Tiles) => Promise<Result<TriedChoice>>;

/** Where the look-back stands before there is a review, or that it is there. */
export type LookbackStatus = 'opening' | 'gone' | 'no-deal' | Answer<Review>['status'];

/** One game being looked back at: its record, and its review, kept or computed now. */
export class LookbackStore extends Store {
  readonly #app: AppContext;
  readonly #journal: JournalStore;
  readonly #id: string;
  /** The exact review comes first, then the one that also looks ahead to the end of the exchange. */
  readonly #lookBack: Ask<LookBackOrder, never, Review>;
  /** Known once the game was measured; a note does not change them. */
  #figures: GameFigures | null = null;
  #opening: 'opening' | 'gone' | 'no-deal' | 'opened' = 'opening';
  record: GameRecord | null = null;
  review: Review | null = null;
  trouble = '';
  /**
   * True once the story can be told: when all is known, or the look ahead was left off. It stays so while that is made up
   * for, so that what is on the screen stays there.
   */
  isTold = false;

  constructor(app: AppContext, journal: JournalStore, id: string) {
    super();
    this.#app = app;
    this.#journal = journal;
    this.#id = id;
    this.#lookBack = new Ask(
      // The exact review is an answer at once; the look ahead refines it at the end, so that nothing moves meanwhile.
      (order, { signal, progress, value }) =>
        lookBackAt(order, journal.lookBackWorker, app, { signal, progress, exact: value }),
      { patience: 0 },
    );
    this.#lookBack.subscribe(() => this.#found());
  }

  get id(): string {
    return this.#id;
  }

  get status(): LookbackStatus {
    if (this.#opening !== 'opened') return this.#opening;
    return this.review === null ? this.#lookBack.answer.status : 'done';
  }

  /** Where the look ahead to the end of the exchange stands, which follows the exact review. */
  get ahead(): Answer<Review>['status'] {
    return this.review?.lookedAhead === true ? 'done' : this.#lookBack.answer.status;
  }

  /** The part of the review, or of the look ahead, that is done, 0 to 1. */
  get share(): number {
    return this.#lookBack.answer.progress ?? 0;
  }

  /** Opens the game and shows its review: the kept one if it still holds, else a new one. */
  async open(): Promise<void> {
    const { session, desk } = this.#app;
    // The last steps of the game on the table may still be on their way to the disk.
    if (session.id === this.#id) await whenSaved(session);
    const record = await desk.openGame(this.#id);
    if (!record.ok) return this.#set('gone', record.problem.message);
    this.record = record.value;
    if (!record.value.events.some(({ type }) => type === 'dealt')) return this.#set('no-deal');
    this.review = await this.#keptReview();
    const found = this.lookBack();
    this.#set('opened');
    await found;
  }

  /** Computes in the background what is not known yet of the review, and keeps it. */
  async lookBack(): Promise<void> {
    const { record, review } = this;
    if (record === null || review?.lookedAhead === true) return;
    await this.#lookBack.ask({ record, exact: review });
  }

  stop(): void {
    this.#lookBack.stop();
  }

  /** Adopts a review that was found; notes written in the meantime stay. */
  #found(): void {
    const { value, message } = this.#lookBack.answer;
    if (value !== null && (this.review === null || (value.lookedAhead && !this.review.lookedAhead))) {
      this.review = this.review === null ? value : withNotesOf(value, this.review);
      void this.#keep();
    }
    if (this.review === null) this.trouble = message;
    this.notify();
  }

  protected override notify(): void {
    this.isTold ||= this.status === 'done' && this.ahead !== 'pending';
    super.notify();
  }

  /** What another choice at a place of the game would have led to. */
  readonly tryAnother: TryAnother = async (place, tiles) => {
    const [record, exact] = [this.record as GameRecord, this.review as Review];
    const rates = await this.#app.incoming.ratesFor(exact.chance, new AbortController().signal);
    const measure = { stages: exact.stages, chance: exact.chance };
    return await this.#journal.worker.ask('try', { record, exact: measure, place, tiles: tiles.toCounts(), rates });
  };

  async change(change: GameChange): Promise<Result<null>> {
    const changed = await this.#app.desk.changeGame(this.#id, change);
    if (!changed.ok) return changed;
    return await this.#refresh();
  }

  /** Adds a note; about a choice, or about the whole game. What was computed stays: a note changes no number. */
  async note(text: string, about?: number): Promise<Result<null>> {
    const written = await this.#write({ type: 'noted', text, ...(about === undefined ? {} : { about }) });
    if (!written.ok) return written;
    const refreshed = await this.#refresh();
    if (this.review === null) return refreshed;
    const decisions = this.review.decisions.map((each) =>
      each.place === about ? { ...each, notes: [...each.notes, text] } : each,
    );
    this.review = { ...this.review, decisions };
    this.notify();
    await this.#keep();
    return refreshed;
  }

  /** The game on the table is changed there, so that its undo knows of it; any other one through the desk. */
  async #write(event: NotedEvent): Promise<Result<null>> {
    const { session, desk } = this.#app;
    if (session.id === this.#id) {
      const applied = session.apply(event);
      if (applied.ok) await whenSaved(session);
      return applied;
    }
    const place = this.record?.events.length ?? 0;
    return await desk.appendEvent(this.#id, place, { ...event, at: new Date().toISOString() });
  }

  async #refresh(): Promise<Result<null>> {
    const record = await this.#app.desk.openGame(this.#id);
    if (!record.ok) return record;
    this.record = record.value;
    await this.#journal.load();
    this.notify();
    return success(null);
  }

  async #keptReview(): Promise<Review | null> {
    const found = await this.#app.desk.readFindings(this.#id);
    const game = this.#journal.game(this.#id);
    const findings = found.ok ? found.value[0] : undefined;
    if (findings === undefined || game === undefined || findings.key !== this.#journal.keyOf(game)) return null;
    this.#figures = findings.figures;
    const { review } = findings;
    return review !== undefined && this.record !== null && review.card === cardMark(this.record.card) ? review : null;
  }

  /** Keeps the review as it is by the time that the game has been measured. */
  async #keep(): Promise<void> {
    const figures = this.#figures ?? (await this.#measure());
    const { review } = this;
    const game = this.#journal.game(this.#id);
    if (game === undefined || figures === null || review === null) return;
    this.#figures = figures;
    // The season counts a game once all of its choices are judged.
    const choices = review.lookedAhead ? choiceCosts(review) : null;
    const key = this.#journal.keyOf(game);
    const findings: Findings = { id: this.#id, key, figures, choices, ledger: ledgerSums(review), review };
    const kept = await this.#journal.learn([findings]);
    this.trouble = kept.ok ? '' : kept.problem.message;
    this.notify();
  }

  async #measure(): Promise<GameFigures | null> {
    if (this.record === null) return null;
    const stages = this.review?.stages ?? null;
    const figures = await this.#journal.worker.ask('figures', { record: this.record, stages });
    return figures.ok ? figures.value : null;
  }

  #set(opening: 'gone' | 'no-deal' | 'opened', trouble = ''): void {
    this.#opening = opening;
    this.trouble = trouble;
    this.notify();
  }
}

/** A review with the notes of another one of the same game. */
function withNotesOf(review: Review, other: Review): Review {
  const notes = new Map(other.decisions.map((each) => [each.place, each.notes]));
  const decisions = review.decisions.map((each) => ({ ...each, notes: notes.get(each.place) ?? each.notes }));
  return { ...review, decisions };
}

/** Waits until what was done at the Table is on disk, or could not be saved. */
function whenSaved(session: GameSession): Promise<void> {
  return new Promise((resolve) => {
    const look = (): void => {
      if (session.saved.status === 'saving') return;
      stop();
      resolve();
    };
    const stop = session.subscribe(look);
    look();
  });
}
