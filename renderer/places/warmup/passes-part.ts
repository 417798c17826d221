import { html, nothing } from 'lit';
import { isRight } from '../../../core/review/decision.ts';
import type { Ahead, AheadRow } from '../../../core/review/ahead.ts';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { howCounted } from '../../parts/how-counted.ts';
import { countedWords } from '../../words/counted.ts';
import { differenceAlone } from '../../words/numbers.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { AnswerDocument, JudgedDocument } from '../../../core/engine/practice-questions.ts';
import { type AnswerSoFar, endCell, isSamePass, passTiles } from './verdict-part.ts';

const words = warmUpWords.answer;
const SHOWN_PASSES = 5;

/** Other passes that are as good as the best: those looked at to the end, and how many are for now. */
export function asGoodPart({ answer, ahead, working }: AnswerSoFar): unknown {
  return html`<section>
    <h3>${words.asGood}</h3>
    ${ahead === null && working !== null ? html`<p>${words.waiting}</p>` : asGood(answer, ahead)}
  </section>`;
}

function asGood(answer: AnswerDocument, ahead: Ahead | null): unknown {
  const now = answer.asGood.length;
  const others = ahead === null ? [] : tiesOf(answer, ahead);
  const none = ahead === null ? '' : words.asGoodNone;
  return html`${
      others.length === 0
        ? html`<p>${none}</p>`
        : html`<ul class="row">
            ${others.map((option) => html`<li>${passTiles(option)}</li>`)}
          </ul>`
    }
    <p class="soft">${words.asGoodNow(now)}</p>`;
}

/** Passes that were as good as the best in the end, without the best itself and the chosen one. */
function tiesOf({ options }: AnswerDocument, { rows, best, chosen }: Ahead): JudgedDocument[] {
  const ties = rows.filter((row) => row !== best && row !== chosen && isRight(row.verdict));
  return ties.flatMap((row) => options.find(({ kinds }) => gives(row, kinds)) ?? []);
}

/** The best passes by the exact cost for now, with the cost in the end of those looked at so far. */
export function planPart({ answer: { options, chosen }, ahead, working }: AnswerSoFar): unknown {
  const first = options.slice(0, SHOWN_PASSES);
  const shown = chosen === null || first.includes(chosen) ? first : [...first, chosen];
  const waits = ahead === null && working !== null;
  const end = (kinds: readonly Kind[]): string => {
    if (waits) return words.waiting;
    const row = ahead?.rows.find((each) => gives(each, kinds));
    return row === undefined ? '–' : endCell(row);
  };
  return html`<section>
    <h3>${words.plan}</h3>
    ${howCounted(countedWords.passes)}
    <div class="fold">
      <table>
        <thead>
          <tr>
            <th scope="col">${words.passHead}</th>
            <th scope="col" class="figure">${words.endHead}</th>
            <th scope="col" class="figure">${words.nowHead}</th>
          </tr>
        </thead>
        <tbody>
          ${shown.map(
            (option) =>
              html`<tr>
                <td>${passTiles(option)} ${option === chosen ? html`<strong>${words.own}</strong>` : nothing}</td>
                <td class="figure" data-name=${words.endHead}>${end(option.kinds)}</td>
                <td class="figure" data-name=${words.nowHead}>
                  ${option.cost === 0 ? words.best : differenceAlone(option.cost)}
                </td>
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
    <p class="soft">${words.lookedAt}</p>
  </section>`;
}

function gives({ choice }: AheadRow, kinds: readonly Kind[]): boolean {
  return choice.type === 'give' && isSamePass(choice.tiles, kinds);
}
