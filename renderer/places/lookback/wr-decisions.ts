import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import type { GameRecord } from '../../../core/game/record.ts';
import type { ChoiceDocument, Decision } from '../../../core/review/decision.ts';
import type { Review } from '../../../core/review/review.ts';
import { announce } from '../../parts/announcer.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import { paperStyles } from '../../charts/paper-styles.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { foldStyles } from '../../tokens/fold.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { lookbackWords } from '../../words/lookback.ts';
import type { WorkerClient } from '../../worker/client.ts';
import type { JournalCalls } from '../../worker/journal-calls.ts';
import { costCell, nowCell } from './cost-part.ts';
import { decisionName, forPaper, isCostly, isSameChoice, verdictWords } from './decision-words.ts';
import { lookbackStyles } from './lookback-styles.ts';
import { tileRow } from './tile-row.ts';
import './wr-decision.ts';

const words = lookbackWords.choices;

/** All choices of a game: one at a time, forwards and backwards, and as a table. */
export class WrDecisions extends LitElement {
  static override properties = {
    review: { attribute: false },
    record: { attribute: false },
    worker: { attribute: false },
    at: { state: true },
    awaited: { type: Boolean },
    onlyCostly: { state: true },
  };

  declare review: Review;
  declare record: GameRecord;
  declare worker: WorkerClient<JournalCalls>;
  /** Whether the look ahead is still on its way. */
  declare awaited: boolean;
  /** The place of the choice shown, among those stepped through. */
  declare protected at: number;
  declare protected onlyCostly: boolean;

  static override styles = [
    sharedStyles,
    placeStyles,
    lookbackStyles,
    paperStyles,
    foldStyles,
    css`
      .steps {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-3);
      }

      td wr-button {
        white-space: nowrap;
      }

      @container (max-width: 32rem) {
        td wr-button {
          white-space: normal;
        }
      }
    `,
  ];

  constructor() {
    super();
    this.awaited = false;
    this.at = 0;
    this.onlyCostly = false;
  }

  /** Stays at the choice shown when others come in before it. */
  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    const shown = changed.get('review') === undefined ? undefined : this.#shown;
    if (shown === undefined) return;
    const at = this.#stepped().findIndex((each) => isSameChoice(shown, each));
    if (at >= 0) this.at = at;
  }

  /** The choice that was drawn last. */
  #shown: Decision | undefined;

  protected override render(): unknown {
    const { decisions, cost } = this.review;
    return html`<section aria-labelledby="choices">
      <h2 id="choices">${words.title}</h2>
      ${
        decisions.length === 0
          ? html`<p>${words.none}</p>`
          : html`<p>
                ${words.lead(decisions.length, decisions.filter((each) => !isCostly(each)).length, words.inHundred(cost))}
                ${words.judged}
              </p>
              <div class="screen">${this.#stepping()}</div>
              <div class="paper">${this.#table(forPaper(decisions), false)}</div>`
      }
    </section>`;
  }

  #stepping(): unknown {
    const { decisions } = this.review;
    const stepped = this.#stepped();
    const at = Math.min(this.at, Math.max(0, stepped.length - 1));
    const decision = stepped[at];
    this.#shown = decision;
    return html`<wr-choice
        label=${words.which}
        .options=${[
          { value: 'all', label: words.all },
          { value: 'costly', label: words.costly },
        ]}
        .value=${this.onlyCostly ? 'costly' : 'all'}
        @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => {
          this.onlyCostly = detail.value === 'costly';
          this.at = 0;
        }}
      ></wr-choice>
      ${
        decision === undefined
          ? html`<p>${words.noneCostly}</p>`
          : html`<div class="steps">
                <wr-button ?disabled=${at === 0} @click=${() => this.#step(at - 1)}>${words.previous}</wr-button>
                <wr-button ?disabled=${at >= stepped.length - 1} @click=${() => this.#step(at + 1)}
                  >${words.next}</wr-button
                >
              </div>
              <h3>${words.at(at + 1, stepped.length, decisionName(decision))}</h3>
              <wr-decision
                .decision=${decision}
                .record=${this.record}
                .stages=${this.review.stages}
                .worker=${this.worker}
                ?awaited=${this.awaited}
              ></wr-decision>`
      }
      <details>
        <summary>${words.table}</summary>
        ${this.#table(decisions, true)}
      </details>`;
  }

  #table(decisions: readonly Decision[], jumps: boolean): unknown {
    const [, chose, best, cost, now] = words.head;
    return html`<div class="scroll fold" tabindex=${jumps ? '0' : nothing} role="region" aria-label=${words.table}>
      <table>
        <thead>
          <tr>
            ${words.head.map((cell) => html`<th scope="col">${cell}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${decisions.map(
            (decision) =>
              html`<tr>
                <td>${jumps ? this.#jump(decision) : decisionName(decision)}</td>
                <td data-name=${chose}>${choiceCell(decision, decision.chosen)}</td>
                <td data-name=${best}>${bestCell(decision)}</td>
                <td class="number" data-name=${cost}>${costCell(decision)}</td>
                <td class="number" data-name=${now}>${nowCell(decision)}</td>
                <td>${verdictWords(decision)}</td>
              </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
  }

  #jump(decision: Decision): unknown {
    return html`<wr-button look="quiet" @click=${() => this.#jumpTo(decision)}
      >${`${this.review.decisions.indexOf(decision) + 1}. ${decisionName(decision)}`}</wr-button
    >`;
  }

  #jumpTo(decision: Decision): void {
    this.onlyCostly = false;
    this.#step(this.review.decisions.indexOf(decision));
    this.renderRoot.querySelector('.steps')?.scrollIntoView({ block: 'start' });
  }

  #step(at: number): void {
    this.at = at;
    const stepped = this.#stepped();
    const decision = stepped[at];
    if (decision !== undefined) announce(words.at(at + 1, stepped.length, decisionName(decision)));
  }

  #stepped(): readonly Decision[] {
    const { decisions } = this.review;
    return this.onlyCostly ? decisions.filter(isCostly) : decisions;
  }
}

/** The best choice, in the end where that is known; a dash where it was the one taken. */
function bestCell(decision: Decision): unknown {
  const { ahead, best, cost, kind } = decision;
  const tiles = ahead !== null && kind !== 'second-round' ? ahead.best : best.tiles;
  const isTaken = ahead === null ? cost === 0 : ahead.verdict === 'best';
  return isTaken ? '–' : choiceCell(decision, { tiles });
}

/** The tiles of a choice; of a second round whether to stop or to go on. */
function choiceCell({ kind }: Decision, { tiles }: Pick<ChoiceDocument, 'tiles'>): unknown {
  if (kind !== 'second-round') return tileRow(tiles);
  return tiles === '' ? words.stop : words.goOn;
}

customElements.define('wr-decisions', WrDecisions);

declare global {
  interface HTMLElementTagNameMap {
    'wr-decisions': WrDecisions;
  }
}
