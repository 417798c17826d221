import { type Result, success } from '../../../core/base/result.ts';
import type { NotedEvent } from '../../../core/game/events.ts';
import type { GameRecord } from '../../../core/game/record.ts';
import { choiceCosts } from '../../../core/journal/choice-costs.ts';
import type { GameFigures } from '../../../core/journal/figures.ts';
import { cardMark, type Review } from '../../../core/review/review.ts';
import type { Findings, GameChange } from '../../../main/desk/desk.ts';
import type { GameSession } from '../../session/game-session.ts';
import type { AppContext } from '../../shell/app-context.ts';
import type { JournalStore } from '../journal/journal-store.ts';

/** Where the look-back stands. */
export type LookbackStatus = 'opening' | 'gone' | 'no-deal' | 'thinking' | 'stopped' | 'failed' | 'done';

/** Where the look ahead to the end of the exchange stands, which follows the exact review. */
export type AheadStatus = 'thinking' | 'stopped' | 'failed' | 'done';

/** One game being looked back at: its record, and its review, kept or computed now. */
export class LookbackStore {
  readonly #app: AppContext;
  readonly #journal: JournalStore;
  readonly #id: string;
  readonly #listeners = new Set<() => void>();
  #stop = new AbortController();
  /** Known once the game was measured; a note does not change them. */
  #figures: GameFigures | null = null;
  status: LookbackStatus = 'opening';
  record: GameRecord | null = null;
  review: Review | null = null;
  /** The part of the review, or of the look ahead, that is done, 0 to 1. */
  share = 0;
  aheadStatus: AheadStatus = 'thinking';
  trouble = '';

  constructor(app: AppContext, journal: JournalStore, id: string) {
    this.#app = app;
    this.#journal = journal;
    this.#id = id;
  }

  get id(): string {
    return this.#id;
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Opens the game and shows its review: the kept one if it still holds, else a new one. */
  async open(): Promise<void> {
    const record = await this.#app.desk.openGame(this.#id);
    if (!record.ok) return this.#set('gone', record.problem.message);
    this.record = record.value;
    if (!record.value.events.some(({ type }) => type === 'dealt')) return this.#set('no-deal');
    const kept = await this.#keptReview();
    if (kept === null) return await this.think();
    this.review = kept;
    this.#set('done');
    await this.lookAhead();
  }

  /** Computes the review in the background, and keeps it. */
  async think(): Promise<void> {
    const { record } = this;
    if (record === null) return;
    const { worker } = this.#journal;
    const task = this.#begin();
    this.#set('thinking');
    const outcome = await worker.ask('review', record, task);
    if (task.signal.aborted || outcome.status === 'cancelled') return;
    if (outcome.status === 'failed') return this.#set('failed', outcome.message);
    if (!outcome.value.ok) return this.#set('failed', outcome.value.message);
    this.review = outcome.value.value;
    this.#set('done');
    await this.#keep(outcome.value.value, record);
    if (!task.signal.aborted) await this.lookAhead();
  }

  /** Looks ahead to the end of the exchange, where that is not known yet, and keeps it with the review. */
  async lookAhead(): Promise<void> {
    const { record, review } = this;
    if (record === null || review === null) return;
    if (review.lookedAhead) return this.#setAhead('done');
    const task = this.#begin();
    this.#setAhead('thinking');
    const outcome = await this.#journal.aheadWorker.ask('lookAhead', { record, review }, task);
    if (task.signal.aborted || outcome.status === 'cancelled') return;
    if (outcome.status === 'failed' || !outcome.value.ok) return this.#setAhead('failed');
    // What was noted in the meantime stays.
    this.review = withNotesOf(outcome.value.value, this.review ?? review);
    this.#setAhead('done');
    await this.#keep(this.review, record);
  }

  /** What the work in the background is asked with: a way to stop it, and whom it tells how far it is. */
  #begin(): { readonly signal: AbortSignal; readonly onProgress: (share: number) => void } {
    this.#stop = new AbortController();
    this.share = 0;
    const onProgress = (share: number): void => {
      this.share = share;
      this.#tell();
    };
    return { signal: this.#stop.signal, onProgress };
  }

  stop(): void {
    this.#stop.abort();
    if (this.status === 'thinking') this.#set('stopped');
    if (this.aheadStatus === 'thinking') this.#setAhead('stopped');
  }

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
    if (this.review === null || this.record === null) return refreshed;
    const decisions = this.review.decisions.map((each) =>
      each.place === about ? { ...each, notes: [...each.notes, text] } : each,
    );
    this.review = { ...this.review, decisions };
    this.#tell();
    await this.#keep(this.review, this.record);
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
    this.#tell();
    return success(null);
  }

  async #keptReview(): Promise<Review | null> {
    const found = await this.#app.desk.readFindings(this.#id);
    const game = this.#journal.game(this.#id);
    const findings = found.ok ? found.value[0] : undefined;
    if (findings === undefined || game === undefined || findings.key !== this.#journal.keyOf(game)) return null;
    this.#figures = findings.figures;
    const { review } = findings;
    return review !== undefined && this.record !== null && review.card === cardMark(this.record) ? review : null;
  }

  async #keep(review: Review, record: GameRecord): Promise<void> {
    const figures = this.#figures ?? (await this.#measure(record));
    const game = this.#journal.game(this.#id);
    if (game === undefined || figures === null) return;
    this.#figures = figures;
    // The season counts a game once all of its choices are judged.
    const choices = review.lookedAhead ? choiceCosts(review) : null;
    const key = this.#journal.keyOf(game);
    const findings: Findings = { id: this.#id, key, figures, choices, review };
    const kept = await this.#journal.learn([findings]);
    this.trouble = kept.ok ? '' : kept.problem.message;
    this.#tell();
  }

  async #measure(record: GameRecord): Promise<GameFigures | null> {
    const figures = await this.#journal.worker.ask('figures', record);
    return figures.status === 'done' && figures.value.ok ? figures.value.value : null;
  }

  #set(status: LookbackStatus, trouble = ''): void {
    this.status = status;
    this.trouble = trouble;
    this.#tell();
  }

  #setAhead(status: AheadStatus): void {
    this.aheadStatus = status;
    this.#tell();
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
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
