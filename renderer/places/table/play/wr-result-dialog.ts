import { css, html, nothing, type PropertyValues } from 'lit';
import type { Result } from '../../../../core/base/result.ts';
import type { Seat } from '../../../../core/exchange/steps.ts';
import type { EndedEvent } from '../../../../core/game/events.ts';
import type { Payments } from '../../../../core/game/points.ts';
import type { LineDocument } from '../../../../core/engine/reading-questions.ts';
import { data, element, state } from '../../../parts/element.ts';
import { emit } from '../../../parts/emit.ts';
import '../../../parts/wr-button.ts';
import '../../../parts/wr-dialog.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { playWords, resultWords as words } from '../../../words/play.ts';
import { panelStyles } from '../panel-styles.ts';
import { arePointsGood, draftOf, EMPTY_RESULT, enterResult, eventOf, type ResultDraft } from './result-draft.ts';
import { keepKeys } from '../../../parts/undo-keys.ts';
import { paymentsTable } from './payments-table.ts';
import { lineOf, resultForm } from './result-form.ts';
import { resultStyles } from './result-styles.ts';
import { deadSentence, inChairOrder, seatNameFull } from './seat-names.ts';

const Base = element({
  app: data<AppContext>(),
  /** Null while the dialog is closed. */
  draft: state<ResultDraft | null>(null),
  lines: state<readonly LineDocument[]>(() => []),
  settled: state<Result<Payments> | null>(null),
  refusal: state(''),
});

/** Where a result is entered: as much of it as is known, and at once what each seat gets or pays. */
export class WrResultDialog extends Base {
  static override styles = [
    sharedStyles,
    panelStyles,
    resultStyles,
    css`
      wr-dialog {
        --dialog-least: 60rem;
      }

      /* Room for the reason below the button, which comes and goes. */
      [look='main'] {
        min-height: calc(var(--target-main) + 1.9em);
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.app.session]);
  }

  /** Opens the form: with the result there is, to be changed, or with what is known already. */
  async open(known: Partial<ResultDraft> = {}): Promise<void> {
    const { result } = this.app.session.state;
    this.draft = { ...(result === null ? EMPTY_RESULT : draftOf(result)), ...known };
    this.refusal = '';
    const lines = await this.app.analysis.lines();
    this.lines = lines.ok ? lines.value : [];
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    if (changed.has('draft') || changed.has('lines')) void this.#settle();
  }

  protected override render(): unknown {
    return html`<wr-dialog
      heading=${words.title}
      ?open=${this.draft !== null}
      @dialog-closed=${this.#close}
      @keydown=${keepKeys}
    >
      ${this.draft === null ? nothing : this.#form(this.draft)}
      <wr-button slot="actions" @click=${this.#close}>${words.cancel}</wr-button>
      <wr-button slot="actions" look="main" reason=${this.#reason()} @click=${this.#save}>${words.save}</wr-button>
    </wr-dialog>`;
  }

  #form(draft: ResultDraft): unknown {
    const change = (part: Partial<ResultDraft>): void => this.#change(part);
    return html`<div class="form">
      ${resultForm({ session: this.app.session, draft, lines: this.lines, change })}
      ${draft.result === 'won' && draft.winner !== null ? [this.#deadWinner(draft.winner), this.#money()] : nothing}
      <p class="refusal" role="alert">${this.refusal}</p>
    </div>`;
  }

  /** The table's word counts: the result is taken all the same. */
  #deadWinner(winner: Seat): unknown {
    const { session, analysis } = this.app;
    if (!analysis.dead.seats.includes(winner)) return nothing;
    return html`<p class="soft" role="status">${deadSentence(session, winner)} ${playWords.dead.follows}</p>`;
  }

  #money(): unknown {
    const { session } = this.app;
    if (this.settled === null) return nothing;
    if (!this.settled.ok) return html`<p class="soft" role="status">${this.settled.problem.message}</p>`;
    return html`<div>
      ${paymentsTable(this.settled.value, inChairOrder(session), (seat) => seatNameFull(session, seat))}
      <p class="soft">${words.caution}</p>
    </div>`;
  }

  get #event(): EndedEvent | null {
    const { draft, lines } = this;
    return draft === null ? null : eventOf(draft, lineOf({ draft, lines }));
  }

  #reason(): string {
    if (this.draft === null || this.draft.result === null) return words.sayWhat;
    if (this.draft.result === 'won' && this.draft.winner === null) return words.sayWinner;
    return arePointsGood(this.draft) ? '' : words.pointsWrong;
  }

  #change(change: Partial<ResultDraft>): void {
    if (this.draft !== null) this.draft = { ...this.draft, ...change };
    this.refusal = '';
  }

  async #settle(): Promise<void> {
    const event = this.#event;
    if (event === null) return;
    const settled = await this.app.analysis.settle(event);
    if (this.isConnected) this.settled = settled;
  }

  #save(): void {
    const event = this.#event;
    if (event === null) return;
    const { session } = this.app;
    const saved = enterResult(session, event);
    this.refusal = saved.ok ? '' : saved.problem.message;
    if (!saved.ok) return;
    this.#close();
    emit(this, 'result-entered', null);
  }

  #close(): void {
    this.draft = null;
    this.settled = null;
  }
}

customElements.define('wr-result-dialog', WrResultDialog);

declare global {
  interface HTMLElementTagNameMap {
    'wr-result-dialog': WrResultDialog;
  }
}
