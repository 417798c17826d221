import { css, html } from 'lit';
import { ADVICE_TIMES, type AdviceTime, USUAL_ADVICE } from '../../core/game/advice.ts';
import { explainedStyles } from '../tokens/layout.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { adviceWords as words } from '../words/advice.ts';
import { data, element, flag, text } from './element.ts';
import { emit } from './emit.ts';
import './wr-choice.ts';
import type { ChoiceChanged } from './wr-choice.ts';

/** What `advice-chosen` carries. */
export interface AdviceChosen {
  readonly advice: AdviceTime;
}

/** The one with the most aid first, as most people want it. */
const MOST_FIRST = ADVICE_TIMES.toReversed();

const explained = html`<ul>
  ${MOST_FIRST.map((each) => html`<li><strong>${words.names[each]}.</strong> ${words.about[each]}</li>`)}
</ul>`;

const Base = element({
  value: data<AdviceTime>(USUAL_ADVICE),
  label: text(words.label),
  /** Only the choice that holds is explained. */
  brief: flag(),
});

/** When advice is welcome: the three choices, what each means, and the caution about clubs. Sends `advice-chosen`. */
export class WrAdviceChoice extends Base {
  static override styles = [
    sharedStyles,
    explainedStyles,
    css`
      /* Room for the longest, so that a choice moves nothing that is below. */
      .about {
        min-height: 3em;
      }
    `,
  ];

  protected override render(): unknown {
    return html`<wr-choice
        label=${this.label}
        .options=${MOST_FIRST.map((value) => ({ value, label: words.names[value] }))}
        .value=${this.value}
        @choice-changed=${this.#chosen}
      ></wr-choice>
      ${this.brief ? html`<p class="about" role="status">${words.about[this.value]}</p>` : explained}
      <p><strong>${words.caution}</strong></p>`;
  }

  #chosen({ detail }: CustomEvent<ChoiceChanged>): void {
    const advice = ADVICE_TIMES.find((each) => each === detail.value);
    if (advice !== undefined) emit<AdviceChosen>(this, 'advice-chosen', { advice });
  }
}

customElements.define('wr-advice-choice', WrAdviceChoice);

declare global {
  interface HTMLElementTagNameMap {
    'wr-advice-choice': WrAdviceChoice;
  }
}
