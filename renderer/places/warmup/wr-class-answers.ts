import { css, html, LitElement, nothing } from 'lit';
import { formatTiles, parseTiles } from '../../../core/tiles/text.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';
import { addAnswer, type SheetProblem, spreadOf } from '../../../core/warmup/sheet.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { judgedPasses } from '../../print/judged-passes.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { percent, points } from '../../words/numbers.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { AnswerView } from '../../worker/warm-up-calls.ts';
import { kindsOf, tileRow } from './tile-row.ts';
import { warmUpStyles } from './warm-up-styles.ts';

const words = warmUpWords.sheets;
const MOST_PEOPLE = 1000;

/** What the people of a class chose for one problem, entered pass by pass, beside what the engine found. */
export class WrClassAnswers extends LitElement {
  static override properties = {
    answer: { attribute: false },
    problem: { attribute: false },
    give: { state: true },
    people: { state: true },
    refusal: { state: true },
  };

  /** Null until it has been worked out. */
  declare answer: AnswerView | null;
  declare problem: SheetProblem;
  declare give: string;
  declare people: number;
  declare refusal: string;

  static override styles = [
    sharedStyles,
    warmUpStyles,
    css`
      .give {
        flex: 1 1 12rem;
        max-width: 20rem;
      }

      .people {
        width: 6rem;
      }
    `,
  ];

  constructor() {
    super();
    this.answer = null;
    this.give = '';
    this.people = 1;
    this.refusal = '';
  }

  protected override render(): unknown {
    return html`<div class="stack">
      <div class="row fields" @keydown=${this.#onKey}>
        <wr-field
          class="give"
          label=${words.classTiles}
          .value=${this.give}
          .error=${this.refusal}
          @field-typed=${this.#giveTyped}
        ></wr-field>
        <wr-field
          class="people"
          label=${words.classPeople}
          type="number"
          .value=${String(this.people)}
          @field-typed=${this.#peopleTyped}
        ></wr-field>
        <wr-button @click=${this.#add}>${words.classAdd}</wr-button>
      </div>
      ${this.answer === null ? html`<p role="status">${words.answering}</p>` : this.#spread(this.answer)}
    </div>`;
  }

  #spread(answer: AnswerView): unknown {
    const spread = spreadOf(this.problem.answers, judgedPasses(answer));
    return html`${spread.people === 0 ? nothing : html`<p>${words.classRight(spread.right.hits, spread.people)}</p>`}
      <div class="scroll" tabindex="0" role="group" aria-label=${words.classTitle}>
        <table>
          <thead>
            <tr>
              <th scope="col">${words.pass}</th>
              <th scope="col" class="number">${words.people}</th>
              <th scope="col">${words.verdict}</th>
              <th></th>
            </tr>
          </thead>
          <tbody>
            ${spread.rows.map(({ give, people, share, verdict, cost }) => {
              const kinds = kindsOf(give);
              return html`<tr>
                <td>${tileRow(kinds)}</td>
                <td class="number">${people === 0 ? words.notChosen : `${people} (${percent(share)})`}</td>
                <td>${warmUpWords.verdicts[verdict]}${cost > 0 ? `: ${points(cost)}` : ''}</td>
                <td>
                  ${
                    people === 0
                      ? nothing
                      : html`<wr-button
                          look="quiet"
                          label=${words.classTake(kinds.map(nameOf).join(', '))}
                          @click=${() => this.#change(give, -1)}
                          >${words.classTakeShort}</wr-button
                        >`
                  }
                </td>
              </tr>`;
            })}
          </tbody>
        </table>
      </div>`;
  }

  #giveTyped({ detail }: CustomEvent<FieldText>): void {
    this.give = detail.value;
  }

  #peopleTyped({ detail }: CustomEvent<FieldText>): void {
    const people = Math.round(Number(detail.value)) || 1;
    this.people = Math.max(1, Math.min(MOST_PEOPLE, people));
  }

  #onKey(event: KeyboardEvent): void {
    if (event.key === 'Enter' && !(event.target instanceof HTMLElement && event.target.localName === 'wr-button'))
      this.#add();
  }

  #add(): void {
    const tiles = parseTiles(this.give);
    if (!tiles.ok) {
      this.refusal = tiles.problem.message;
      return;
    }
    const known = this.answer === null || this.answer.options.some(({ give }) => Tiles.of(give).equals(tiles.value));
    this.refusal = known ? '' : words.classWrong;
    if (!known) return;
    this.#change(formatTiles(tiles.value), this.people);
    this.give = '';
    this.people = 1;
  }

  #change(give: string, people: number): void {
    emit<SheetProblem>(this, 'class-changed', addAnswer(this.problem, Tiles.of(kindsOf(give)), give, people));
  }
}

customElements.define('wr-class-answers', WrClassAnswers);

declare global {
  interface HTMLElementTagNameMap {
    'wr-class-answers': WrClassAnswers;
  }
}
