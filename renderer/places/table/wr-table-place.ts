import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { stageOf } from '../../../core/game/stage.ts';
import { undoKey } from '../../parts/undo-keys.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-dialog.ts';
import '../../parts/wr-notice.ts';
import '../../parts/wr-toolbar.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { resultWords } from '../../words/play.ts';
import { shellWords } from '../../words/shell.ts';
import { tableWords } from '../../words/table.ts';
import './wr-deal-panel.ts';
import './wr-exchange-panel.ts';
import './wr-lean-panel.ts';
import './wr-note-dialog.ts';
import './wr-rack-panel.ts';
import './wr-reading-panel.ts';
import { panelStyles } from './panel-styles.ts';
import { isPlayShown } from './play/discard-due.ts';
import type { ResultWanted } from './play/wr-advice-panel.ts';
import { tableStyles } from './table-styles.ts';

/** The Table: the rack along the bottom, the reading above it, the exchange beside, the lean over all. */
export class WrTablePlace extends LitElement {
  static override properties = {
    app: { attribute: false },
    asking: { state: true },
    playLoaded: { state: true },
    pastPasses: { state: true },
  };

  declare app: AppContext;
  /** Whether the question about a new game is open. */
  declare asking: boolean;
  /** Whether the parts of play are here; they come when they are first needed. */
  declare protected playLoaded: boolean;
  /** The game whose passes the person has left behind, unlogged. */
  declare protected pastPasses: string;

  static override styles = [sharedStyles, panelStyles, tableStyles];

  #due = '';
  #refocus = false;
  /** The panel that had the focus last. */
  #lastHeld = '';

  readonly #onKey = (event: KeyboardEvent): void => this.#shortcut(event);

  constructor() {
    super();
    this.asking = false;
    this.playLoaded = false;
    this.pastPasses = '';
    new StoreController(
      this,
      () => [this.app.session],
      () => {
        const { id, state, canUndo, canRedo, untouched, saved } = this.app.session;
        return [id, state, canUndo, canRedo, untouched, saved.status === 'failed' ? saved : null];
      },
    );
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
    const { state } = this.app.session;
    const dealt = state.exchange !== null;
    const plan = dealt ? (this.#inPlay ? 'dealt inplay' : 'dealt') : 'dealing';
    return html`<div
        class="table ${plan}"
        @focusin=${this.#noteFocus}
        @result-wanted=${this.#resultWanted}
        @advice-taken=${this.#focusNext}
      >
        <div class="head">
          <h1 class="unseen">${tableWords.title}: ${stageOf(state)}</h1>
          ${this.#trouble()}
        </div>
        <wr-rack-panel class="rack" .app=${this.app}>${this.#actions()}</wr-rack-panel>
        ${dealt ? this.#dealt() : this.#undealt()}
      </div>
      ${this.#question()}
      <wr-note-dialog .app=${this.app}></wr-note-dialog>
      ${this.playLoaded ? html`<wr-result-dialog .app=${this.app}></wr-result-dialog>` : nothing}`;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    const due = dueOf(this.app);
    // The parts of a step go with it, maybe before this; the focus must not go with them.
    const lost = document.activeElement === document.body;
    const held = this.shadowRoot?.activeElement?.localName ?? (lost ? this.#lastHeld : '');
    this.#refocus = due !== this.#due && REFOCUSED.includes(held);
    this.#due = due;
    if (this.#inPlay) void this.#loadPlay();
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

  #noteFocus(): void {
    this.#lastHeld = this.shadowRoot?.activeElement?.localName ?? '';
  }

  /** To where the next step is entered: a field when tiles are to come in, else the rack. */
  async #focusNext(): Promise<void> {
    const { exchange, result } = this.app.session.state;
    if (this.#inPlay) await this.#loadPlay();
    await this.updateComplete;
    const receiving = exchange?.phase === 'receiving';
    const name = this.#inPlay ? 'wr-play-side' : receiving ? 'wr-exchange-panel' : 'wr-rack-panel';
    const target = this.renderRoot.querySelector(exchange === null && result === null ? 'wr-deal-panel' : name);
    await target?.updateComplete;
    await target?.focusFirst();
  }

  /** True once play is shown, not the exchange. */
  get #inPlay(): boolean {
    const { state, id } = this.app.session;
    return isPlayShown(state) || (state.exchange?.phase === 'giving' && this.pastPasses === id);
  }

  async #loadPlay(): Promise<void> {
    if (this.playLoaded) return;
    await import('./play/wr-play-side.ts');
    this.playLoaded = true;
  }

  #undealt(): unknown {
    if (!this.#inPlay) return html`<wr-deal-panel class="deal" .app=${this.app}></wr-deal-panel>`;
    return this.playLoaded ? html`<wr-play-side class="deal" .app=${this.app}></wr-play-side>` : nothing;
  }

  #dealt(): unknown {
    if (this.#inPlay) return this.playLoaded ? this.#play() : nothing;
    return html`${this.#exchange()}
      <wr-lean-panel class="lean" .app=${this.app}></wr-lean-panel>
      <wr-reading-panel class="reading" .app=${this.app}></wr-reading-panel>`;
  }

  #exchange(): unknown {
    return html`<wr-exchange-panel
      class="exchange"
      .app=${this.app}
      @play-wanted=${() => this.#leavePasses(this.app.session.id)}
    ></wr-exchange-panel>`;
  }

  #play(): unknown {
    const { result } = this.app.session.state;
    return html`${result === null ? html`<wr-advice-panel class="advice" .app=${this.app}></wr-advice-panel>` : nothing}
      <wr-play-side class="exchange" .app=${this.app} @passes-wanted=${() => this.#leavePasses('')}></wr-play-side>
      <div class="reading">
        <wr-lean-panel .app=${this.app}></wr-lean-panel>
        <wr-reading-panel .app=${this.app}></wr-reading-panel>
      </div>`;
  }

  #leavePasses(game: string): void {
    this.pastPasses = game;
    void this.#focusNext();
  }

  async #resultWanted(event: CustomEvent<ResultWanted>): Promise<void> {
    await this.#askForResult(event.detail);
  }

  async #askForResult(known: ResultWanted): Promise<void> {
    await this.#loadPlay();
    await this.updateComplete;
    await this.renderRoot.querySelector('wr-result-dialog')?.open(known);
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
      <wr-button look="quiet" ?disabled=${session.state.seat === null} @click=${this.#askForNote}
        >${tableWords.note.button}</wr-button
      >
      <wr-button look="quiet" @click=${() => this.#askForResult({})}>${resultWords.button}</wr-button>
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

  #askForNote(): void {
    void this.renderRoot.querySelector('wr-note-dialog')?.open();
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
    const step = undoKey(event);
    if (step === null || this.asking) return;
    event.preventDefault();
    this.app.session[step]();
  }
}

/** Panels whose parts go with a step. */
const REFOCUSED: readonly string[] = [
  'wr-exchange-panel',
  'wr-deal-panel',
  'wr-play-side',
  'wr-advice-panel',
  'wr-result-dialog',
];

/** What is due, so that a new step is noticed. */
function dueOf({ session }: AppContext): string {
  const { exchange, result } = session.state;
  if (result !== null) return 'result';
  return exchange === null ? `deal ${session.id}` : `${exchange.phase} ${exchange.step ?? ''}`;
}

customElements.define('wr-table-place', WrTablePlace);

declare global {
  interface HTMLElementTagNameMap {
    'wr-table-place': WrTablePlace;
  }
}
