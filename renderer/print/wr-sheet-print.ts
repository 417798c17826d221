import { html, nothing } from 'lit';
import type { HandDocument } from '../../core/engine/documents.ts';
import type { AnswerDocument } from '../../core/engine/practice-questions.ts';
import { isRight } from '../../core/review/decision.ts';
import { formatTileList, kindsOf } from '../../core/tiles/text.ts';
import { type JudgedPass, type Sheet, type SheetProblem, spreadOf } from '../../core/warmup/sheet.ts';
import { data, element } from '../parts/element.ts';
import { tileRow } from '../parts/tile/tile-row.ts';
import { WrTile } from '../parts/tile/wr-tile.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { differenceAlone, differenceInGames, percent } from '../words/numbers.ts';
import { sheetPrintWords, sheetWords } from '../words/sheets.ts';
import { warmUpWords } from '../words/warmup.ts';
import { type AnswerFor, judgedPasses, judgedWords, nowWords, optionOf, type SheetAnswer } from './judged.ts';
import { sheetPrintStyles } from './sheet-print-styles.ts';

const words = sheetPrintWords;
const SHOWN_EQUALS = 3;
const SHOWN_HANDS = 2;
const SHOWN_SECTIONS = 3;
/** Lines to write on, beside the one for the pass. */
const LINES = [1, 2];

const Base = element({
  sheet: data<Sheet>(),
  answerFor: data<AnswerFor>(),
});

/** A sheet as it is printed: every problem with room to write, then the answers on pages apart. */
export class WrSheetPrint extends Base {
  static override styles = [sharedStyles, sheetPrintStyles];

  /** Resolves once all tiles are drawn. */
  async drawn(): Promise<void> {
    await this.updateComplete;
    const tiles = [...this.renderRoot.querySelectorAll('wr-tile')].filter((tile) => tile instanceof WrTile);
    await Promise.all(tiles.map((tile) => tile.updateComplete));
    await new Promise((resume) => requestAnimationFrame(resume));
  }

  protected override render(): unknown {
    const { title, problems } = this.sheet;
    return html`<main>
        <h1>${title}</h1>
        ${problems.map((problem, place) => this.#problem(problem, place))}
      </main>
      <section class="answers">
        <h1>${words.answers(title)}</h1>
        <p>${words.model}</p>
        ${problems.map((problem, place) => this.#answer(problem, place))}
      </section>`;
  }

  #problem(problem: SheetProblem, place: number): unknown {
    return html`<section class="problem">
      ${head(problem, place)} ${tileRow(kindsOf(problem.rack))}
      ${problem.gone === '' ? nothing : html`<p class="gone">${warmUpWords.run.gone}: ${tileRow(kindsOf(problem.gone))}</p>`}
      <p>${problem.question}</p>
      ${problem.remark === '' ? nothing : html`<p class="remark">${problem.remark}</p>`}
      <div class="write" role="group" aria-label=${words.room}>
        <span class="label">${words.give}</span><span class="line"></span> <span class="label">${words.why}</span
        ><span class="line"></span>
        ${LINES.map(() => html`<span class="line whole"></span>`)}
      </div>
    </section>`;
  }

  #answer(problem: SheetProblem, place: number): unknown {
    const found = this.answerFor(problem);
    if (found === null) return nothing;
    const { answer } = found;
    const [best, ...others] = judgedPasses(found);
    const equals = others.filter(
      ({ verdict, halfWidth }) => isRight(verdict) && (found.ends === null || halfWidth !== null),
    );
    return html`<section class="answer">
      ${head(problem, place)}
      <p>${formatTileList(kindsOf(problem.rack))}</p>
      <dl>
        ${
          best === undefined
            ? nothing
            : html`<dt>${words.best}</dt>
                <dd>
                  ${pass(best, answer)} ${lead(found)}
                  <p>${reasonsOf(best, answer).join(' ')}</p>
                </dd>`
        }
        ${
          equals.length === 0
            ? nothing
            : html`<dt>${words.asGood}</dt>
                <dd>${equals.slice(0, SHOWN_EQUALS).map((each) => costed(each, answer))} ${more(equals)}</dd>`
        }
        <dt>${words.lean}</dt>
        <dd>${lean(answer)}</dd>
        <dt>${words.hands}</dt>
        <dd>${answer.reading.hands.slice(0, SHOWN_HANDS).map(hand)}</dd>
        ${this.#class(problem, found)}
      </dl>
    </section>`;
  }

  #class({ answers }: SheetProblem, found: SheetAnswer): unknown {
    const spread = spreadOf(answers, judgedPasses(found));
    if (spread.people === 0) return nothing;
    const rows = spread.rows.filter(({ people }) => people > 0);
    return html`<dt>${words.class}</dt>
      <dd>
        ${rows.map(
          (row) =>
            html`<p class="chose">
              <strong>${row.people}</strong> ${tileRow(kindsOf(row.give))}
              <span>${judgedWords(row)} (${nowWords(row.now)})</span>
            </p>`,
        )}
      </dd>`;
  }
}

function head({ seat, step, code }: SheetProblem, place: number): unknown {
  return html`<div class="head">
    <h2>${sheetWords.problem(place + 1)}</h2>
    <span>${words.seat(seat, warmUpWords.steps[step])}</span>
    ${code === undefined ? nothing : html`<span>${words.code(code)}</span>`}
  </div>`;
}

function pass({ give }: JudgedPass, answer: AnswerDocument): unknown {
  const blind = optionOf(give, answer)?.blind ?? 0;
  return html`<span class="group"
    >${tileRow(kindsOf(give))} ${blind === 0 ? '' : warmUpWords.answer.blindNote(blind)}</span
  > `;
}

/** A pass that is as good, with how far it is behind. */
function costed(judged: JudgedPass, answer: AnswerDocument): unknown {
  const { cost, halfWidth } = judged;
  const behind =
    cost === 0 || halfWidth === null
      ? ''
      : words.behind(warmUpWords.within(differenceInGames(cost), differenceAlone(halfWidth)));
  return html`<p class="costed">${pass(judged, answer)} <span>${behind}</span></p>`;
}

/** How sure the best pass is the best: how far the next choice is behind. */
function lead({ ends }: SheetAnswer): unknown {
  const next = ends?.rows[0]?.next;
  if (next === undefined) return nothing;
  return html`<p>${words.lead(warmUpWords.within(differenceInGames(next.loss), differenceAlone(next.halfWidth)))}</p>`;
}

function reasonsOf({ give }: JudgedPass, answer: AnswerDocument): readonly string[] {
  return optionOf(give, answer)?.reasons ?? [];
}

function more(equals: readonly JudgedPass[]): unknown {
  const left = equals.length - SHOWN_EQUALS;
  return left > 0 ? html`<span class="group">${warmUpWords.answer.asGoodMore(left)}</span>` : nothing;
}

function lean({ reading }: AnswerDocument): string {
  return reading.lean
    .slice(0, SHOWN_SECTIONS)
    .map(({ section, share }) => `${section} ${whole(percent(share))}`)
    .join(', ');
}

function hand({ section, places, away, reach }: HandDocument): unknown {
  const text = places.map((group) => formatTileList(group.map(({ kind }) => kind))).join(' ');
  return html`<p>${section}: ${text}, ${words.away(away)}, ${words.reach(whole(percent(reach)))}</p>`;
}

/** A number and its unit on one line. */
function whole(text: string): string {
  return text.replaceAll(' ', '\u00a0');
}

customElements.define('wr-sheet-print', WrSheetPrint);

declare global {
  interface HTMLElementTagNameMap {
    'wr-sheet-print': WrSheetPrint;
  }
}
