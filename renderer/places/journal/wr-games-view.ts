import { html, nothing, type PropertyValues } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { announce } from '../../parts/announcer.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-notice.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { journalWords as words } from '../../words/journal.ts';
import { whenOf, type JournalGame, type GameRow, type RemovedGame, rowsWith } from './journal-game.ts';
import { journalStyles } from './journal-styles.ts';
import type { JournalStore } from './journal-store.ts';
import { openAtTable, gameLink } from './routes.ts';
import './wr-journal-filters.ts';

/** Games drawn at once: a list of thousands stays quick, and a page is short enough to look over. */
const PAGE = 25;

const Base = element({
  app: data<AppContext>(),
  store: data<JournalStore>(),
  page: state(0),
  /** The games deleted from here, as long as they can be brought back from their places. */
  removed: state<readonly RemovedGame[]>(() => []),
  trouble: state(''),
});

/** The list of games: searched, filtered, ordered, page by page; a game can be deleted and brought back. */
export class WrGamesView extends Base {
  static override styles = [sharedStyles, placeStyles, journalStyles];

  #shown: readonly JournalGame[] = [];
  /** The height of the row being deleted: the notice in its place is as high. */
  #rowHeight = 0;
  /** The id of the game just deleted, until its place is drawn. */
  #justRemoved = '';

  constructor() {
    super();
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

  protected override updated(): void {
    const last = this.renderRoot.querySelector<HTMLElement>(`[data-removed="${this.#justRemoved}"]`);
    if (last === null) return;
    this.#justRemoved = '';
    last.style.setProperty('min-height', `${this.#rowHeight}px`);
    // The button that was pressed is gone: the focus goes to the notice that can undo it.
    last.querySelector('wr-notice')?.focus();
  }

  protected override render(): unknown {
    const all = this.store.games?.length ?? 0;
    const rows = this.#rows();
    return html`<wr-journal-filters .store=${this.store}></wr-journal-filters>
      ${this.#messages()}
      <p class="count" role="status">${words.count(this.#shown.length, all)}</p>
      ${
        rows.length === 0
          ? html`<p>${words.none}</p>`
          : html`<ul class="games">
              ${repeat(
                rows,
                ({ game, isRemoved }) => `${game.id} ${isRemoved}`,
                (row) => this.#row(row),
              )}
            </ul>`
      }
      ${this.#pages() > 1 ? this.#paging() : nothing}`;
  }

  #messages(): unknown {
    const { trouble } = this;
    if (trouble === '') return nothing;
    return html`<wr-notice tone="bad" @notice-closed=${() => (this.trouble = '')}>${trouble}</wr-notice>`;
  }

  /** The rows of this page. */
  #rows(): readonly GameRow[] {
    return rowsWith(this.#shown.slice(this.page * PAGE, (this.page + 1) * PAGE), this.removed);
  }

  #row({ game, isRemoved }: GameRow): unknown {
    if (!isRemoved) return html`<li>${this.#game(game)}</li>`;
    return html`<li data-removed=${game.id}>
      <wr-notice
        class="over"
        action=${words.undo}
        @notice-action=${() => this.#bringBack(game)}
        @notice-closed=${() => this.#forget(game)}
        >${words.removed(whenOf(game))}</wr-notice
      >
    </li>`;
  }

  #forget(game: JournalGame): void {
    this.removed = this.removed.filter((each) => each.game.id !== game.id);
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
        <wr-button look="quiet" label=${words.removeLabel(when)} @click=${(event: Event) => this.#remove(game, event)}
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

  async #remove(game: JournalGame, { currentTarget }: Event): Promise<void> {
    const row = currentTarget instanceof Element ? currentTarget.closest('li') : null;
    this.#rowHeight = row?.getBoundingClientRect().height ?? 0;
    const rows = this.#rows();
    const before = rows[rows.findIndex((each) => each.game.id === game.id) - 1];
    const answer = await this.store.remove(game.id);
    this.trouble = answer.ok ? '' : answer.problem.message;
    if (!answer.ok) return;
    const { session, cards, preferences } = this.app;
    this.#justRemoved = game.id;
    this.removed = [...this.removed, { game, after: before?.game.id ?? null }];
    // The game on the table was deleted: the table starts an empty one.
    if (game.id !== session.id) return;
    const card = await cards.open(preferences.values.cardId, true);
    if (card.ok) session.begin(card.value);
  }

  async #bringBack(game: JournalGame): Promise<void> {
    const answer = await this.store.desk.restoreGame(game.id);
    this.trouble = answer.ok ? '' : answer.problem.message;
    if (!answer.ok) return;
    this.#forget(game);
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
