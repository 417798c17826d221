import { css, html, nothing, type PropertyValues } from 'lit';
import type { Fields } from '../../../core/base/json.ts';
import type { LineDocument } from '../../../core/card/document.ts';
import { type LineReading, pointsFrom, readLine } from '../../../core/card/line.ts';
import { SLIDES } from '../../../core/card/pattern.ts';
import { data, element, state, text } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import '../../parts/wr-toolbar.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { cardStyles } from './card-styles.ts';

const words = cardWords.line;

/** What `line-edited` carries: fields to change, and the field that is being typed, if one is. */
export interface LineEdited {
  readonly change: Fields;
  readonly doing: string;
}

const Base = element({
  line: data<LineDocument>(),
  /** Distinguishes lines. */
  name: text(),
  /** What stands in the field of points while it is no number of points. */
  wrongPoints: state<string | null>(null),
});

/** What a line says beside its groups: movement, exposure, points, note, short name. Sends `line-edited`. */
export class WrLineSettings extends Base {
  static override styles = [
    sharedStyles,
    cardStyles,
    css`
      .points wr-field {
        width: 8rem;
      }

      .points {
        align-items: flex-start;
      }

      wr-toolbar {
        margin-top: 1.75rem;
      }
    `,
  ];

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('name')) this.wrongPoints = null;
  }

  protected override render(): unknown {
    const reading = readLine(this.line);
    const { slide, slide2, concealed, note, id } = reading;
    return html`<div class="stack">
      ${this.#slide(words.slide, 'slide', slide)}
      <wr-choice
        label=${words.exposure}
        .options=${[
          { value: 'no', label: words.exposed },
          { value: 'yes', label: words.concealed },
        ]}
        value=${concealed ? 'yes' : 'no'}
        @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => this.#edit({ concealed: detail.value === 'yes' })}
      ></wr-choice>
      ${this.#points()} ${this.#slide(words.slide2, 'slide2', slide2)}
      ${this.#text(words.note, words.noteHint, 'note', note)} ${this.#text(words.id, '', 'id', id)}
      ${movesApart(reading) || reading.distinct ? this.#distinct(reading.distinct) : nothing}
    </div>`;
  }

  #distinct(distinct: boolean): unknown {
    return html`<wr-choice
      label=${words.distinct}
      .options=${[
        { value: 'no', label: words.mayBeEqual },
        { value: 'yes', label: words.neverEqual },
      ]}
      value=${distinct ? 'yes' : 'no'}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) =>
        this.#edit({ distinct: detail.value === 'yes' ? true : undefined })}
    ></wr-choice>`;
  }

  #slide(label: string, field: 'slide' | 'slide2', value: number): unknown {
    return html`<wr-choice
      label=${label}
      .options=${SLIDES.map((slide) => ({ value: String(slide), label: words.slides[slide] }))}
      value=${String(value)}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => this.#edit({ [field]: Number(detail.value) })}
    ></wr-choice>`;
  }

  #points(): unknown {
    const { points } = readLine(this.line);
    return html`<div class="row points">
      <wr-field
        label=${words.points}
        .value=${this.wrongPoints ?? String(points)}
        error=${this.wrongPoints === null ? '' : cardWords.grid.wrongPoints}
        @field-typed=${({ detail }: CustomEvent<FieldText>) => this.#typedPoints(detail.value)}
      ></wr-field>
      <wr-toolbar label=${words.pointsActions}>
        <wr-button ?disabled=${points < 5} @click=${() => this.#setPoints(points - 5)}>${words.fewer}</wr-button>
        <wr-button ?disabled=${points > 995} @click=${() => this.#setPoints(points + 5)}>${words.more}</wr-button>
      </wr-toolbar>
    </div>`;
  }

  #text(label: string, hint: string, field: 'note' | 'id', value: string): unknown {
    return html`<wr-field
      label=${label}
      hint=${hint}
      .value=${value}
      @field-typed=${({ detail }: CustomEvent<FieldText>) => this.#edit({ [field]: detail.value }, field)}
    ></wr-field>`;
  }

  #typedPoints(text: string): void {
    const points = pointsFrom(text);
    this.wrongPoints = points === null ? text : null;
    if (points !== null) this.#edit({ points }, 'points');
  }

  #setPoints(points: number): void {
    this.wrongPoints = null;
    this.#edit({ points });
  }

  #edit(change: Fields, doing = ''): void {
    emit<LineEdited>(this, 'line-edited', { change, doing });
  }
}

/** Whether a number of any form moves apart from the others. */
function movesApart({ pattern, or }: LineReading): boolean {
  return [pattern, ...or].flat().some(({ tile }) => tile.is === 'number' && tile.movement === 'second');
}

customElements.define('wr-line-settings', WrLineSettings);
