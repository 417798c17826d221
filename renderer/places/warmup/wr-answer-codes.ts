import { css, html, nothing } from 'lit';
import type { AnswerCard } from '../../../core/warmup/answer-room.ts';
import { countCodes, type CountedCodes, type RepeatedCode, withAnswer } from '../../../core/warmup/class-codes.ts';
import type { SheetProblem } from '../../../core/warmup/sheet.ts';
import { data, element, state } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { classWords } from '../../words/class.ts';
import { warmUpStyles } from './warm-up-styles.ts';

const words = classWords.codes;

/** What `codes-counted` carries: all problems of the sheet, with the answers that came. */
export interface CodesCounted {
  readonly problems: readonly SheetProblem[];
}

const Base = element({
  card: data<AnswerCard>(),
  /** Every problem of the sheet. */
  problems: data<readonly SheetProblem[]>(),
  text: state(''),
  refusal: state(''),
  read: state<CountedCodes | null>(null),
});

/**
 * Answer codes of a class, pasted many at once: the good ones are counted, the others stay in the field, each with a
 * sentence; one that came twice is asked about. Sends `codes-counted`.
 */
export class WrAnswerCodes extends Base {
  static override styles = [
    sharedStyles,
    warmUpStyles,
    css`
      .code {
        font-family: var(--font-code);
        overflow-wrap: anywhere;
      }

      li {
        padding-block: var(--space-2);
        border-top: 1px solid var(--hairline);
      }
    `,
  ];

  protected override render(): unknown {
    return html`<div class="stack">
      <h3>${words.title}</h3>
      <wr-field
        label=${words.field}
        hint=${words.hint}
        .lines=${4}
        .value=${this.text}
        .error=${this.refusal}
        @field-typed=${this.#typed}
      ></wr-field>
      <div class="row"><wr-button @click=${this.#count}>${words.count}</wr-button></div>
      <p role="status">${this.read === null ? '' : countedSentence(this.read)}</p>
      ${this.read === null ? nothing : html`${this.#refused(this.read)} ${this.#repeated(this.read)}`}
    </div>`;
  }

  #refused({ refused }: CountedCodes): unknown {
    if (refused.length === 0) return nothing;
    return html`<div>
      <p><strong>${words.refusedTitle(refused.length)}</strong></p>
      <ul>
        ${refused.map(
          ({ text, message }) =>
            html`<li>
              <p class="code">${text}</p>
              <p class="bad">${message}</p>
            </li>`,
        )}
      </ul>
      <p class="soft">${words.correct}</p>
    </div>`;
  }

  #repeated({ repeated }: CountedCodes): unknown {
    if (repeated.length === 0) return nothing;
    return html`<div>
      <p>${words.repeated}</p>
      ${
        repeated.length < 2
          ? nothing
          : html`<div class="row">
              <wr-button @click=${this.#countAll}>${words.countAll(repeated.length)}</wr-button>
            </div>`
      }
      <ul>
        ${repeated.map(
          (each) =>
            html`<li class="row">
              <span class="code">${each.text}</span>
              <wr-button label=${words.againLabel(each.text)} @click=${() => this.#again(each)}
                >${words.again}</wr-button
              >
              <wr-button look="quiet" label=${words.leaveLabel(each.text)} @click=${() => this.#leave(each)}
                >${words.leave}</wr-button
              >
            </li>`,
        )}
      </ul>
    </div>`;
  }

  #typed({ detail }: CustomEvent<FieldText>): void {
    this.text = detail.value;
    this.refusal = '';
  }

  #count(): void {
    if (this.text.trim() === '') {
      this.refusal = words.none;
      return;
    }
    const read = countCodes(this.text, this.problems, this.card);
    this.#keep(read);
    this.text = read.refused.map(({ text }) => text).join('\n');
  }

  #again(code: RepeatedCode): void {
    if (this.read === null) return;
    this.#keep(withAnswer({ ...this.read, problems: this.problems }, code));
    this.#leave(code);
  }

  /** Those who think alike send the same code. */
  #countAll(): void {
    if (this.read === null) return;
    const { repeated } = this.read;
    const all = repeated.reduce((sum, code) => withAnswer(sum, code), { ...this.read, problems: this.problems });
    this.#keep({ ...all, repeated: [] });
  }

  #leave(code: RepeatedCode): void {
    if (this.read === null) return;
    this.read = { ...this.read, repeated: this.read.repeated.filter((each) => each !== code) };
  }

  #keep(read: CountedCodes): void {
    this.read = read;
    if (read.problems !== this.problems) emit<CodesCounted>(this, 'codes-counted', { problems: read.problems });
  }
}

/** "9 answers are counted: 7 at problem 1, 2 at problem 3." */
function countedSentence({ counted }: CountedCodes): string {
  const answers = counted.reduce((sum, each) => sum + each, 0);
  if (answers === 0) return words.nothing;
  const places = counted.flatMap((people, place) => (people === 0 ? [] : [words.at(people, place + 1)]));
  return words.counted(answers, `: ${places.join(', ')}`);
}

customElements.define('wr-answer-codes', WrAnswerCodes);
