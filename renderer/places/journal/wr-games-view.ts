import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { announce } from '../../parts/announcer.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-notice.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { journalWords as words } from '../../words/journal.ts';
import { whenOf } from './dates.ts';
import type { JournalGame } from './journal-game.ts';
import { journalStyles } from './journal-styles.ts';
import { openAtTable } from './open-at-table.ts';
import type { JournalStore } from './journal-store.ts';
import { gameLink } from './routes.ts';
import './wr-journal-filters.ts';

/** Games drawn at once: a list of thousands stays quick, and a page is short enough to look over. */
const PAGE = 25;

/** The list of games: searched, filtered, ordered, page by page; a game can be deleted and brought back. */
export class WrGamesView extends LitElement {
  static override properties = {
    app: { attribute: false },
    store: { attribute: false },
    page: { state: true },
    removed: { state: true },
    trouble: { state: true },
  };

  declare app: AppContext;
  declare store: JournalStore;
  declare protected page: number;
  /** The game deleted last, as long as it can be brought back from here. */
  declare protected removed: JournalGame | null;
  declare protected trouble: string;

  static override styles = [sharedStyles, placeStyles, journalStyles, css``];

  #shown: readonly JournalGame[] = [];

  constructor() {
    super();
    this.page = 0;
    this.removed = null;
    this.trouble = '';
    new StoreController(this, () => [this.store, this.app.session]);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    const { shown } = this.store;
    if (shown === this.#shown) return;
    // Deleting a game keeps the page; a new filter or order begins at the top.
    if (Math.abs(shown.length - this.#shown.length) > 1) this.page = 0;
    this.#shown = shown;
    this.page = Math.min(this.page, this.#pages() - 1);
  }

  protected override render(): unknown {
    const all = this.store.games?.length ?? 0;
    return html`<wr-journal-filters .store=${this.store}></wr-journal-filters>
      ${this.#messages()}
      <p class="count" role="status">${words.count(this.#shown.length, all)}</p>
      ${
        this.#shown.length === 0
          ? html`<p>${words.none}</p>`
          : html`<ul class="games">
              ${this.#shown
                .slice(this.page * PAGE, (this.page + 1) * PAGE)
                .map((game) => html`<li>${this.#game(game)}</li>`)}
            </ul>`
      }
      ${this.#pages() > 1 ? this.#paging() : nothing}`;
  }

  #messages(): unknown {
    const { removed, trouble } = this;
    return [
      trouble === ''
        ? nothing
        : html`<wr-notice tone="bad" @notice-closed=${() => (this.trouble = '')}>${trouble}</wr-notice>`,
      removed === null
        ? nothing
        : html`<wr-notice
            action=${words.undo}
            @notice-action=${() => this.#bringBack(removed)}
            @notice-closed=${() => (this.removed = null)}
            >${words.removed(whenOf(removed))}</wr-notice
          >`,
    ];
  }

  #game(game: JournalGame): unknown {
    const when = whenOf(game);
    const here = game.id === this.app.session.id;
    const details = game.outcome === 'open' ? game.stage : resultWords(game);
    return html`<div class="when">
        <strong>${when}</strong>
        <span class="soft"
          >${[game.seat ?? words.noSeat, game.place, game.cardTitle, game.demo ? words.demo : ''].filter(Boolean).join(' · ')}</span
        >
        ${game.tags.length === 0 ? nothing : html`<span class="tags">${game.tags.map((tag) => html`<span>${tag}</span>`)}</span>`}
      </div>
      <div class="result">
        <span class="outcome ${game.outcome}">${words.outcomes[game.outcome]}</span>
        ${details === words.outcomes[game.outcome] ? nothing : html`<span>${details}</span>`}
        ${here ? html`<em>${words.here}</em>` : nothing}
        ${game.notes.length === 0 ? nothing : html`<q>${game.notes[0]}</q>`}
      </div>
      <div class="acts">
        <a class="look" href=${gameLink(game.id)} aria-label=${words.lookLabel(when)}>${words.look}</a>
        <wr-button label=${words.openLabel(when)} @click=${() => this.#open(game)}>${words.open}</wr-button>
        <wr-button look="quiet" label=${words.removeLabel(when)} @click=${() => this.#remove(game)}
          >${words.remove}</wr-button
        >
      </div>`;
  }

  #paging(): unknown {
    return html`<nav class="pages" aria-label=${words.pages}>
      <wr-button ?disabled=${this.page === 0} @click=${() => this.#turn(-1)}>${words.later}</wr-button>
      <span>${words.page(this.page + 1, this.#pages())}</span>
      <wr-button ?disabled=${this.page >= this.#pages() - 1} @click=${() => this.#turn(1)}>${words.earlier}</wr-button>
    </nav>`;
  }

  #pages(): number {
    return Math.max(1, Math.ceil(this.#shown.length / PAGE));
  }

  #turn(by: number): void {
    this.page = Math.min(this.#pages() - 1, Math.max(0, this.page + by));
    announce(words.page(this.page + 1, this.#pages()));
  }

  async #open(game: JournalGame): Promise<void> {
    const opened = await openAtTable(this.app, game.id);
    this.trouble = opened.ok ? '' : opened.problem.message;
  }

  async #remove(game: JournalGame): Promise<void> {
    const answer = await this.store.remove(game.id);
    this.trouble = answer.ok ? '' : answer.problem.message;
    if (!answer.ok) return;
    const { session, cards, preferences } = this.app;
    this.removed = game;
    // The game on the table was deleted: an empty one takes its place there.
    if (game.id !== session.id) return;
    const card = await cards.open(preferences.values.cardId, true);
    if (card.ok) session.begin(card.value.document);
  }

  async #bringBack(game: JournalGame): Promise<void> {
    const answer = await this.store.desk.restoreGame(game.id);
    this.trouble = answer.ok ? '' : answer.problem.message;
    if (!answer.ok) return;
    this.removed = null;
    announce(words.back(whenOf(game)));
    await this.store.load();
  }
}

function resultWords({ stage, points, section }: JournalGame): string {
  return [stage, section ?? '', points === null || points === 0 ? '' : words.points(points)]
    .filter(Boolean)
    .join(' · ');
}

customElements.define('wr-games-view', WrGamesView);

declare global {
  interface HTMLElementTagNameMap {
    'wr-games-view': WrGamesView;
  }
}
