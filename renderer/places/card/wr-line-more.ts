import { css, html, nothing } from 'lit';
import type { CardDocument, LineDocument, LinePlace } from '../../../core/card/document.ts';
import { type LineReading, readLine } from '../../../core/card/line.ts';
import { SLIDES } from '../../../core/card/pattern.ts';
import { data, element } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { cardStyles } from './card-styles.ts';
import type { Step } from './line-moves.ts';
import { lineToolbar, sectionChoice } from './line-toolbar.ts';
import type { LineEdited } from './wr-line-choices.ts';

const words = cardWords.line;

const Base = element({
  line: data<LineDocument>(),
  card: data<CardDocument>(),
  place: data<LinePlace>(),
});

/**
 * What is seldom wanted of a line: to copy, move or remove it, a note, a second number that moves by itself. Sends
 * `line-edited`, and `line-stepped` with a `Step`.
 */
export class WrLineMore extends Base {
  static override styles = [
    sharedStyles,
    cardStyles,
    css`
      .settings {
        align-items: flex-start;
      }

      wr-field {
        flex: 1 1 14rem;
      }
    `,
  ];

  protected override render(): unknown {
    const { card, place } = this;
    const reading = readLine(this.line);
    const step = (next: Step): void => void emit<Step>(this, 'line-stepped', next);
    return html`<div class="stack close">
      ${movesApart(reading) || reading.distinct ? this.#second(reading) : nothing}
      ${lineToolbar({ card, place, off: false, step })}
      <details>
        <summary>${words.more}</summary>
        <div class="row settings">
          ${sectionChoice(card, place, step)}
          <wr-field
            label=${words.note}
            hint=${words.noteHint}
            .value=${reading.note}
            @field-typed=${({ detail }: CustomEvent<FieldText>) => this.#edit({ note: detail.value }, 'note')}
          ></wr-field>
        </div>
      </details>
    </div>`;
  }

  /** How numbers marked ' move. */
  #second({ slide2, distinct }: LineReading): unknown {
    return html`<div class="row settings">
      <wr-choice
        label=${words.slide2}
        .options=${SLIDES.map((slide) => ({ value: String(slide), label: words.slides[slide] }))}
        value=${String(slide2)}
        @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => this.#edit({ slide2: Number(detail.value) })}
      ></wr-choice>
      <wr-choice
        label=${words.distinct}
        .options=${[
          { value: 'no', label: words.mayBeEqual },
          { value: 'yes', label: words.neverEqual },
        ]}
        value=${distinct ? 'yes' : 'no'}
        @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) =>
          this.#edit({ distinct: detail.value === 'yes' ? true : undefined })}
      ></wr-choice>
    </div>`;
  }

  #edit(change: LineDocument, doing = ''): void {
    emit<LineEdited>(this, 'line-edited', { change, doing });
  }
}

/** Whether a number of any form moves by itself. */
function movesApart({ pattern, or }: LineReading): boolean {
  return [pattern, ...or].flat().some(({ tile }) => tile.is === 'number' && tile.movement === 'second');
}

customElements.define('wr-line-more', WrLineMore);
