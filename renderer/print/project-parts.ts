import { html, nothing } from 'lit';
import type { AnswerDocument } from '../../core/engine/practice-questions.ts';
import { isRight } from '../../core/review/decision.ts';
import { kindsOf } from '../../core/tiles/text.ts';
import { type JudgedPass, type Sheet, type SheetProblem, spreadOf } from '../../core/warmup/sheet.ts';
import { howCounted } from '../parts/how-counted.ts';
import { tileRow } from '../parts/tile/tile-row.ts';
import '../parts/wr-hand.ts';
import '../parts/wr-lean.ts';
import { countedWords } from '../words/counted.ts';
import { differenceAlone, differenceInGames, percent } from '../words/numbers.ts';
import { projectWords, sheetPrintWords, sheetWords } from '../words/sheets.ts';
import { warmUpWords } from '../words/warmup.ts';
import { judgedPasses, judgedWords, optionOf, type SheetAnswer } from './judged.ts';

const words = projectWords;
const SHOWN_HANDS = 3;
const SHOWN_PASSES = 3;

/** The first step of an answer: the lean and the best hands. */
export function readingStep({ reading }: AnswerDocument): unknown {
  return html`<section class="step">
    <h2>${words.steps[1]}</h2>
    ${howCounted(countedWords.answer)}
    <wr-lean label=${warmUpWords.answer.lean} .shares=${reading.lean}></wr-lean>
    ${reading.hands.slice(0, SHOWN_HANDS).map(
      ({ section, places, away, reach }) =>
        html`<div class="row">
          <wr-hand label=${section} .groups=${places}></wr-hand>
          <span>${section}, ${sheetPrintWords.away(away)}, ${sheetPrintWords.reach(percent(reach))}</span>
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
    ${howCounted(countedWords.sheetAhead)}
    <div class="row">
      ${good.slice(0, SHOWN_PASSES).map((pass) => passOf(pass, found))}
      ${left > 0 ? html`<span>${warmUpWords.answer.asGoodMore(left)}</span>` : nothing}
    </div>
    ${
      next === undefined
        ? nothing
        : html`<p>
            ${sheetPrintWords.lead(warmUpWords.within(differenceInGames(next.loss), differenceAlone(next.halfWidth)))}
          </p>`
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
    <p>${sheetWords.classRight(right.hits, people)}</p>
    ${rows
      .filter((row) => row.people > 0)
      .map(
        (row) =>
          html`<div class="row">
            <strong>${row.people}</strong> ${tileRow(kindsOf(row.give), { size: 'small' })}
            <span>${judgedWords(row)}</span>
          </div>`,
      )}
  </section>`;
}

function passOf({ give }: JudgedPass, found: SheetAnswer): unknown {
  const blind = optionOf(give, found.answer)?.blind ?? 0;
  return html`<span
    >${tileRow(kindsOf(give), { size: 'small' })} ${blind === 0 ? '' : warmUpWords.answer.blindNote(blind)}</span
  >`;
}

/** Where a sheet on a screen is: the problem, and how many steps of its answer are revealed. Both from 0. */
export interface ProjectAt {
  readonly place: number;
  readonly step: number;
}

/** The rack, the reading, the best pass; then the class, where somebody's answer is entered. */
function lastStep({ problems }: Sheet, place: number): number {
  return (problems[place]?.answers.length ?? 0) > 0 ? 3 : 2;
}

export function isAtEnd(sheet: Sheet, { place, step }: ProjectAt): boolean {
  return place >= sheet.problems.length - 1 && step === lastStep(sheet, place);
}

/** One step on or back, over the problems' ends; at the ends of the sheet nothing changes. */
export function movedBy(sheet: Sheet, at: ProjectAt, by: 1 | -1): ProjectAt {
  const step = at.step + by;
  if (step >= 0 && step <= lastStep(sheet, at.place)) return { ...at, step };
  const place = at.place + by;
  if (place < 0 || place >= sheet.problems.length) return at;
  return { place, step: by === 1 ? 0 : lastStep(sheet, place) };
}
