import { css, html, nothing } from 'lit';
import {
  addAnswer,
  peopleWith,
  readClassPass,
  readPeople,
  type SheetProblem,
  spreadOf,
  type SpreadRow,
} from '../../../core/warmup/sheet.ts';
import { formatTiles, kindsOf } from '../../../core/tiles/text.ts';
import { tileNames } from '../../../core/tiles/names.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';
import { data, element, state } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { type SheetAnswer, judgedPasses } from '../../print/judged.ts';
import { howCounted } from '../../parts/how-counted.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { countedWords } from '../../words/counted.ts';
import { differenceAlone, percent } from '../../words/numbers.ts';
import { warmUpWords } from '../../words/warmup.ts';
import { tileRow } from '../../parts/tile/tile-row.ts';
import { warmUpStyles } from './warm-up-styles.ts';

const words = warmUpWords.sheets;

const Base = element({
  /** Null until it has been worked out. */
  answer: data<SheetAnswer | null>(null),
  /** The part of the sheet's answers that is worked out; null when none is being worked out. */
  progress: data<number | null>(null),
  problem: data<SheetProblem>(),
  give: state(''),
  people: state('1'),
  refusal: state(''),
  peopleRefusal: state(''),
});

/** What the people of a class chose for one problem, entered pass by pass, beside what the engine found. */
export class WrClassAnswers extends Base {
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

      /* As high as the head of the table and its first row. */
      .awaited {
        min-height: 5.2rem;
      }
    `,
  ];

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
          .value=${this.people}
          .error=${this.peopleRefusal}
          @field-typed=${this.#peopleTyped}
        ></wr-field>
        <wr-button @click=${this.#add}>${words.classAdd}</wr-button>
      </div>
      ${howCounted(countedWords.spread)}
      ${this.answer === null ? html`<div class="awaited"></div>` : this.#spread(this.answer)}
    </div>`;
  }

  #spread(answer: SheetAnswer): unknown {
    const spread = spreadOf(this.problem.answers, judgedPasses(answer));
    const waits = this.progress !== null && spread.rows.some(({ halfWidth }) => halfWidth === null);
    const right = waits ? words.answering : words.classRight(spread.right.hits, spread.people);
    return html`${spread.people === 0 ? nothing : html`<p>${right}</p>`}
      <div class="fold">
        <table>
          <thead>
            <tr>
              <th scope="col">${words.pass}</th>
              <th scope="col" class="figure">${words.people}</th>
              <th scope="col">${words.verdict}</th>
              <th scope="col" class="figure">${words.inTheEnd}</th>
              <th scope="col" class="figure">${words.forNow}</th>
              <th></th>
            </tr>
          </thead>
          <tbody>
            ${spread.rows.map((row) => {
              const { give, people, share } = row;
              const kinds = kindsOf(give);
              return html`<tr>
                <td>${tileRow(kinds)}</td>
                <td class="figure" data-name=${words.people}>
                  ${people === 0 ? words.notChosen : `${people} (${percent(share)})`}
                </td>
                ${this.#verdict(row)}
                <td>
                  ${
                    people === 0
                      ? nothing
                      : html`<wr-button
                          look="quiet"
                          label=${words.classTake(tileNames(kinds))}
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

  /** The verdict and the cost in the end, or that they are awaited; then the cost for now. */
  #verdict({ verdict, cost, halfWidth, now }: SpreadRow): unknown {
    const waits = halfWidth === null && this.progress !== null;
    const size = warmUpWords.verdict(verdict, cost);
    const said = halfWidth === null ? warmUpWords.answer.nowVerdict(size) : size;
    const end = halfWidth === null ? '–' : endText(cost, halfWidth);
    return html`<td>${waits ? warmUpWords.answer.waiting : said}</td>
      <td class="figure" data-name=${words.inTheEnd}>${waits ? warmUpWords.answer.waiting : end}</td>
      <td class="figure" data-name=${words.forNow}>${now === 0 ? warmUpWords.answer.best : differenceAlone(now)}</td>`;
  }

  #giveTyped({ detail }: CustomEvent<FieldText>): void {
    this.give = detail.value;
    this.refusal = '';
  }

  #peopleTyped({ detail }: CustomEvent<FieldText>): void {
    this.people = detail.value;
    this.peopleRefusal = '';
  }

  #onKey(event: KeyboardEvent): void {
    if (event.key === 'Enter' && !(event.target instanceof HTMLElement && event.target.localName === 'wr-button'))
      this.#add();
  }

  /** An illegal entry stays as typed, with a sentence at its field. */
  #add(): void {
    const pass = readClassPass(this.problem, this.give);
    const people = readPeople(this.people, pass.ok ? peopleWith(this.problem, pass.value) : 0);
    this.refusal = pass.ok ? '' : pass.problem.message;
    this.peopleRefusal = people.ok ? '' : people.problem.message;
    if (!pass.ok || !people.ok) return;
    this.#change(formatTiles(pass.value), people.value);
    this.give = '';
    this.people = '1';
  }

  #change(give: string, people: number): void {
    emit<SheetProblem>(this, 'class-changed', addAnswer(this.problem, Tiles.of(kindsOf(give)), give, people));
  }
}

/** "2.1 ± 0.8"; the best costs nothing. */
function endText(cost: number, halfWidth: number): string {
  if (cost === 0) return warmUpWords.answer.best;
  return warmUpWords.ahead.cell(differenceAlone(cost), differenceAlone(halfWidth));
}

customElements.define('wr-class-answers', WrClassAnswers);
