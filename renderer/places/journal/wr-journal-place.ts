import { css, html, LitElement, nothing } from 'lit';
import type { GameEntry } from '../../../main/desk/desk.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-notice.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { journalWords as words } from '../../words/journal.ts';
import { journalStyles } from './journal-styles.ts';

/** The Journal: every game kept, newest first, to be opened where it was. */
export class WrJournalPlace extends LitElement {
  static override properties = {
    app: { attribute: false },
    games: { state: true },
    trouble: { state: true },
  };

  declare app: AppContext;
  /** Null until the list has come. */
  declare games: readonly GameEntry[] | null;
  declare trouble: string;

  static override styles = [sharedStyles, placeStyles, journalStyles, css``];

  constructor() {
    super();
    this.games = null;
    this.trouble = '';
    new StoreController(this, () => [this.app.session]);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#list();
  }

  protected override render(): unknown {
    return html`<div class="page">
      <h1>${words.title}</h1>
      ${
        this.trouble === ''
          ? nothing
          : html`<wr-notice tone="bad" action=${words.retry} .closable=${false} @notice-action=${() => this.#list()}
              >${this.trouble}</wr-notice
            >`
      }
      ${this.games === null ? html`<p>${words.waiting}</p>` : this.#content(this.games)}
    </div>`;
  }

  #content(games: readonly GameEntry[]): unknown {
    if (games.length === 0) {
      return html`<section>
        <p>${words.empty}</p>
        <wr-button look="main" @click=${() => this.app.go('table')}>${words.toTable}</wr-button>
      </section>`;
    }
    return html`<p>${words.lead}</p>
      <ul class="games">
        ${games.map((game) => html`<li>${this.#game(game)}</li>`)}
      </ul>`;
  }

  #game(game: GameEntry): unknown {
    const when = whenOf(game.startedAt);
    const here = game.id === this.app.session.id;
    return html`<div class="when">
        <strong>${when}</strong>
        <span class="soft"
          >${[game.seat, game.cardTitle, game.demo ? words.demo : ''].filter(Boolean).join(' · ')}</span
        >
      </div>
      <span class="stage">${here ? html`<em>${words.here}</em> · ` : nothing}${game.stage}</span>
      <wr-button label=${words.openLabel(when)} @click=${() => this.#open(game.id)}>${words.open}</wr-button>`;
  }

  async #open(id: string): Promise<void> {
    const { desk, session, go } = this.app;
    if (id !== session.id) {
      const record = await desk.openGame(id);
      if (!record.ok) {
        this.trouble = record.problem.message;
        return;
      }
      session.open(record.value);
    }
    go('table');
  }

  async #list(): Promise<void> {
    const games = await this.app.desk.listGames();
    this.trouble = games.ok ? '' : games.problem.message;
    this.games = games.ok ? games.value : [];
  }
}

function whenOf(startedAt: string): string {
  return new Intl.DateTimeFormat(undefined, { dateStyle: 'full', timeStyle: 'short' }).format(new Date(startedAt));
}

customElements.define('wr-journal-place', WrJournalPlace);

declare global {
  interface HTMLElementTagNameMap {
    'wr-journal-place': WrJournalPlace;
  }
}
