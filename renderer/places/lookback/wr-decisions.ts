import { css, html, type PropertyValues } from 'lit';
import type { GameRecord } from '../../../core/game/record.ts';
import type { Decision } from '../../../core/review/decision.ts';
import type { Review } from '../../../core/review/review.ts';
import { announce } from '../../parts/announcer.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import { data, element, flag, state } from '../../parts/element.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { foldStyles } from '../../tokens/fold.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { lookbackWords } from '../../words/lookback.ts';
import { choicesTable } from './choices-table.ts';
import { decisionName, isCostly, isSameChoice } from './decision-words.ts';
import type { TryAnother } from './lookback-store.ts';
import { lookbackStyles } from './lookback-styles.ts';
import './wr-decision.ts';

const words = lookbackWords.choices;

const Base = element({
  review: data<Review>(),
  record: data<GameRecord>(),
  tryAnother: data<TryAnother>(),
  /** The place of the choice shown, among those stepped through. */
  at: state(0),
  /** Whether the look ahead is still on its way. */
  awaited: flag(),
  onlyCostly: state(false),
});

/** All choices of a game: one at a time, forwards and backwards, and as a table. `show` goes to one. */
export class WrDecisions extends Base {
  static override styles = [
    sharedStyles,
    placeStyles,
    lookbackStyles,
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
    const { decisions } = this.review;
    return html`<section aria-label=${words.title}>
      ${
        decisions.length === 0
          ? html`<p>${words.none}</p>`
          : html`<p>
                ${words.lead(decisions.length, decisions.filter((each) => !isCostly(each)).length)} ${words.judged}
              </p>
              ${this.#stepping()}`
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
                .tryAnother=${this.tryAnother}
                ?awaited=${this.awaited}
              ></wr-decision>`
      }
      <details>
        <summary>${words.table}</summary>
        ${choicesTable(decisions, (decision) => this.#jump(decision))}
      </details>`;
  }

  #jump(decision: Decision): unknown {
    return html`<wr-button look="quiet" @click=${() => this.show(decision)}
      >${`${this.review.decisions.indexOf(decision) + 1}. ${decisionName(decision)}`}</wr-button
    >`;
  }

  /** Shows a choice, and brings it into view. */
  async show(decision: Decision): Promise<void> {
    this.onlyCostly = false;
    this.#step(this.review.decisions.findIndex((each) => isSameChoice(each, decision)));
    await this.updateComplete;
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

customElements.define('wr-decisions', WrDecisions);
