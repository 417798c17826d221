import { css, html, LitElement, nothing } from 'lit';
import type { Ahead } from '../../../core/review/ahead.ts';
import '../../parts/wr-hand.ts';
import '../../parts/wr-explain.ts';
import '../../parts/wr-lean.ts';
import { handRow } from '../table/hand-row.ts';
import { panelStyles } from '../table/panel-styles.ts';
import { readingStyles } from '../table/reading-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { points } from '../../words/numbers.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { AnswerView } from '../../worker/warm-up-calls.ts';
import { answerStyles } from './answer-styles.ts';
import { ownPart } from './own-part.ts';
import type { PracticeRoom } from './practice-room.ts';
import { passTiles } from './tile-row.ts';
import { passVerdict, stopVerdict } from './verdict-part.ts';
import type { WarmUpRun } from './warm-up-run.ts';
import { warmUpStyles } from './warm-up-styles.ts';

const words = warmUpWords.answer;

const SHOWN_HANDS = 4;
const SHOWN_PASSES = 5;
const SHOWN_EQUALS = 4;

/** The answer to a decision: the verdict and its cost first, then why, then the reading and the plan. */
export class WrWarmUpAnswer extends LitElement {
  static override properties = {
    room: { attribute: false },
    run: { attribute: false },
  };

  declare room: PracticeRoom;
  declare run: WarmUpRun;

  static override styles = [sharedStyles, panelStyles, readingStyles, warmUpStyles, answerStyles, css``];

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  #told: AnswerView | null = null;

  protected override updated(): void {
    const { answer } = this.run;
    const headline = this.renderRoot.querySelector<HTMLElement>('.headline');
    if (answer === this.#told || headline === null) return;
    this.#told = answer;
    headline.focus();
  }

  protected override render(): unknown {
    const { answer, ahead, working, warmUp } = this.run;
    const verdict = answer === null ? null : verdictPart(answer, ahead, working);
    if (answer === null || verdict === null) return this.#working();
    return html`<div class="answer">
      <div class="column">
        ${verdict} ${ownPart(warmUp.attempt, answer)} ${answer.chosen === null ? nothing : this.#asGood(answer)}
        ${this.#plan(answer)}
      </div>
      ${this.#reading(answer)}
    </div>`;
  }

  #working(): unknown {
    const { working, refusal } = this.run;
    return html`<h2 class="waiting">${words.title}</h2>
      <p role="status">${warmUpWords.run.working}</p>
      <progress aria-label=${warmUpWords.run.working} max="1" .value=${working ?? 0}></progress>
      <p class="bad" role="alert">${refusal}</p>`;
  }

  #asGood({ asGood, options, chosen }: AnswerView): unknown {
    const named = chosen?.cost === 0 ? '' : (options[0]?.give.join() ?? '');
    const others = asGood.filter(({ give }) => give.join() !== named);
    return html`<section>
      <h3>${words.asGood}</h3>
      ${
        others.length === 0
          ? html`<p>${words.asGoodNone}</p>`
          : html`<ul class="row">
              ${others.slice(0, SHOWN_EQUALS).map((option) => html`<li>${passTiles(option)}</li>`)}
              ${others.length > SHOWN_EQUALS ? html`<li>${words.asGoodMore(others.length - SHOWN_EQUALS)}</li>` : nothing}
            </ul>`
      }
    </section>`;
  }

  #plan({ options }: AnswerView): unknown {
    return html`<section>
      <h3>${words.plan}</h3>
      <ol class="plan">
        ${options
          .slice(0, SHOWN_PASSES)
          .map(
            (option) =>
              html`<li class="row">
                ${passTiles(option)} <span>${option.cost === 0 ? words.best : points(option.cost)}</span>
              </li>`,
          )}
      </ol>
    </section>`;
  }

  #reading({ reading }: AnswerView): unknown {
    return html`<section class="reading">
      <h3>${words.reading}</h3>
      <wr-lean label=${words.lean} .shares=${reading.lean}></wr-lean>
      <ol class="hands">
        ${reading.byReach.slice(0, SHOWN_HANDS).map((hand) => html`<li>${handRow(hand, reading.draws)}</li>`)}
      </ol>
    </section>`;
  }
}

/** The verdict, or null as long as it is not known: a stop is judged by the look ahead alone. */
function verdictPart(answer: AnswerView, ahead: Ahead | null, working: number | null): unknown {
  if (answer.chosen !== null) return passVerdict(answer, answer.chosen, ahead, working);
  return ahead === null ? null : stopVerdict(answer, ahead);
}

customElements.define('wr-warm-up-answer', WrWarmUpAnswer);

declare global {
  interface HTMLElementTagNameMap {
    'wr-warm-up-answer': WrWarmUpAnswer;
  }
}
