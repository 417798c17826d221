import { html, nothing } from 'lit';
import { readCard } from '../../core/card/file.ts';
import { kindsOf } from '../../core/tiles/text.ts';
import type { Paper, Sheet, SheetProblem } from '../../core/warmup/sheet.ts';
import type { Preferences } from '../../main/desk/desk.ts';
import { data, element, reflected, state, text } from '../parts/element.ts';
import { tileRow } from '../parts/tile/tile-row.ts';
import { WrTile } from '../parts/tile/wr-tile.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { classWords } from '../words/class.ts';
import { answerWords, sheetPrintWords, sheetWords, turnWords } from '../words/sheets.ts';
import { givenTiles, shownChoices } from './given-tiles.ts';
import { classRows } from './class-rows.ts';
import { type AnswerFor, costInShort, gradeWords, type SheetAnswer } from './judged.ts';
import { lessonOfRack, reasonsOfBest } from './lesson-words.ts';
import { sheetPrintStyles } from './sheet-print-styles.ts';
import { spreadOverPages } from './spread-pages.ts';

const words = sheetPrintWords;
const MOST_ON_A_PAGE = 4;
/** Lines over the whole width, beside the one for the pass and the one for the reason. */
const LEAST_LINES = 1;
const MOST_LINES = 7;

/** What of a sheet is printed. */
export type SheetParts = Preferences['sheetParts'];

/** The problems or the answers, and which of them stand on each page. */
interface Part {
  readonly of: 'questions' | 'answers';
  readonly pages: readonly Page[];
}

interface Page {
  readonly places: readonly number[];
  /** Lines to write on, for each problem. */
  readonly lines: number;
}

const Base = element({
  sheet: data<Sheet>(),
  answerFor: data<AnswerFor>(),
  parts: data<SheetParts>('both'),
  paper: reflected(text<Paper>('a4')),
  /** Null as long as it is measured. */
  laidOut: state<readonly Part[] | null>(null),
});

/** A sheet as it is printed: every problem with room to write, then the answers, on pages that are numbered apart. */
export class WrSheetPrint extends Base {
  static override styles = [sharedStyles, sheetPrintStyles];

  /** Resolves once the pages are laid out and all tiles are drawn. */
  async drawn(): Promise<void> {
    await this.updateComplete;
    await this.#tilesDrawn();
    this.laidOut = this.#chosen.map((of) => ({ of, pages: this.#spread(of) }));
    await this.updateComplete;
    await this.#tilesDrawn();
    await new Promise((resume) => requestAnimationFrame(resume));
  }

  protected override render(): unknown {
    const all = { places: this.sheet.problems.map((_, place) => place), lines: LEAST_LINES };
    const parts = this.laidOut ?? this.#chosen.map((of): Part => ({ of, pages: [all] }));
    return parts.map((part) => part.pages.map((_, page) => this.#page(part, page)));
  }

  get #chosen(): readonly Part['of'][] {
    return this.parts === 'both' ? ['questions', 'answers'] : [this.parts];
  }

  async #tilesDrawn(): Promise<void> {
    const tiles = [...this.renderRoot.querySelectorAll('wr-tile')].filter((tile) => tile instanceof WrTile);
    await Promise.all(tiles.map((tile) => tile.updateComplete));
  }

  /** The pages, by the heights that the problems have on the one page that they are measured on; lines fill what is left. */
  #spread(of: Part['of']): readonly Page[] {
    const body = this.renderRoot.querySelector(`.measuring.${of} .body`);
    const heights = [...(body?.children ?? [])].map((each) => each.getBoundingClientRect().height);
    const line = body?.querySelector('.line')?.getBoundingClientRect().height ?? Number.POSITIVE_INFINITY;
    const room = body?.clientHeight ?? 0;
    return spreadOverPages(heights, room, MOST_ON_A_PAGE).map((places) => {
      const left = places.reduce((rest, place) => rest - (heights[place] as number), room);
      const more = Math.max(0, Math.floor(left / places.length / line));
      return { places, lines: Math.min(MOST_LINES, LEAST_LINES + more) };
    });
  }

  #page({ of, pages }: Part, page: number): unknown {
    const asked = of === 'questions';
    const { places, lines } = pages[page] as Page;
    const number = asked ? words.questionsPage : words.answersPage;
    const hint = asked && places.some((place) => this.sheet.problems[place]?.code !== undefined);
    return html`<section class="page ${of} ${this.laidOut === null ? 'measuring' : ''}">
      <header>
        ${this.#title(of, page)} <span>${cardOf(this.sheet)}</span>
        ${
          asked
            ? html`<span class="person"
                >${words.name}<span class="line"></span>${words.date}<span class="line"></span
              ></span>`
            : html`<p class="lead">${words.model}</p>`
        }
      </header>
      <div class="body">
        ${places.map((place) => {
          const problem = this.sheet.problems[place] as SheetProblem;
          return asked ? question(problem, place, lines) : this.#answer(problem, place);
        })}
      </div>
      <footer>
        ${hint || this.laidOut === null ? html`<span>${words.codeHint}</span>` : nothing}
        <span class="page-number">${number(page + 1, pages.length)}</span>
      </footer>
    </section>`;
  }

  /** A heading on the first page; on the others it only says where the page belongs. */
  #title(of: Part['of'], page: number): unknown {
    const title = of === 'questions' ? this.sheet.title : words.answers(this.sheet.title);
    return page === 0 ? html`<h1>${title}</h1>` : html`<span class="title">${title}</span>`;
  }

  #answer(problem: SheetProblem, place: number): unknown {
    const found = this.answerFor(problem);
    const { choices, left } = shownChoices(found);
    return html`<section class="answer">
      ${head(problem, place)} ${tileRow(kindsOf(problem.rack))}
      ${
        found === null
          ? nothing
          : html`<div class="choices">
                ${choices.map(
                  (choice, rank) =>
                    html`<div class="choice">
                      <strong>${gradeWords(choice.verdict, rank)}</strong> ${givenTiles(choice)}
                      <span>${costInShort(choice)}</span>
                    </div>`,
                )}
                ${left > 0 ? html`<p class="wide">${answerWords.more(left)}</p>` : nothing}
              </div>
              <p>${[...lessonOfRack(found), ...reasonsOfBest(found)].join(' ')}</p>
              ${spread(problem, found)}`
      }
    </section>`;
  }
}

function question(problem: SheetProblem, place: number, lines: number): unknown {
  return html`<section class="problem">
    ${head(problem, place)} ${tileRow(kindsOf(problem.rack))}
    ${problem.gone === '' ? nothing : html`<p class="gone">${answerWords.gone}: ${tileRow(kindsOf(problem.gone))}</p>`}
    <p>${problem.question}</p>
    ${problem.remark === '' ? nothing : html`<p class="remark">${problem.remark}</p>`}
    <div class="write" role="group" aria-label=${words.room}>
      <span class="label">${words.give}</span><span class="line"></span> <span class="label">${words.why}</span
      ><span class="line"></span>
      ${Array.from({ length: lines }, () => html`<span class="line whole"></span>`)}
    </div>
  </section>`;
}

function head({ seat, step, code }: SheetProblem, place: number): unknown {
  return html`<div class="head">
    <h2>${sheetWords.problem(place + 1)}</h2>
    <span>${turnWords(seat, step)}</span>
    ${code === undefined ? nothing : html`<span>${words.code(code)}</span>`}
  </div>`;
}

/** What the class chose, each with what it costs. */
function spread(problem: SheetProblem, found: SheetAnswer): unknown {
  const rows = classRows(problem, found).filter(({ people }) => people > 0);
  if (rows.length === 0) return nothing;
  return html`<h3>${words.class}</h3>
    <div class="choices">
      ${rows.map(
        ({ choice, people, verdict, cost }) =>
          html`<p class="choice class">
            <strong>${people}</strong>
            ${choice.stops === true ? classWords.spread.stopped : tileRow(kindsOf(choice.give))}
            <span>${gradeWords(verdict, verdict === 'best' ? 0 : 1)} ${costInShort({ verdict, cost })}</span>
          </p>`,
      )}
    </div>`;
}

/** The card that the answers are worked out from, with its season. */
function cardOf({ card }: Sheet): string {
  const read = readCard(card);
  return read.ok ? words.card(read.value.card.title, read.value.card.season) : '';
}

customElements.define('wr-sheet-print', WrSheetPrint);

declare global {
  interface HTMLElementTagNameMap {
    'wr-sheet-print': WrSheetPrint;
  }
}
