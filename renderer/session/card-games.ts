import { type MarkedCard, markedCard } from '../../core/card/mark.ts';
import { DEMO_MARK } from '../../core/chance/demo-fit.ts';
import type { CardFit } from '../../core/chance/table-figures.ts';
import type { FitRequest } from '../../core/engine/chance-questions.ts';
import type { Said } from '../../core/engine/moment.ts';
import { likelyDrawn } from '../../core/game/stage.ts';
import { areFirstTerms, type ReachTerms, type StageTerms, termsAt } from '../../core/reading/reach-model.ts';
import type { TableKind } from '../../core/table/kinds.ts';
import type { WorkerLine } from '../worker/client.ts';
import { type Engine, engine } from '../worker/engine.ts';
import { type Answer, Ask, question } from './ask.ts';
import type { CardFits } from './card-fits.ts';
import type { GameSession } from './game-session.ts';
import { Store } from './store.ts';

export interface CardGamesParts {
  readonly session: Pick<GameSession, 'card' | 'state' | 'table' | 'subscribe'>;
  readonly fits: CardFits;
  readonly startWorker?: (() => WorkerLine) | undefined;
}

/** How long, in ms, a new card is in use before games with it are simulated. */
const SETTLING = 3000;

/**
 * What simulated games with the card in use have shown: how soon others win with it, and its chance at the kind of
 * table that is played at. They are played in the background, so that nothing waits for them.
 */
export class CardGames extends Store {
  readonly #session: CardGamesParts['session'];
  readonly #fits: CardFits;
  readonly #worker: Engine;
  readonly #stages: Ask<{ readonly card: MarkedCard }, never, StageTerms>;
  readonly #chance: Ask<FitRequest, CardFit, CardFit>;
  #card: unknown = null;
  #mark = '';
  /** The mark of the card whose games may be played now. */
  #settled = '';

  constructor({ session, fits, startWorker }: CardGamesParts) {
    super();
    this.#session = session;
    this.#fits = fits;
    this.#worker = engine(startWorker);
    this.#stages = new Ask(question(this.#worker, 'fit'));
    this.#chance = new Ask((request, report) => fits.fit(request, report));
    for (const ask of [this.#stages, this.#chance]) ask.subscribe(() => this.#learned());
    session.subscribe(() => this.#refresh());
    this.#refresh();
  }

  /** The kind of table that is played at. */
  get table(): TableKind {
    return this.#session.table;
  }

  /** What the card's games at that table brought; null until they have been played. */
  get fit(): CardFit | null {
    return this.#fits.known(this.#mark, this);
  }

  /** The same, or while they are played what stands in for it, with 0 games. */
  get figures(): Pick<Answer<CardFit>, 'status' | 'value' | 'progress'> {
    const { fit } = this;
    if (fit !== null) return { status: 'done', value: fit, progress: null };
    const { status, progress } = this.#chance.answer;
    return { status, value: this.#chance.early.value, progress };
  }

  /** What every question is asked with; the usual model counts for what is not known yet. */
  get said(): Pick<Said, 'terms' | 'fit' | 'table'> {
    const { terms, fit, table } = this;
    return { table, ...(terms === undefined ? {} : { terms }), ...(fit === null ? {} : { fit }) };
  }

  /** Distinct for all that `said` says. */
  get key(): string {
    return `${termsKey(this.terms)} ${this.gamesKey}`;
  }

  /** Distinct for the games that have been played; the engine knows the demo card's fit, so that it changes nothing. */
  get gamesKey(): string {
    return `${this.table} ${this.#mark === DEMO_MARK ? 'ships' : (this.fit?.games ?? 0)}`;
  }

  /** Plays the card's games now, unless they have been played. */
  learn(): void {
    const card = markedCard(this.#session.card);
    this.#settled = card.mark;
    void this.#stages.ask({ card }, card.mark);
    if (this.fit === null) void this.#chance.ask({ card, table: this.table }, this.#fitKey);
    else this.#chance.clear();
  }

  /** How soon others win with this card, as far as its own games have shown. */
  get terms(): ReachTerms | undefined {
    const stages = this.#stages.answer.value;
    if (stages === null) return undefined;
    const terms = termsAt(stages, likelyDrawn(this.#session.state));
    return areFirstTerms(terms) ? undefined : terms;
  }

  get #fitKey(): string {
    return `${this.#mark} ${this.table}`;
  }

  /** A card new to this session is played with once it has been in use for a while, another kind of table at once. */
  #refresh(): void {
    this.#change();
    if (this.#settled === this.#mark) this.learn();
  }

  #change(): void {
    const { card } = this.#session;
    if (card === this.#card) return;
    this.#card = card;
    const { mark } = markedCard(card);
    if (mark === this.#mark) return;
    this.#mark = mark;
    this.#stages.clear();
    this.#chance.clear();
    setTimeout(() => {
      if (mark === this.#mark) this.learn();
    }, SETTLING);
  }

  #learned(): void {
    if (this.#stages.answer.status !== 'pending') this.#worker.end();
    this.notify();
  }
}

/** Tells one model of how soon others win from another. */
function termsKey(terms: ReachTerms | undefined): string {
  return terms?.ends.join(' ') ?? '';
}
