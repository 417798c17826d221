import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { stageOf } from '../../../core/game/stage.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-dialog.ts';
import '../../parts/wr-notice.ts';
import '../../parts/wr-toolbar.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { shellWords } from '../../words/shell.ts';
import { tableWords } from '../../words/table.ts';
import './wr-deal-panel.ts';
import './wr-exchange-panel.ts';
import './wr-lean-panel.ts';
import './wr-rack-panel.ts';
import './wr-reading-panel.ts';
import { panelStyles } from './panel-styles.ts';
import { tableStyles } from './table-styles.ts';

/** The Table: the rack along the bottom, the reading above it, the exchange beside, the lean over all. */
export class WrTablePlace extends LitElement {
  static override properties = {
    app: { attribute: false },
    asking: { state: true },
  };

  declare app: AppContext;
  /** Whether the question about a new game is open. */
  declare asking: boolean;

  static override styles = [sharedStyles, panelStyles, tableStyles, css``];

  #due = '';
  #refocus = false;

  readonly #onKey = (event: KeyboardEvent): void => this.#shortcut(event);

  constructor() {
    super();
    this.asking = false;
    new StoreController(this, () => [this.app.session]);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('keydown', this.#onKey);
  }

  override disconnectedCallback(): void {
    window.removeEventListener('keydown', this.#onKey);
    super.disconnectedCallback();
  }

  protected override render(): unknown {
    const dealt = this.app.session.state.seat !== null;
    return html`<div class="table ${dealt ? 'dealt' : 'dealing'}">
        <div class="head">
          <h1 class="unseen">${tableWords.title}: ${stageOf(this.app.session.state)}</h1>
          ${this.#trouble()}
        </div>
        <wr-rack-panel class="rack" .app=${this.app}>${this.#actions()}</wr-rack-panel>
        ${dealt ? this.#playing() : html`<wr-deal-panel class="deal" .app=${this.app}></wr-deal-panel>`}
      </div>
      ${this.#question()}`;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    const due = dueOf(this.app);
    const held = this.shadowRoot?.activeElement?.localName ?? '';
    // The parts of a step go with it; the focus must not go with them.
    this.#refocus = due !== this.#due && (held === 'wr-exchange-panel' || held === 'wr-deal-panel');
    this.#due = due;
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    const rack = this.renderRoot.querySelector('wr-rack-panel');
    const exchange = this.renderRoot.querySelector('wr-exchange-panel');
    if (rack !== null) rack.sendTo = exchange;
    if (exchange !== null) exchange.returnTo = rack;
    if (!this.#refocus) return;
    this.#refocus = false;
    void this.#focusNext();
  }

  /** To the field when tiles are to come in, else to the rack. */
  async #focusNext(): Promise<void> {
    const receiving = this.app.session.state.exchange?.phase === 'receiving';
    const target = this.renderRoot.querySelector(receiving ? 'wr-exchange-panel' : 'wr-rack-panel');
    await target?.updateComplete;
    await target?.focusFirst();
  }

  #playing(): unknown {
    return html`<wr-exchange-panel class="exchange" .app=${this.app}></wr-exchange-panel>
      <wr-lean-panel class="lean" .app=${this.app}></wr-lean-panel>
      <wr-reading-panel class="reading" .app=${this.app}></wr-reading-panel>`;
  }

  #actions(): unknown {
    const { session } = this.app;
    return html`<wr-toolbar slot="game" label=${tableWords.actions}>
      <wr-button look="quiet" keys="Control+Z" ?disabled=${!session.canUndo} @click=${() => session.undo()}
        >${tableWords.undo}</wr-button
      >
      <wr-button look="quiet" keys="Control+Shift+Z" ?disabled=${!session.canRedo} @click=${() => session.redo()}
        >${tableWords.redo}</wr-button
      >
      <wr-button look="quiet" ?disabled=${session.untouched} @click=${this.#askForNew}>${tableWords.newGame}</wr-button>
    </wr-toolbar>`;
  }

  #trouble(): unknown {
    const { saved } = this.app.session;
    if (saved.status !== 'failed') return nothing;
    return html`<wr-notice
      tone="bad"
      action=${shellWords.retry}
      .closable=${false}
      @notice-action=${() => this.app.session.retrySaving()}
      >${saved.problem.message}</wr-notice
    >`;
  }

  #question(): unknown {
    return html`<wr-dialog
      heading=${tableWords.newGameTitle}
      ?open=${this.asking}
      @dialog-closed=${() => (this.asking = false)}
    >
      <p>${tableWords.newGameBody}</p>
      <wr-button slot="actions" @click=${() => (this.asking = false)}>${tableWords.newGameNo}</wr-button>
      <wr-button slot="actions" look="main" @click=${this.#begin}>${tableWords.newGameYes}</wr-button>
    </wr-dialog>`;
  }

  #askForNew(): void {
    this.asking = true;
  }

  async #begin(): Promise<void> {
    this.asking = false;
    const { cards, preferences, session } = this.app;
    const card = await cards.open(preferences.values.cardId, true);
    session.begin(card.ok ? card.value.document : session.card);
  }

  #shortcut(event: KeyboardEvent): void {
    const wanted = (event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'z';
    if (!wanted || this.asking) return;
    event.preventDefault();
    if (event.shiftKey) this.app.session.redo();
    else this.app.session.undo();
  }
}

/** What is due, so that a new step is noticed. */
function dueOf({ session }: AppContext): string {
  const { exchange } = session.state;
  return exchange === null ? 'deal' : `${exchange.phase} ${exchange.step ?? ''}`;
}

customElements.define('wr-table-place', WrTablePlace);

declare global {
  interface HTMLElementTagNameMap {
    'wr-table-place': WrTablePlace;
  }
}
