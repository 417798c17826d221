import { css, html, nothing } from 'lit';
import type { Fields } from '../../../core/base/json.ts';
import type { LineDocument } from '../../../core/card/document.ts';
import { withForms } from '../../../core/card/edit.ts';
import { type LineReading, readLine } from '../../../core/card/line.ts';
import { formatGroup, formatPattern, type Pattern } from '../../../core/card/pattern.ts';
import {
  inSuits,
  NUMBER_MOVES,
  numberMove,
  READY_GROUPS,
  type ReadyGroup,
  readyGroup,
  suitCount,
  withMove,
} from '../../../core/card/ready.ts';
import { data, element, numeric } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-toolbar.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { cardStyles } from './card-styles.ts';

const words = cardWords.choices;

/** What `line-edited` carries: fields to change, and the field that is being typed, if one is. */
export interface LineEdited {
  readonly change: Fields;
  readonly doing: string;
}

const SUIT_COUNTS = [1, 2, 3] as const;
/** Points that most cards have (common practice); others are typed. */
const USUAL_POINTS = [25, 30, 35, 40, 45, 50, 60, 75] as const;

const Base = element({
  line: data<LineDocument>(),
  /** Tiles of a ready group that is added. */
  size: numeric(2),
});

/**
 * A line's ready choices, in the trade's words: how its numbers move, in how many suits, C or X, points, and groups
 * to add. Each sets the parts of the line. Sends `line-edited`, and `or-wanted`.
 */
export class WrLineChoices extends Base {
  static override styles = [
    sharedStyles,
    cardStyles,
    css`
      .settings {
        align-items: flex-end;
        font-size: var(--text-small);
        gap: var(--space-2) var(--space-4);
      }
    `,
  ];

  /** Puts the focus on the first choice. */
  override focus(): void {
    this.renderRoot.querySelector('wr-choice')?.shadowRoot?.querySelector<HTMLElement>('input')?.focus();
  }

  protected override render(): unknown {
    const reading = readLine(this.line);
    return html`<div class="stack close">
      <div class="row settings">${this.#moves(reading)} ${this.#exposure(reading)} ${this.#points(reading)}</div>
      <div class="row settings">${this.#suits(reading)} ${this.#groups(reading)}</div>
    </div>`;
  }

  #moves(reading: LineReading): unknown {
    return html`<wr-choice
      label=${words.moves}
      .options=${NUMBER_MOVES.map((value) => ({ value, label: words.move[value] }))}
      value=${numberMove(reading) ?? ''}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => {
        const move = NUMBER_MOVES.find((each) => each === detail.value);
        if (move === undefined) return;
        const { slide } = withMove(reading.pattern, move);
        // Of groups that can't be read yet the numbers stay as they are typed.
        if (canChange(reading)) this.#change(reading, (pattern) => withMove(pattern, move).pattern, { slide });
        else this.#edit({ slide });
      }}
    ></wr-choice>`;
  }

  #exposure({ concealed }: LineReading): unknown {
    return html`<wr-choice
      label=${words.exposure}
      .options=${[
        { value: 'x', label: words.exposed },
        { value: 'c', label: words.concealed },
      ]}
      value=${concealed ? 'c' : 'x'}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => this.#edit({ concealed: detail.value === 'c' })}
    ></wr-choice>`;
  }

  #points({ points }: LineReading): unknown {
    return html`<wr-choice
      label=${words.points}
      .options=${USUAL_POINTS.map((value) => ({ value: String(value), label: String(value) }))}
      value=${String(points)}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => this.#edit({ points: Number(detail.value) })}
    ></wr-choice>`;
  }

  #suits(reading: LineReading): unknown {
    return html`<wr-choice
      label=${words.suits}
      .options=${SUIT_COUNTS.map((count) => ({ value: String(count), label: words.inSuits[count] }))}
      value=${String(suitCount(reading.pattern) ?? '')}
      ?disabled=${!canChange(reading)}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => {
        const count = SUIT_COUNTS.find((each) => String(each) === detail.value);
        if (count !== undefined) this.#change(reading, (pattern) => inSuits(pattern, count));
      }}
    ></wr-choice>`;
  }

  #groups({ forms }: LineReading): unknown {
    return html`<wr-toolbar label=${words.add}>
      ${READY_GROUPS.map(
        (which) =>
          html`<wr-button look="quiet" ?disabled=${this.#ready(which) === null} @click=${() => this.#add(which)}
            >${words.group[which]}</wr-button
          >`,
      )}
      ${
        forms[0].text === ''
          ? nothing
          : html`<wr-button look="quiet" @click=${() => emit(this, 'or-wanted', null)}>${words.or}</wr-button>`
      }
    </wr-toolbar>`;
  }

  /** A ready group behind the last form; null where there is none. */
  #ready(which: ReadyGroup): string | null {
    const { forms } = readLine(this.line);
    const group = readyGroup((forms.at(-1) ?? forms[0]).pattern, which, this.size);
    return group === null ? null : formatGroup(group);
  }

  #add(which: ReadyGroup): void {
    const { forms } = readLine(this.line);
    const texts = forms.map(({ text }) => text);
    this.#write([...texts.slice(0, -1), `${texts.at(-1)} ${this.#ready(which) ?? ''}`.trim()]);
  }

  #change({ forms }: LineReading, changed: (pattern: Pattern) => Pattern, fields: Fields = {}): void {
    this.#write(
      forms.map(({ pattern }) => formatPattern(changed(pattern))),
      fields,
    );
  }

  #write(forms: readonly string[], fields: Fields = {}): void {
    this.#edit({ ...fields, ...withForms(forms) });
  }

  #edit(change: Fields): void {
    emit<LineEdited>(this, 'line-edited', { change, doing: '' });
  }
}

/** Whether all groups can be read, so that none is lost when the line is written anew. */
function canChange({ forms }: LineReading): boolean {
  return forms.every(({ groups }) => groups.every(({ group }) => group.ok));
}

customElements.define('wr-line-choices', WrLineChoices);
