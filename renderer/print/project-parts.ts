import { html, nothing } from 'lit';
import { isRight } from '../../core/review/decision.ts';
import { type JudgedPass, type SheetProblem, spreadOf } from '../../core/warmup/sheet.ts';
import { howCounted } from '../parts/how-counted.ts';
import '../parts/wr-hand.ts';
import '../parts/wr-lean.ts';
import { judgedWords } from './judged-words.ts';
import { countedWords } from '../words/counted.ts';
import { percent, points, pointsAlone } from '../words/numbers.ts';
import { warmUpWords } from '../words/warmup.ts';
import type { AnswerView } from '../worker/warm-up-calls.ts';
import type { SheetAnswer } from './answer-for.ts';
import { judgedPasses, optionOf } from './judged-passes.ts';
import { kindsOf, tiles } from './sheet-tiles.ts';

const words = warmUpWords.project;
const SHOWN_HANDS = 3;
const SHOWN_PASSES = 3;

/** The first step of an answer: the lean and the best hands. */
export function readingStep({ reading }: AnswerView): unknown {
  return html`<section class="step">
    <h2>${words.steps[1]}</h2>
    ${howCounted(countedWords.answer)}
    <wr-lean label=${warmUpWords.answer.lean} .shares=${reading.lean}></wr-lean>
    ${reading.byReach.slice(0, SHOWN_HANDS).map(
      ({ section, groups, away, reach }) =>
        html`<div class="row">
          <wr-hand label=${section} .groups=${groups}></wr-hand>
          <span>${section}, ${warmUpWords.print.away(away)}, ${warmUpWords.print.reach(percent(reach))}</span>
        </div>`,
    )}
  </section>`;
}

/** The second step: the passes that nothing beats, and why. */
export function passesStep(found: SheetAnswer): unknown {
  const judged = judgedPasses(found);
  const good = judged.filter(
    ({ verdict, halfWidth }) => isRight(verdict) && (found.ends === null || halfWidth !== null),
  );
  const left = good.length - SHOWN_PASSES;
  const next = found.ends?.rows[0]?.next;
  return html`<section class="step">
    <h2>${words.steps[2]}</h2>
    ${howCounted(countedWords.ahead)}
    <div class="row">
      ${good.slice(0, SHOWN_PASSES).map((pass) => passOf(pass, found))}
      ${left > 0 ? html`<span>${warmUpWords.answer.asGoodMore(left)}</span>` : nothing}
    </div>
    ${
      next === undefined
        ? nothing
        : html`<p>${warmUpWords.print.lead(warmUpWords.within(points(next.loss), pointsAlone(next.halfWidth)))}</p>`
    }
    ${(optionOf(judged[0]?.give, found.answer)?.reasons ?? []).map((reason) => html`<p>${reason}</p>`)}
  </section>`;
}

/** The last step: what the class chose, beside the verdicts. */
export function classStep({ answers }: SheetProblem, found: SheetAnswer): unknown {
  const { rows, right, people } = spreadOf(answers, judgedPasses(found));
  return html`<section class="step">
    <h2>${words.steps[3]}</h2>
    ${howCounted(countedWords.spread)}
    <p>${warmUpWords.sheets.classRight(right.hits, people)}</p>
    ${rows
      .filter((row) => row.people > 0)
      .map(
        (row) =>
          html`<div class="row">
            <strong>${row.people}</strong> ${tiles(kindsOf(row.give), 'small')} <span>${judgedWords(row)}</span>
          </div>`,
      )}
  </section>`;
}

function passOf({ give }: JudgedPass, found: SheetAnswer): unknown {
  const blind = optionOf(give, found.answer)?.blind ?? 0;
  return html`<span>${tiles(kindsOf(give), 'small')} ${blind === 0 ? '' : warmUpWords.answer.blindNote(blind)}</span>`;
}
