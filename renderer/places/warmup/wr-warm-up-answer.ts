import { html, LitElement, nothing } from 'lit';
import '../../parts/wr-hand.ts';
import '../../parts/wr-explain.ts';
import '../../parts/wr-lean.ts';
import { handRow } from '../table/hand-row.ts';
import { panelStyles } from '../table/panel-styles.ts';
import { readingStyles } from '../table/reading-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { AnswerView } from '../../worker/warm-up-calls.ts';
import { answerStyles } from './answer-styles.ts';
import { ownPart } from './own-part.ts';
import type { PracticeRoom } from './practice-room.ts';
import { asGoodPart, planPart } from './passes-part.ts';
import { type Known, passVerdict, stopVerdict } from './verdict-part.ts';
import type { WarmUpRun } from './warm-up-run.ts';
import { warmUpStyles } from './warm-up-styles.ts';

const words = warmUpWords.answer;

const SHOWN_HANDS = 4;

/** The answer to a decision: the verdict and its cost first, then why, then the reading and the plan. */
export class WrWarmUpAnswer extends LitElement {
  static override properties = {
    room: { attribute: false },
    run: { attribute: false },
  };

  declare room: PracticeRoom;
  declare run: WarmUpRun;

  static override styles = [sharedStyles, panelStyles, readingStyles, warmUpStyles, answerStyles];

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
    if (answer === null) return this.#working();
    const known = { answer, ahead, working };
    const verdict = verdictPart(known);
    if (verdict === null) return this.#working();
    return html`<div class="answer">
      <div class="column">
        ${verdict} ${ownPart(warmUp.attempt, answer)} ${answer.chosen === null ? nothing : asGoodPart(known)}
        ${planPart(known)}
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
function verdictPart(known: Known): unknown {
  const { answer, ahead } = known;
  if (answer.chosen !== null) return passVerdict(known, answer.chosen);
  return ahead === null ? null : stopVerdict(answer, ahead);
}

customElements.define('wr-warm-up-answer', WrWarmUpAnswer);

declare global {
  interface HTMLElementTagNameMap {
    'wr-warm-up-answer': WrWarmUpAnswer;
  }
}
