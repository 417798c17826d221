import { css, html, nothing } from 'lit';
import type { Card } from '../../../core/card/card.ts';
import { readCard } from '../../../core/card/file.ts';
import { PASS_SIZE, mayBeBlind } from '../../../core/exchange/steps.ts';
import { isRight } from '../../../core/review/decision.ts';
import { peopleOf, takeAnswer } from '../../../core/warmup/class-answers.ts';
import type { Sheet, SheetProblem } from '../../../core/warmup/sheet.ts';
import { kindsOf } from '../../../core/tiles/text.ts';
import { tileNames } from '../../../core/tiles/names.ts';
import { data, element } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import { type ChoiceRow, classRows, rightOf } from '../../print/class-rows.ts';
import type { SheetAnswer } from '../../print/judged.ts';
import { howCounted } from '../../parts/how-counted.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { classWords } from '../../words/class.ts';
import { countedWords } from '../../words/counted.ts';
import { differenceAlone, percent } from '../../words/numbers.ts';
import { warmUpWords } from '../../words/warmup.ts';
import { tileRow } from '../../parts/tile/tile-row.ts';
import { aimsPart, keptPart, schoolsPart } from './class-parts.ts';
import { warmUpStyles } from './warm-up-styles.ts';
import './wr-answer-codes.ts';
import './wr-class-typed.ts';

const words = classWords.spread;

const Base = element({
  /** Null until it has been worked out. */
  answer: data<SheetAnswer | null>(null),
  /** The part of the sheet's answers that is worked out; null when none is being worked out. */
  progress: data<number | null>(null),
  problem: data<SheetProblem>(),
  /** The sheet that the problem is on: its card, and the problems that codes may answer. */
  sheet: data<Sheet>(),
});

/**
 * What the people of a class answered to one problem, side by side: what they chose, what it costs, what they aim at and
 * keep, and which two schools there are. Sends `class-changed`, and `codes-counted` for the whole sheet.
 */
export class WrClassAnswers extends Base {
  static override styles = [
    sharedStyles,
    warmUpStyles,
    css`
      .entry,
      .beside {
        display: grid;
        gap: var(--space-4) var(--space-5);
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 19rem), 1fr));
        align-items: start;
      }

      .schools {
        font-size: var(--text-lead);
      }

      /* As high as the head of the table and its first row. */
      .awaited {
        min-height: 5.2rem;
      }
    `,
  ];

  protected override render(): unknown {
    const card = cardOf(this.sheet);
    return html`<div class="stack">
      <div class="entry">
        <wr-answer-codes .card=${card} .problems=${this.sheet.problems}></wr-answer-codes>
        <wr-class-typed .card=${card} .problem=${this.problem}></wr-class-typed>
      </div>
      ${this.answer === null ? html`<div class="awaited"></div>` : this.#result(this.answer, card)}
    </div>`;
  }

  #result(answer: SheetAnswer, card: Card): unknown {
    const rows = classRows(this.problem, answer);
    return html`${schoolsPart(this.problem, card)}
      <div class="beside">${aimsPart(this.problem, card)} ${keptPart(this.problem)}</div>
      <div>
        <h3>${words.title}</h3>
        ${howCounted(countedWords.spread)}
      </div>
      <p>${this.#sentence(rows)}</p>
      <div class="fold">
        <table>
          <thead>
            <tr>
              <th scope="col">${words.pass}</th>
              <th scope="col" class="figure">${words.people}</th>
              <th scope="col" class="figure">${words.cost}</th>
              <th></th>
            </tr>
          </thead>
          <tbody>
            ${rows.map((row) => this.#row(row))}
          </tbody>
        </table>
      </div>`;
  }

  /** How many were right, once the cost of each choice is known. */
  #sentence(rows: readonly ChoiceRow[]): string {
    const people = peopleOf(this.problem.answers);
    if (people === 0) return words.none;
    const chosen = rows.filter((row) => row.people > 0);
    if (chosen.some(({ halfWidth }) => halfWidth === null)) return this.progress === null ? '' : words.waiting;
    return words.right(rightOf(chosen), people);
  }

  #row(row: ChoiceRow): unknown {
    const { choice, people } = row;
    const share = people / peopleOf(this.problem.answers);
    return html`<tr>
      <td>${this.#choice(choice)}</td>
      <td class="figure" data-name=${words.people}>${people === 0 ? words.nobody : `${people} (${percent(share)})`}</td>
      <td class="figure" data-name=${words.cost}>${this.#cost(row)}</td>
      <td>
        ${
          people === 0
            ? nothing
            : html`<wr-button
                look="quiet"
                label=${words.oneLessLabel(choice.stops === true ? words.stopped : tileNames(kindsOf(choice.give)))}
                @click=${() => emit<SheetProblem>(this, 'class-changed', takeAnswer(this.problem, choice))}
                >${words.oneLess}</wr-button
              >`
        }
      </td>
    </tr>`;
  }

  #choice({ give, stops }: ChoiceRow['choice']): unknown {
    if (stops === true) return words.stopped;
    const kinds = kindsOf(give);
    const blind = mayBeBlind(this.problem.step) ? PASS_SIZE - kinds.length : 0;
    return html`${tileRow(kinds)} ${blind === 0 ? nothing : words.blind(blind)}`;
  }

  /** What a choice costs by the end of the exchange, the one measure; a mark where that is not known yet. */
  #cost({ cost, halfWidth, verdict }: ChoiceRow): string {
    if (halfWidth === null) return this.progress === null ? words.unknown : warmUpWords.answer.waiting;
    if (verdict === 'best') return words.best;
    const size = cost === 0 ? '' : warmUpWords.ahead.cell(differenceAlone(cost), differenceAlone(halfWidth));
    return isRight(verdict) ? words.asGood(size) : size;
  }
}

const CARDS = new WeakMap<object, Card>();

/** The card of a sheet, read once; one that can't be read has nothing to aim at. */
function cardOf({ card }: Sheet): Card {
  const key = card as object;
  const known = CARDS.get(key);
  if (known !== undefined) return known;
  const read = readCard(card);
  const found = read.ok ? read.value.card : { title: '', season: '', sections: [] };
  CARDS.set(key, found);
  return found;
}

customElements.define('wr-class-answers', WrClassAnswers);
