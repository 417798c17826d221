import { css, html, nothing, type PropertyValues } from 'lit';
import type { LineDocument } from '../../../core/card/document.ts';
import { readLine } from '../../../core/card/line.ts';
import { lineSentence } from '../../../core/card/sentence.ts';
import { lineWords } from '../../../core/card/words.ts';
import { data, element, state } from '../../parts/element.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { cardStyles } from './card-styles.ts';
import { formsText } from './forms-text.ts';
import { AS_PRINTED, leafing } from './wr-line-groups.ts';

const words = cardWords.line;

const Base = element({
  line: data<LineDocument>(),
  way: state(AS_PRINTED),
});

/** A line read back: drawn with the tiles of one of its ways, to be leafed through, and in words. */
export class WrLineView extends Base {
  static override styles = [
    sharedStyles,
    cardStyles,
    css`
      .sentence {
        font-size: var(--text-lead);
        font-weight: 600;
        text-wrap: pretty;
      }
    `,
  ];

  /** Puts the focus on the examples, or on what is folded under them. */
  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('wr-button:not([disabled]), summary')?.focus();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('line')) this.way = AS_PRINTED;
  }

  protected override render(): unknown {
    const reading = readLine(this.line);
    const count = reading.ways.length;
    const drawn = this.way < 0 ? reading.forms.map((form) => ({ form, way: AS_PRINTED })) : [reading.drawn(this.way)];
    return html`<div class="stack">
      <p class="sentence">${lineSentence(reading)}</p>
      ${drawn.map(
        ({ form, way }, at) =>
          html`${at === 0 ? nothing : html`<p>${words.or}</p>`}<wr-line-groups
              fixed
              .reading=${form}
              .way=${way}
            ></wr-line-groups>`,
      )}
      ${leafing(this.way, count, (next) => this.#leaf(next))}
      <details>
        <summary>${cardWords.proof.groups}</summary>
        <p class="code">${formsText(reading)}</p>
        <ul aria-label=${words.readAloud}>
          ${lineWords(reading).map((sentence) => html`<li>${sentence}</li>`)}
        </ul>
      </details>
    </div>`;
  }

  #leaf(way: number): void {
    this.way = way;
  }
}

customElements.define('wr-line-view', WrLineView);
