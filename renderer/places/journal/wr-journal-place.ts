import { css, html, nothing } from 'lit';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-notice.ts';
import '../../parts/wr-places.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { BroughtInController } from '../../shell/brought-in-controller.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { journalWords as words } from '../../words/journal.ts';
import { type JournalStore, journalStore, addSeason } from './journal-store.ts';
import { type JournalRoute, journalLink, journalRoute } from './routes.ts';
import './wr-games-view.ts';

const VIEWS = ['games', 'season', 'evenings', 'files'] as const;

const Base = element({
  app: data<AppContext>(),
  route: state<JournalRoute>(() => ({ view: 'games' })),
  /** How much of the example season is made, 0 to 1; null when none is being made. */
  making: state<number | null>(null),
  trouble: state(''),
});

/** The Journal: all games, the season in numbers, evenings, files, and the look-back of a game. */
export class WrJournalPlace extends Base {
  static override styles = [
    sharedStyles,
    placeStyles,
    css`
      @media print {
        wr-places,
        h1 {
          display: none;
        }

        .page {
          padding: 0;
        }
      }
    `,
  ];

  readonly #onHash = (): void => this.#follow();

  constructor() {
    super();
    new StoreController(this, () => [this.#store]);
    new BroughtInController(this, () => void this.#store.load());
  }

  get #store(): JournalStore {
    return journalStore(this.app.desk);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('hashchange', this.#onHash);
    this.#follow();
    void this.#store.load();
  }

  override disconnectedCallback(): void {
    window.removeEventListener('hashchange', this.#onHash);
    super.disconnectedCallback();
    this.#store.release();
  }

  protected override render(): unknown {
    const { games, trouble } = this.#store;
    return html`<div class="page">
      <h1 class=${this.route.view === 'game' ? 'unseen' : ''}>${words.title}</h1>
      ${
        trouble === ''
          ? nothing
          : html`<wr-notice
              tone="bad"
              action=${words.retry}
              .closable=${false}
              @notice-action=${() => this.#store.load()}
              >${trouble}</wr-notice
            >`
      }
      ${games === null ? html`<p>${words.waiting}</p>` : this.#content(games.length)}
    </div>`;
  }

  #content(count: number): unknown {
    if (this.route.view === 'game') {
      return html`<wr-lookback .app=${this.app} .store=${this.#store} .gameId=${this.route.id}></wr-lookback>`;
    }
    return html`<wr-places
        look="tabs"
        .places=${VIEWS.map((view) => ({ id: view, label: words.views[view], href: journalLink(view) }))}
        current=${this.route.view}
        label=${words.viewsLabel}
      ></wr-places>
      ${count === 0 && this.route.view !== 'files' ? this.#empty() : this.#view()}`;
  }

  #view(): unknown {
    switch (this.route.view) {
      case 'season':
        return html`<wr-season-view .app=${this.app} .store=${this.#store}></wr-season-view>`;
      case 'evenings':
        return html`<wr-evenings-view .store=${this.#store}></wr-evenings-view>`;
      case 'files':
        return html`<wr-files-view .app=${this.app} .store=${this.#store}></wr-files-view>`;
      default:
        return html`<wr-games-view .app=${this.app} .store=${this.#store}></wr-games-view>`;
    }
  }

  #empty(): unknown {
    return html`<section>
      <p>${words.empty}</p>
      <wr-button look="main" @click=${() => this.app.go('table')}>${words.toTable}</wr-button>
      <p>${words.demoLead}</p>
      ${this.trouble === '' ? nothing : html`<wr-notice tone="bad" .closable=${false}>${this.trouble}</wr-notice>`}
      ${
        this.making === null
          ? html`<wr-button @click=${() => this.#addSeason()}>${words.addDemo}</wr-button>`
          : html`<p role="status">${words.makingDemo}</p>
              <progress aria-label=${words.makingDemo} max="1" .value=${this.making}></progress>`
      }
    </section>`;
  }

  async #addSeason(): Promise<void> {
    this.making = 0;
    // The button that was pressed is gone while the season is made; the views stay.
    void this.#focusViews();
    const made = await addSeason(this.app, this.#store, (done) => (this.making = done));
    this.making = null;
    this.trouble = made.ok ? '' : made.problem.message;
  }

  async #focusViews(): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('wr-places')?.focus();
  }

  /** Opens what the address names; parts beyond the list are fetched when they are first wanted. */
  #follow(): void {
    const route = journalRoute(window.location.hash);
    void fetchView(route.view).then(() => (this.route = route));
  }
}

async function fetchView(view: JournalRoute['view']): Promise<void> {
  if (view === 'season') await import('./wr-season-view.ts');
  if (view === 'evenings') await import('./wr-evenings-view.ts');
  if (view === 'files') await import('./wr-files-view.ts');
  if (view === 'game') await import('../lookback/wr-lookback.ts');
}

customElements.define('wr-journal-place', WrJournalPlace);
