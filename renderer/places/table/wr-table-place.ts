import { html, nothing, type PropertyValues } from 'lit';
import { cache } from 'lit/directives/cache.js';
import { STEP_NAMES } from '../../../core/exchange/words.ts';
import type { GameEvent } from '../../../core/game/events.ts';
import { stageOf } from '../../../core/game/stage.ts';
import { data, element, state } from '../../parts/element.ts';
import { PersonWatch } from '../../parts/person-watch.ts';
import { takeStep, undoKey, type UndoStep } from '../../parts/undo-keys.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-dialog.ts';
import '../../parts/wr-notice.ts';
import '../../parts/wr-toolbar.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { saveElsewhere } from '../../shell/save-elsewhere.ts';
import { adviceWords } from '../../words/advice.ts';
import { resultWords } from '../../words/play.ts';
import { shellWords } from '../../words/shell.ts';
import { tableWords } from '../../words/table.ts';
import './wr-deal-panel.ts';
import './wr-rack-panel.ts';
import { isAdviceWelcome, isReadingWelcome } from './aids.ts';
import { panelStyles } from './panel-styles.ts';
import { isPlayShown } from './play/moves.ts';
import type { ResultWanted } from './play/advised.ts';
import { tableStyles } from './table-styles.ts';

const Base = element({
  app: data<AppContext>(),
  /** Whether the question about a new game is open. */
  asking: state(false),
  /** Whether the parts for a dealt rack are here; they come when they are first needed, as those of play do. */
  dealtLoaded: state(false),
  playLoaded: state(false),
});

/** The Table: the rack along the bottom, over it the band with the question and its answer, above the nearest hands and what else there is. */
export class WrTablePlace extends Base {
  static override styles = [sharedStyles, panelStyles, tableStyles];

  #due = '';
  #refocus = false;
  /** The panel that had the focus last. */
  #lastHeld = '';

  readonly #onKey = (event: KeyboardEvent): void => this.#shortcut(event);

  constructor() {
    super();
    new StoreController(
      this,
      () => [this.app.session, this.app.saving],
      () => {
        const { id, state, advice, pastPasses, canUndo, canRedo, untouched, saved } = this.app.session;
        const failed = saved.status === 'failed' ? saved : null;
        return [id, state, advice, pastPasses, canUndo, canRedo, untouched, failed, this.app.saving.trouble];
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
    const { state, pastPasses } = this.app.session;
    const stage = stageOf(pastPasses ? { ...state, playing: true } : state);
    const dealt = state.exchange !== null && state.result === null;
    const receiving = state.exchange?.phase === 'receiving' ? 'receiving' : '';
    const plan = dealt ? `dealt ${this.#inPlay ? 'inplay' : receiving}` : 'dealing';
    return html`<div
        class="table ${plan}"
        @focusin=${this.#noteFocus}
        @result-wanted=${this.#resultWanted}
        @advice-taken=${this.#focusNext}
      >
        <div class="top">
          <h1 class="unseen">${tableWords.title}: ${stage}</h1>
          ${this.#trouble()}
        </div>
        ${dealt ? this.#band() : this.#undealt()}
        <wr-rack-panel class="rack" .app=${this.app}>${this.#openJokers()} ${this.#actions()}</wr-rack-panel>
        ${dealt ? this.#beside() : nothing}
      </div>
      ${this.#question()} ${this.dealtLoaded ? html`<wr-note-dialog .app=${this.app}></wr-note-dialog>` : nothing}
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
    if (this.app.session.state.exchange !== null) void this.#loadDealt();
    if (this.#inPlay) void this.#loadPlay();
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    void this.#join();
    if (!this.#refocus) return;
    this.#refocus = false;
    void this.#focusNext();
  }

  /** Lets tiles be dragged between the rack and the band, once both are drawn. */
  async #join(): Promise<void> {
    const rack = this.renderRoot.querySelector('wr-rack-panel');
    const give = this.renderRoot.querySelector('wr-give-panel');
    await give?.updateComplete;
    if (rack !== null) rack.sendTo = give?.tray ?? null;
    if (give !== null) give.returnTo = rack;
  }

  #noteFocus(): void {
    this.#lastHeld = this.shadowRoot?.activeElement?.localName ?? '';
  }

  /** To where the next step is entered, a field when tiles are to come in; not if she has gone on by then. */
  async #focusNext(): Promise<void> {
    const watch = new PersonWatch();
    const { exchange, result } = this.app.session.state;
    if (exchange !== null) await this.#loadDealt();
    if (this.#inPlay) await this.#loadPlay();
    await this.updateComplete;
    const target = this.renderRoot.querySelector<Step>(
      this.#inPlay
        ? 'wr-play-side, wr-play-panel'
        : exchange === null && result === null
          ? 'wr-deal-panel'
          : 'wr-give-panel, wr-receive-panel',
    );
    await target?.updateComplete;
    if (!watch.wentOn()) await target?.focusFirst();
  }

  /** True once play is shown, not the exchange. */
  get #inPlay(): boolean {
    const { state, pastPasses } = this.app.session;
    return isPlayShown(state) || pastPasses;
  }

  async #loadDealt(): Promise<void> {
    if (this.dealtLoaded) return;
    await import('./dealt-parts.ts');
    this.dealtLoaded = true;
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

  /** What is due, with its answer. The tray of tiles to come in is kept, for its many tiles are slow to make anew. */
  #band(): unknown {
    if (!this.#inPlay) return this.dealtLoaded ? cache(this.#pass()) : nothing;
    return this.playLoaded ? html`<wr-advice-panel .app=${this.app}></wr-advice-panel>` : nothing;
  }

  #pass(): unknown {
    return this.app.session.state.exchange?.phase === 'receiving'
      ? html`<wr-receive-panel .app=${this.app}></wr-receive-panel>`
      : html`<wr-give-panel .app=${this.app}></wr-give-panel>`;
  }

  /** What else can be done, and the hands. */
  #beside(): unknown {
    if (!this.dealtLoaded) return nothing;
    return html`${this.#inPlay ? this.#playSide() : this.#passSide()}
      <div class="hands">
        ${
          this.#inPlay && this.playLoaded && isAdviceWelcome(this.app)
            ? html`<wr-advice-list .app=${this.app}></wr-advice-list>`
            : nothing
        }
        ${this.#inPlay && isReadingWelcome(this.app) ? html`<wr-others .app=${this.app}></wr-others>` : nothing}
        ${
          isReadingWelcome(this.app)
            ? html`<wr-reading-panel .app=${this.app}></wr-reading-panel>`
            : html`<p class="soft">${adviceWords.about.none}</p>`
        }
      </div>`;
  }

  #passSide(): unknown {
    if (this.app.session.state.exchange?.phase === 'receiving') return nothing;
    return html`<wr-plan-panel .app=${this.app} @play-wanted=${() => this.#leavePasses(true)}></wr-plan-panel>`;
  }

  #playSide(): unknown {
    if (!this.playLoaded) return nothing;
    return html`<wr-play-panel .app=${this.app} @passes-wanted=${() => this.#leavePasses(false)}></wr-play-panel>`;
  }

  #leavePasses(left: boolean): void {
    this.app.session.leavePasses(left);
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

  #openJokers(): unknown {
    if (!this.#inPlay || !this.playLoaded) return nothing;
    return html`<wr-open-jokers slot="game" .app=${this.app}></wr-open-jokers>`;
  }

  #actions(): unknown {
    const { session } = this.app;
    return html`<wr-toolbar slot="game" label=${tableWords.actions}>
      ${
        session.untouched
          ? nothing
          : html`<wr-button
                look="quiet"
                keys="Control+Z"
                ?disabled=${!session.canUndo}
                @click=${() => this.#takeStep('undo')}
                >${tableWords.undo}</wr-button
              >
              <wr-button
                look="quiet"
                keys="Control+Shift+Z"
                ?disabled=${!session.canRedo}
                @click=${() => this.#takeStep('redo')}
                >${tableWords.redo}</wr-button
              >
              <wr-button look="quiet" ?disabled=${session.state.seat === null} @click=${this.#askForNote}
                >${tableWords.note.button}</wr-button
              >`
      }
      <wr-button look="quiet" @click=${() => this.#askForResult({})}>${resultWords.button}</wr-button>
      ${
        session.untouched
          ? nothing
          : html`<wr-button look="quiet" @click=${this.#askForNew}>${tableWords.newGame}</wr-button>`
      }
    </wr-toolbar>`;
  }

  #trouble(): unknown {
    const { session, saving } = this.app;
    const { saved } = session;
    const problem = saved.status === 'failed' ? saving.unsaid(saved.problem) : null;
    if (problem === null) return nothing;
    return html`<wr-notice
      tone="bad"
      action=${shellWords.retry}
      .closable=${false}
      @notice-action=${() => session.retrySaving()}
      >${problem.message}${saveElsewhere(session)}</wr-notice
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
    session.begin(card.ok ? card.value : session.card);
    await this.updateComplete;
    await this.#focusNext();
  }

  #shortcut(event: KeyboardEvent): void {
    const step = undoKey(event);
    if (step === null || this.asking) return;
    event.preventDefault();
    this.#takeStep(step);
  }

  /** Says what was undone or done again, and where the game stands now. */
  #takeStep(step: UndoStep): void {
    const { session } = this.app;
    const before = session.events;
    takeStep(session, step, () => {
      const { events, state } = session;
      const moved = events.length < before.length ? before.at(-1) : events[before.length];
      return tableWords.step(moved === undefined ? tableWords.steps.laid : eventName(moved), stageOf(state));
    });
  }
}

/** A panel in which the next step is entered. */
type Step = HTMLElement & { readonly updateComplete: Promise<boolean>; focusFirst(): Promise<void> };

/** Panels whose parts go with a step. */
const REFOCUSED: readonly string[] = [
  'wr-give-panel',
  'wr-receive-panel',
  'wr-plan-panel',
  'wr-deal-panel',
  'wr-play-side',
  'wr-play-panel',
  'wr-advice-panel',
  'wr-result-dialog',
];

function eventName(event: GameEvent): string {
  const { steps } = tableWords;
  if (event.type === 'gave' || event.type === 'received') return steps[event.type](STEP_NAMES[event.step]);
  return steps[event.type];
}

/** What is due, so that a new step is noticed. */
function dueOf({ session }: AppContext): string {
  const { exchange, result } = session.state;
  if (result !== null) return 'result';
  return exchange === null ? `deal ${session.id}` : `${exchange.phase} ${exchange.step ?? ''}`;
}

customElements.define('wr-table-place', WrTablePlace);
