import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import type { EndedEvent } from '../../../../core/game/events.ts';
import type { PointRules } from '../../../../core/game/point-rules.ts';
import type { Payments } from '../../../../core/game/points.ts';
import { emit } from '../../../parts/emit.ts';
import '../../../parts/wr-button.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { resultWords as words } from '../../../words/play.ts';
import type { Answered, LineView } from '../../../worker/calls.ts';
import { handName } from '../hand-name.ts';
import { panelStyles } from '../panel-styles.ts';
import { paymentsTable } from './payments-table.ts';
import { playStyles } from './play-styles.ts';
import { resultStyles } from './result-styles.ts';
import type { ResultWanted } from './wr-advice-panel.ts';
import { resultSentence } from './result-sentence.ts';
import './wr-evening-panel.ts';
import { inChairOrder, seatNameFull } from './seat-names.ts';

const headingStyles = css`
  h2 {
    flex: 1 1 8rem;
  }
`;

/** How the game ended, who pays what, and the evening that it belongs to. */
export class WrResultPanel extends LitElement {
  static override properties = {
    app: { attribute: false },
    settled: { state: true },
    lines: { state: true },
  };

  declare app: AppContext;
  declare protected settled: Answered<Payments> | null;
  declare protected lines: readonly LineView[];

  static override styles = [sharedStyles, panelStyles, playStyles, resultStyles, headingStyles];

  #settledFor = '';

  constructor() {
    super();
    this.settled = null;
    this.lines = [];
    new StoreController(this, () => [this.app.session, this.app.preferences]);
  }

  /** Puts the focus on the way to the next game. */
  override focus(): void {
    this.renderRoot.querySelector('wr-evening-panel')?.focus();
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    const { state, payment, id } = this.app.session;
    const asked = JSON.stringify([id, state.result, payment]);
    if (state.result === null || asked === this.#settledFor) return;
    this.#settledFor = asked;
    void this.#settle(state.result, asked);
  }

  protected override render(): unknown {
    const { session } = this.app;
    const { result } = session.state;
    if (result === null) return nothing;
    return html`<section class="sheet stack" aria-label=${words.over}>
      <div class="row spread">
        <h2>${resultSentence(session, result)}</h2>
        <wr-button look="quiet" @click=${() => emit<ResultWanted>(this, 'result-wanted', {})}
          >${words.change}</wr-button
        >
      </div>
      ${this.#hand(result)} ${this.#money()}
      <wr-evening-panel .app=${this.app}></wr-evening-panel>
      ${this.#rules()}
    </section>`;
  }

  #hand({ lineId, jokerless }: EndedEvent): unknown {
    if (lineId === undefined) return nothing;
    const line = this.lines.find(({ id }) => id === lineId);
    const name = handName({ section: line?.section ?? '', line: lineId }).trim();
    return html`<p>${words.hand(name)}${jokerless === true ? `, ${words.jokerless}` : ''}</p>`;
  }

  #money(): unknown {
    const { session } = this.app;
    if (this.settled === null) return nothing;
    return this.settled.ok
      ? paymentsTable(this.settled.value, inChairOrder(session), (seat) => seatNameFull(session, seat))
      : html`<p class="soft">${this.settled.message}</p>`;
  }

  #rules(): unknown {
    const { session } = this.app;
    return html`<details>
      <summary>${words.rules}</summary>
      <div class="stack">
        ${words.ruleSentences(session.payment).map((sentence) => html`<p>${sentence}</p>`)}
        <p class="soft">${words.ruleNote} ${words.caution}</p>
        ${this.#newRules()}
      </div>
    </details>`;
  }

  /** The way to today's rules, where the game was begun with others. */
  #newRules(): unknown {
    const { session, preferences } = this.app;
    const { payment } = preferences.values;
    if (JSON.stringify(payment) === JSON.stringify(session.payment)) return nothing;
    return html`<wr-button @click=${() => this.#takeRules(payment)}>${words.newRules}</wr-button>`;
  }

  /** The button goes with what it was for; the focus stays with the rules. */
  #takeRules(payment: PointRules): void {
    this.app.session.describe({ payment });
    this.renderRoot.querySelector('summary')?.focus();
  }

  async #settle(result: EndedEvent, asked: string): Promise<void> {
    const [lines, settled] = await Promise.all([this.app.analysis.lines(), this.app.analysis.settle(result)]);
    if (asked !== this.#settledFor) return;
    this.lines = lines.ok ? lines.value : [];
    this.settled = settled;
  }
}

customElements.define('wr-result-panel', WrResultPanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-result-panel': WrResultPanel;
  }
}
