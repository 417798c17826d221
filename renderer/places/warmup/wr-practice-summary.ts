import { css, html, nothing } from 'lit';
import type { AnswerEntry } from '../../../core/warmup/history-file.ts';
import { givenUp, phaseOf } from '../../../core/warmup/history.ts';
import { type SittingSummary, summaryOf } from '../../../core/warmup/sitting.ts';
import { kindsOf } from '../../../core/tiles/text.ts';
import { data, element, flag, numeric } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import { howCounted } from '../../parts/how-counted.ts';
import { tileRow } from '../../parts/tile/tile-row.ts';
import '../../parts/wr-button.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { countedWords } from '../../words/counted.ts';
import { practiceWords } from '../../words/practice.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { PracticeRoom } from './practice-room.ts';
import { warmUpStyles } from './warm-up-styles.ts';

const words = practiceWords.summary;

const Base = element({
  room: data<PracticeRoom>(),
  answers: data<readonly AnswerEntry[]>(() => []),
  /** Problems that were passed over. */
  skipped: numeric(),
  /** Whether it is one of earlier, opened from the list of them. */
  past: flag(),
});

/** What a practice came to: its problems with what each cost, what is worth another look, and what to work on. */
export class WrPracticeSummary extends Base {
  static override styles = [
    sharedStyles,
    warmUpStyles,
    css`
      :host {
        container-type: inline-size;
        --tile-width: clamp(26px, 3.4cqi, 36px);
      }

      .problem {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-1) var(--space-4);
        padding-block: var(--space-2);
        border-bottom: 1px solid var(--hairline);
      }

      .what {
        flex: 1 1 12rem;
        min-width: 0;
      }

      .what > * {
        display: block;
      }

      .cost {
        min-width: 8.5em;
      }

      .work {
        padding: var(--space-3) var(--space-4);
        border-inline-start: 8px solid var(--accent);
        font-weight: 600;
      }

      h2:focus {
        outline: none;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  /** The button that was pressed is gone. */
  protected override firstUpdated(): void {
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
  }

  protected override render(): unknown {
    const { answers } = this;
    const { right, cost, another, workOn } = summaryOf(answers);
    return html`<section class="panel">
      <h2 tabindex="-1">${words.title}</h2>
      ${this.skipped === 0 ? nothing : html`<p>${words.skipped(this.skipped)}</p>`}
      ${
        answers.length === 0
          ? html`<p>${words.none}</p>`
          : html`${howCounted(countedWords.gaveUp)}
              <p>${words.cost(cost, answers.length)} ${words.right(right.hits, right.of)}</p>
              ${this.#work(workOn, another.length === 0)}
              ${another.length === 0 || answers.length <= another.length ? nothing : this.#list(words.another, another)}
              ${this.#list(words.all, answers)}`
      }
      ${this.past ? nothing : this.#onward()}
    </section>`;
  }

  /** What to work on; nothing is said of too few answers. */
  #work(workOn: SittingSummary['workOn'], isAllRight: boolean): unknown {
    if (workOn === null) return isAllRight ? html`<p class="work">${words.nothing}</p>` : nothing;
    const { phase, kind, decisions, cost } = workOn;
    return html`<p class="work">${words.workOn(phase, kind, decisions, cost)}</p>`;
  }

  #onward(): unknown {
    const { room } = this;
    return html`<div class="row">
      <wr-button look="main" @click=${() => room.practise()}>${words.again}</wr-button>
      <wr-button @click=${() => emit(this, 'progress-wanted', null)}>${words.progress}</wr-button>
      <wr-button look="quiet" @click=${() => room.forgetEnded()}>${words.done}</wr-button>
    </div>`;
  }

  #list(title: string, answers: readonly AnswerEntry[]): unknown {
    return html`<h3>${title}</h3>
      <ol>
        ${answers.map((answer) => html`<li class="problem">${this.#problem(answer)}</li>`)}
      </ol>`;
  }

  #problem(answer: AnswerEntry): unknown {
    const { asked, step, kind } = answer;
    const place = this.answers.indexOf(answer) + 1;
    const what = practiceWords.phaseOnKind(practiceWords.phases[phaseOf(step)], warmUpWords.kinds[kind]);
    return html`<strong>${place}</strong>
      <span class="what">
        <span>${what}</span>
        ${asked === undefined ? nothing : tileRow(kindsOf(asked.rack), { size: 'small' })}
      </span>
      ${
        asked === undefined
          ? nothing
          : html`<span class="row"
              >${asked.stops ? words.stopped : html`<span class="soft">${words.gave}</span> ${tileRow(kindsOf(asked.give))}`}</span
            >`
      }
      <span class="cost">${words.costAlone(givenUp(answer))}</span>
      ${
        asked === undefined
          ? nothing
          : html`<wr-button look="quiet" label=${words.openOne(place)} @click=${() => this.room.reopen(answer)}
              >${words.open}</wr-button
            >`
      }`;
  }
}

customElements.define('wr-practice-summary', WrPracticeSummary);
