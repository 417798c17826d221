import { css, html, nothing, type PropertyValues } from 'lit';
import type { Result } from '../../../../core/base/result.ts';
import type { EndedEvent } from '../../../../core/game/events.ts';
import type { PointRules } from '../../../../core/game/point-rules.ts';
import { NO_PAYMENT, type Payments } from '../../../../core/game/points.ts';
import type { LineDocument } from '../../../../core/engine/reading-questions.ts';
import { data, element, state } from '../../../parts/element.ts';
import { emit } from '../../../parts/emit.ts';
import '../../../parts/wr-button.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { resultWords as words } from '../../../words/play.ts';
import { gameLink } from '../../journal/routes.ts';
import { panelStyles } from '../panel-styles.ts';
import { paymentsTable } from './payments-table.ts';
import { playStyles } from './play-styles.ts';
import { resultStyles } from './result-styles.ts';
import type { ResultWanted } from './advised.ts';
import './wr-evening-panel.ts';
import { inChairOrder, seatName, seatNameFull } from './seat-names.ts';
import type { GameSession } from '../../../session/game-session.ts';

const headingStyles = css`
  h2 {
    flex: 1 1 8rem;
  }
`;

const Base = element({
  app: data<AppContext>(),
  settled: state<Result<Payments> | null>(null),
  lines: state<readonly LineDocument[]>(() => []),
});

/** How the game ended, who pays what, and the evening that it belongs to. */
export class WrResultPanel extends Base {
  static override styles = [sharedStyles, panelStyles, playStyles, resultStyles, headingStyles];

  #settledFor = '';

  constructor() {
    super();
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
      ${this.#hand(result)} ${this.#money()} ${this.#lookBack()}
      <wr-evening-panel .app=${this.app}></wr-evening-panel>
      ${this.#rules()}
    </section>`;
  }

  #hand({ lineId, jokerless }: EndedEvent): unknown {
    if (lineId === undefined) return nothing;
    // A line that is not on the card has no name; the place of one that is on it is kept free until it is known.
    const name = this.settled === null ? '…' : this.lines.find(({ id }) => id === lineId)?.name;
    if (name === undefined) return nothing;
    return html`<p>${words.hand(name)}${jokerless === true ? `, ${words.jokerless}` : ''}</p>`;
  }

  #money(): unknown {
    const { session } = this.app;
    const table = (payments: Payments): unknown =>
      paymentsTable(payments, inChairOrder(session), (seat) => seatNameFull(session, seat));
    // The place of the table is kept free until it is known, so that nothing below moves.
    if (this.settled === null) return html`<div class="stack awaited">${table(NO_PAYMENT)}</div>`;
    return this.settled.ok ? table(this.settled.value) : html`<p class="soft">${this.settled.problem.message}</p>`;
  }

  /** The way to the look-back of this game; without a deal there is nothing to look back at. */
  #lookBack(): unknown {
    const { id, events } = this.app.session;
    if (!events.some(({ type }) => type === 'dealt')) return nothing;
    return html`<p>
      <wr-button @click=${() => void (window.location.hash = gameLink(id))}>${words.lookBack}</wr-button>
    </p>`;
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

/** How a game ended: "Across (North) won by your discard". */
function resultSentence(
  session: Pick<GameSession, 'state' | 'players'>,
  { result, winner, by, from }: EndedEvent,
): string {
  if (result !== 'won' || winner === undefined) return words.results[result];
  const own = session.state.seat;
  const who = winner === own ? seatName(session, winner) : seatNameFull(session, winner);
  if (by === undefined) return words.won(who);
  if (by === 'draw') return words.wonByDraw(who);
  if (from === undefined) return words.wonByDiscard(who);
  return from === own ? words.wonByYours(who) : words.wonByTheirs(who, seatName(session, from));
}

customElements.define('wr-result-panel', WrResultPanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-result-panel': WrResultPanel;
  }
}
