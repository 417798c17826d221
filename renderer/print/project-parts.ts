import { html, nothing } from 'lit';
import { kindsOf } from '../../core/tiles/text.ts';
import { peopleOf } from '../../core/warmup/class-answers.ts';
import type { Sheet, SheetProblem } from '../../core/warmup/sheet.ts';
import { tileRow } from '../parts/tile/tile-row.ts';
import '../parts/wr-hand.ts';
import { classWords } from '../words/class.ts';
import { type Counted, countedWords } from '../words/counted.ts';
import { answerWords, projectWords, sheetWords } from '../words/sheets.ts';
import { givenTiles, shownChoices } from './given-tiles.ts';
import { classRows, rightOf } from './class-rows.ts';
import { costWords, gradeWords, type SheetAnswer } from './judged.ts';
import { lessonOfRack, reasonsOfBest } from './lesson-words.ts';

const words = projectWords;

/** The steps of an answer, in the order in which they are revealed. */
type Step = 'reading' | 'passes' | 'why' | 'class';

/** What stands behind the figures of a step; null where it shows none. */
export const COUNTED: Readonly<Record<Step, Counted | null>> = {
  reading: countedWords.answer,
  passes: countedWords.sheetAhead,
  why: null,
  class: countedWords.spread,
};

/** The steps of a problem's answer; the class comes last, where somebody's answer is entered. */
function stepsOf(problem: SheetProblem | undefined): readonly Step[] {
  const own = ['reading', 'passes', 'why'] as const;
  return (problem?.answers.length ?? 0) > 0 ? [...own, 'class'] : own;
}

/** A step of an answer, drawn. */
export function answerStep(step: Step, problem: SheetProblem, found: SheetAnswer): unknown {
  return html`<h2>${words[step]}</h2>
    ${{ reading, passes, why, class: chosen }[step](found, problem)}`;
}

/** What the rack leans to, and its best hand as far as it is there. */
function reading(found: SheetAnswer): unknown {
  const [best] = found.answer.reading.hands;
  return html`${lessonOfRack(found).map((sentence) => html`<p>${sentence}</p>`)}
  ${
    best === undefined
      ? nothing
      : html`<p><strong>${best.name}</strong></p>
          <wr-hand label=${best.name} .groups=${best.places}></wr-hand>`
  }`;
}

/** The best pass, those as good and one that costs more, each on a row of its own. */
function passes(found: SheetAnswer): unknown {
  const { choices, left } = shownChoices(found);
  return html`<div class="choices">
      ${choices.map(
        (choice, rank) =>
          html`<div class="choice">
            <strong>${gradeWords(choice.verdict, rank)}</strong> ${givenTiles(choice)}
            <span>${costWords(choice)}</span>
          </div>`,
      )}
    </div>
    ${left > 0 ? html`<p>${answerWords.more(left)}</p>` : nothing}`;
}

function why(found: SheetAnswer): unknown {
  return reasonsOfBest(found).map((reason) => html`<p>${reason}</p>`);
}

/** What the class chose, beside what it costs. */
function chosen(found: SheetAnswer, problem: SheetProblem): unknown {
  const rows = classRows(problem, found).filter(({ people }) => people > 0);
  return html`<p>${sheetWords.classRight(rightOf(rows), peopleOf(problem.answers))}</p>
    <div class="choices">
      ${rows.map(
        ({ choice, people, ...row }) =>
          html`<div class="choice">
            <strong>${people}</strong>
            ${choice.stops === true ? classWords.spread.stopped : tileRow(kindsOf(choice.give))}
            <span>${gradeWords(row.verdict, row.verdict === 'best' ? 0 : 1)} ${costWords(row)}</span>
          </div>`,
      )}
    </div>`;
}

/** Where a sheet on a screen is: the problem, and how many steps of its answer are revealed. Both from 0. */
export interface ProjectAt {
  readonly place: number;
  readonly step: number;
}

/** The step of the answer that is shown; null as long as the question is. */
export function stepAt({ problems }: Sheet, { place, step }: ProjectAt): Step | null {
  return stepsOf(problems[place])[step - 1] ?? null;
}

export function isAtEnd(sheet: Sheet, { place, step }: ProjectAt): boolean {
  return place >= sheet.problems.length - 1 && step === stepsOf(sheet.problems[place]).length;
}

/** One step on or back, over the problems' ends; at the ends of the sheet nothing changes. */
export function movedBy(sheet: Sheet, at: ProjectAt, by: 1 | -1): ProjectAt {
  const step = at.step + by;
  if (step >= 0 && step <= stepsOf(sheet.problems[at.place]).length) return { ...at, step };
  const place = at.place + by;
  if (place < 0 || place >= sheet.problems.length) return at;
  return { place, step: by === 1 ? 0 : stepsOf(sheet.problems[place]).length };
}
