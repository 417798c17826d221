import { css, html, nothing } from 'lit';
import { isSameChoice, type PassChoice } from '../../../core/future/rivals.ts';
import { data, element } from '../../parts/element.ts';
import { howCounted } from '../../parts/how-counted.ts';
import '../../parts/wr-hand.ts';
import '../../parts/wr-explain.ts';
import '../../parts/wr-lean.ts';
import type { Judged } from '../../session/compare-passes.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { countedWords } from '../../words/counted.ts';
import { inHundred } from '../../words/numbers.ts';
import { practiceWords } from '../../words/practice.ts';
import { handRow } from '../table/hand-row.ts';
import { choicePart } from '../table/look-row.ts';
import { panelStyles } from '../table/panel-styles.ts';
import { readingStyles } from '../table/reading-styles.ts';
import { mayBeBlind } from '../../../core/exchange/steps.ts';
import { differences } from './differences.ts';
import type { PracticeRoom } from './practice-room.ts';
import type { ShownAnswer, WarmUpRun } from './warm-up-run.ts';
import { warmUpStyles } from './warm-up-styles.ts';
import './wr-answer-code.ts';

const words = practiceWords.answer;

const SHOWN_HANDS = 4;

const Base = element({
  room: data<PracticeRoom>(),
  run: data<WarmUpRun>(),
});

/** The answer as a teacher gives it: what the rack leans to, what goes and stays and why, what each pass costs, where one differs. */
export class WrWarmUpAnswer extends Base {
  static override styles = [
    sharedStyles,
    panelStyles,
    readingStyles,
    warmUpStyles,
    css`
      :host {
        display: block;
        container-type: inline-size;
        --explain-wrap: normal;
      }

      .answer {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-3) var(--space-5);
      }

      @container (min-width: 48rem) {
        .answer {
          grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
        }
      }

      .column {
        display: flex;
        flex-direction: column;
        gap: var(--space-3);
        min-width: 0;
      }

      .column > section {
        display: flex;
        flex-direction: column;
        gap: var(--space-1);
        min-width: 0;
      }

      h3 {
        position: static;
        width: auto;
        height: auto;
        clip-path: none;
        overflow: visible;
        font-size: var(--text-body);
      }

      .pass {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 var(--space-3);
        padding: 3px var(--space-2);
        border-bottom: 1px solid var(--hairline);
      }

      .equal {
        background: var(--accent-wash);
      }

      .name {
        display: inline-flex;
        align-items: center;
        gap: var(--space-2);
      }

      .differences li::before {
        content: '· ';
      }

      .reading,
      .hands {
        width: 100%;
      }

      .hands li {
        contain: none;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  protected override render(): unknown {
    const { shown } = this.run;
    if (shown === null) return nothing;
    return html`<div class="answer">
      <div class="column">
        <wr-answer-code .room=${this.room} .run=${this.run}></wr-answer-code>
        ${this.#lesson(shown)} ${this.#more(shown)}
      </div>
      <div class="column">${this.#passes(shown)} ${this.#differs(shown)}</div>
    </div>`;
  }

  #lesson({ answer, list }: ShownAnswer): unknown {
    const [best] = list;
    const { lesson, chance } = answer;
    return html`<section>
        ${this.run.isReopened ? html`<p class="soft">${practiceWords.page.reopened}</p>` : nothing}
        <div class="row spread">
          <h3>${words.rack}</h3>
          ${howCounted(countedWords.answer)}
        </div>
        <p>${lesson.leans} ${lesson.also}</p>
        <p>${words.chance(inHundred(chance))}</p>
      </section>
      ${best === undefined ? nothing : this.#goesAndStays(best, answer)}`;
  }

  #goesAndStays({ choice, reasons }: Judged, { options }: ShownAnswer['answer']): unknown {
    if (choice.type === 'stop') return html`<section><p>${words.stopHere}</p></section>`;
    const option = options.find(({ kinds }) => isSameChoice({ type: 'give', tiles: kinds }, choice));
    return html`<section>
        <h3>${words.goes}</h3>
        <div>${this.#choice(choice)}</div>
        <p>${(option?.goes ?? reasons).join(' ')}</p>
      </section>
      ${
        option === undefined
          ? nothing
          : html`<section>
              <h3>${words.stays}</h3>
              <p>${option.stays}</p>
            </section>`
      }`;
  }

  #passes({ list, own }: ShownAnswer): unknown {
    const isListed = list.some(({ choice }) => isSameChoice(choice, own.choice));
    return html`<section>
      <h3>${words.passes}</h3>
      ${howCounted(countedWords.ahead)}
      <ol>
        ${[...list, ...(isListed ? [] : [own])].map((each) => this.#pass(each, own.choice))}
      </ol>
      <p class="soft">${words.estimate}</p>
    </section>`;
  }

  #pass({ choice, standing: { verdict, deciding } }: Judged, own: PassChoice): unknown {
    const size =
      verdict === 'best' ? words.bestMark : verdict === 'as good' ? words.equalMark : words.behind(deciding.loss.mean);
    return html`<li class="pass ${verdict === 'costs' ? '' : 'equal'}">
      ${this.#choice(choice)} <span>${size}</span>
      ${isSameChoice(choice, own) ? html`<strong>${words.yours}</strong>` : nothing}
    </li>`;
  }

  #choice(choice: PassChoice): unknown {
    return choicePart(choice, mayBeBlind(this.run.step));
  }

  #differs(shown: ShownAnswer): unknown {
    const { attempt } = this.run.warmUp;
    if (attempt === null) return nothing;
    const said = differences(attempt, shown, this.room.sections);
    return html`<section>
      <h3>${words.differs}</h3>
      ${
        said.length === 0
          ? html`<p>${attempt.keeps === '' && attempt.aims.length === 0 ? words.unmarked : words.same}</p>`
          : html`<ul class="differences">
              ${said.map((each) => html`<li>${each}</li>`)}
            </ul>`
      }
      ${attempt.why === '' ? nothing : html`<p>${words.why(attempt.why)}</p>`}
    </section>`;
  }

  #more({ answer: { reading } }: ShownAnswer): unknown {
    return html`<details>
      <summary>${words.more}</summary>
      <section class="reading">
        <wr-lean label=${words.lean} .shares=${reading.lean}></wr-lean>
        <h3>${words.hands}</h3>
        <ol class="hands">
          ${reading.hands.slice(0, SHOWN_HANDS).map((hand) => html`<li>${handRow(hand, reading.draws)}</li>`)}
        </ol>
      </section>
    </details>`;
  }
}

customElements.define('wr-warm-up-answer', WrWarmUpAnswer);
