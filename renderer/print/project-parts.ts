import { html, nothing } from 'lit';
import { isRight } from '../../core/warmup/history.ts';
import { type SheetProblem, spreadOf } from '../../core/warmup/sheet.ts';
import '../parts/wr-hand.ts';
import '../parts/wr-lean.ts';
import { percent, points } from '../words/numbers.ts';
import { warmUpWords } from '../words/warmup.ts';
import type { AnswerView, JudgedView } from '../worker/warm-up-calls.ts';
import { judgedPasses } from './judged-passes.ts';
import { kindsOf, tiles } from './sheet-tiles.ts';

const words = warmUpWords.project;
const SHOWN_HANDS = 3;
const SHOWN_PASSES = 3;

/** The first step of an answer: the lean and the best hands. */
export function readingStep({ reading }: AnswerView): unknown {
  return html`<section class="step">
    <h2>${words.steps[1]}</h2>
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
export function passesStep({ options }: AnswerView): unknown {
  const good = options.filter(({ verdict }) => isRight(verdict));
  const left = good.length - SHOWN_PASSES;
  return html`<section class="step">
    <h2>${words.steps[2]}</h2>
    <div class="row">
      ${good.slice(0, SHOWN_PASSES).map(passOf)}
      ${left > 0 ? html`<span>${warmUpWords.answer.asGoodMore(left)}</span>` : nothing}
    </div>
    ${(options[0]?.reasons ?? []).map((reason) => html`<p>${reason}</p>`)}
  </section>`;
}

/** The last step: what the class chose, beside the verdicts. */
export function classStep({ answers }: SheetProblem, answer: AnswerView): unknown {
  const { rows, right, people } = spreadOf(answers, judgedPasses(answer));
  return html`<section class="step">
    <h2>${words.steps[3]}</h2>
    <p>${warmUpWords.sheets.classRight(right.hits, people)}</p>
    ${rows
      .filter((row) => row.people > 0)
      .map(
        ({ give, people: chose, verdict, cost }) =>
          html`<div class="row">
            <strong>${chose}</strong> ${tiles(kindsOf(give), 'small')}
            <span>${warmUpWords.verdicts[verdict]}${cost > 0 ? `: ${points(cost)}` : ''}</span>
          </div>`,
      )}
  </section>`;
}

function passOf({ give, blind }: JudgedView): unknown {
  return html`<span>${tiles(give, 'small')} ${blind === 0 ? '' : warmUpWords.answer.blindNote(blind)}</span>`;
}
