import { css, html, LitElement, nothing } from 'lit';
import { nameOf } from '../../../core/tiles/names.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';
import '../../parts/wr-hand.ts';
import '../../parts/wr-explain.ts';
import '../../parts/wr-lean.ts';
import { handRow } from '../table/hand-row.ts';
import { panelStyles } from '../table/panel-styles.ts';
import { readingStyles } from '../table/reading-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { points, pointsAlone } from '../../words/numbers.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { AnswerView, JudgedView } from '../../worker/warm-up-calls.ts';
import { aimWords } from './aim-words.ts';
import { answerStyles } from './answer-styles.ts';
import { kindsOf, passTiles } from './tile-row.ts';
import type { PracticeRoom } from './practice-room.ts';
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
    if (answer === this.#told) return;
    this.#told = answer;
    this.renderRoot.querySelector<HTMLElement>('.headline')?.focus();
  }

  protected override render(): unknown {
    const { answer, working, refusal } = this.run;
    if (answer === null || answer.chosen === null) {
      return html`<h2>${words.title}</h2>
        <p role="status">${warmUpWords.run.working}</p>
        <progress aria-label=${warmUpWords.run.working} max="1" .value=${working ?? 0}></progress>
        <p class="bad" role="alert">${refusal}</p>`;
    }
    return html`<div class="answer">
      <div class="column">
        ${this.#verdict(answer, answer.chosen)} ${this.#own(answer)} ${this.#asGood(answer)} ${this.#plan(answer)}
      </div>
      ${this.#reading(answer)}
    </div>`;
  }

  #verdict({ options }: AnswerView, own: JudgedView): unknown {
    const [best] = options;
    return html`<section class="verdict ${own.verdict}">
      <h2 tabindex="-1" class="headline">${warmUpWords.verdicts[own.verdict]}</h2>
      <p class="row">${words.yours} ${passTiles(own)}</p>
      ${best === undefined || own.cost === 0 ? nothing : html`<p class="row">${words.best} ${passTiles(best)}</p>`}
      <p>${own.cost === 0 ? words.noCost : words.cost(points(own.cost))} ${this.#tried()}</p>
      <p class="soft">${words.exact} ${words.equalWithin}</p>
      ${this.#reasons(words.whyYours, own)}
      ${best === undefined || own.cost === 0 ? nothing : this.#reasons(words.whyBest, best)}
    </section>`;
  }

  #reasons(title: string, { reasons }: JudgedView): unknown {
    return html`<h3>${title}</h3>
      <ul class="reasons">
        ${reasons.map((reason) => html`<li>${reason}</li>`)}
      </ul>`;
  }

  #tried(): unknown {
    const { tryOut, working } = this.run;
    if (tryOut === null) return working === null ? '' : words.trying;
    const { tries, difference, halfWidth } = tryOut;
    const told = words.tried(tries, difference > 0, pointsAlone(Math.abs(difference)), pointsAlone(halfWidth));
    return Math.abs(difference) <= halfWidth ? `${told} ${words.triedTie}` : told;
  }

  /** The person's own aims, keepers and reasons beside what the engine found. */
  #own({ aims, tiles }: AnswerView): unknown {
    const { keeps, why } = this.run.warmUp.attempt;
    const kept = Tiles.of(kindsOf(keeps));
    const keepers = Tiles.of(tiles.filter(({ verdict }) => verdict !== 'spare').map(({ kind }) => kind));
    const right = kept.minus(kept.minus(keepers));
    const missed = keepers.minus(kept).distinct().map(nameOf).join(', ');
    return html`<section>
      ${aims.length === 0 ? nothing : html`<h3>${words.aims}</h3>`} ${aims.map((aim) => html`<p>${aimWords(aim)}</p>`)}
      ${
        kept.size === 0
          ? nothing
          : html`<h3>${words.keeps}</h3>
              <p>${words.keepsRight(right.size, kept.size)} ${missed === '' ? '' : words.keepsMissed(missed)}</p>`
      }
      ${
        why === ''
          ? nothing
          : html`<h3>${words.why}</h3>
              <p>${why}</p>`
      }
    </section>`;
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

customElements.define('wr-warm-up-answer', WrWarmUpAnswer);

declare global {
  interface HTMLElementTagNameMap {
    'wr-warm-up-answer': WrWarmUpAnswer;
  }
}
