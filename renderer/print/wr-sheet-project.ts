import { css, html, LitElement, nothing } from 'lit';
import type { Kind } from '../../core/tiles/kinds.ts';
import { nameOf } from '../../core/tiles/names.ts';
import { formatTileList, parseTileList } from '../../core/tiles/text.ts';
import { type Sheet, type SheetProblem, spreadOf } from '../../core/warmup/sheet.ts';
import { emit } from '../parts/emit.ts';
import '../parts/tile/wr-tile.ts';
import '../parts/wr-button.ts';
import '../parts/wr-hand.ts';
import '../parts/wr-lean.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { percent, points } from '../words/numbers.ts';
import { warmUpWords } from '../words/warmup.ts';
import type { AnswerView, JudgedView } from '../worker/warm-up-calls.ts';
import type { AnswerFor } from './answer-for.ts';

const words = warmUpWords.project;
const SHOWN_HANDS = 3;
const SHOWN_PASSES = 3;

/** A sheet for a projector: one problem at a time, its answer revealed step by step. */
export class WrSheetProject extends LitElement {
  static override properties = {
    sheet: { attribute: false },
    answerFor: { attribute: false },
    place: { state: true },
    step: { state: true },
  };

  declare sheet: Sheet;
  declare answerFor: AnswerFor;
  declare place: number;
  /** How many of the steps are shown, from 0. */
  declare step: number;

  static override styles = [
    sharedStyles,
    css`
      dialog {
        display: none;
        flex-direction: column;
        width: 100vw;
        max-width: none;
        height: 100dvh;
        max-height: none;
        margin: 0;
        padding: var(--space-4) var(--space-5);
        overflow: auto;
        border: 0;
        background: var(--paper);
        color: var(--ink);
        font-size: clamp(1.2rem, 2.2vw, 2.2rem);
      }

      dialog[open] {
        display: flex;
        gap: var(--space-4);
      }

      header,
      footer {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        justify-content: space-between;
        gap: var(--space-2) var(--space-4);
        font-size: var(--text-body);
      }

      footer {
        margin-top: auto;
        padding-top: var(--space-3);
        justify-content: center;
      }

      h1,
      h2,
      p {
        margin: 0;
      }

      h1 {
        font-size: clamp(1.3rem, 2.4vw, 2.4rem);
      }

      h2 {
        font-size: 1em;
      }

      .tiles {
        --tile-width: clamp(40px, 5.6vw, 110px);
        display: inline-flex;
        flex-wrap: wrap;
        gap: clamp(4px, 0.6vw, 12px);
        vertical-align: middle;
      }

      .small {
        --tile-width: clamp(34px, 3vw, 64px);
      }

      .step {
        display: flex;
        flex-direction: column;
        gap: var(--space-2);
        padding-top: var(--space-3);
        border-top: 1px solid var(--hairline);
      }

      .row {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2) var(--space-4);
      }

      wr-hand {
        --tile-width: clamp(18px, 2.4vw, 48px);
      }
    `,
  ];

  constructor() {
    super();
    this.place = 0;
    this.step = 0;
  }

  show(): void {
    this.renderRoot.querySelector('dialog')?.showModal();
    this.renderRoot.querySelector<HTMLElement>('footer wr-button:last-of-type')?.focus();
  }

  protected override updated(): void {
    [...this.renderRoot.querySelectorAll('.step')].at(-1)?.scrollIntoView({ block: 'nearest' });
  }

  protected override render(): unknown {
    const { problems } = this.sheet;
    const problem = problems[this.place];
    return html`<dialog aria-labelledby="title" @cancel=${this.#cancelled} @keydown=${this.#onKey}>
      <header>
        <h1 id="title">${words.of(this.place + 1, problems.length)}</h1>
        <wr-button look="quiet" @click=${this.#close}>${words.close}</wr-button>
      </header>
      ${problem === undefined ? nothing : this.#problem(problem)}
      <footer>
        <wr-button ?disabled=${this.place === 0 && this.step === 0} @click=${() => this.#go(-1)}
          >${words.back}</wr-button
        >
        <wr-button look="main" ?disabled=${this.#atEnd} @click=${() => this.#go(1)}>${words.next}</wr-button>
      </footer>
    </dialog>`;
  }

  #problem(problem: SheetProblem): unknown {
    const answer = this.answerFor(problem);
    return html`${tiles(kinds(problem.rack))}
      <p>${problem.question}</p>
      ${problem.remark === '' ? nothing : html`<p>${problem.remark}</p>`}
      <div aria-live="polite">
        ${answer === null || this.step < 1 ? nothing : this.#reading(answer)}
        ${answer === null || this.step < 2 ? nothing : this.#passes(answer)}
        ${answer === null || this.step < 3 ? nothing : this.#class(problem, answer)}
      </div>`;
  }

  #reading({ reading }: AnswerView): unknown {
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

  #passes({ options }: AnswerView): unknown {
    const good = options.filter(({ verdict }) => verdict === 'best' || verdict === 'equal');
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

  #class({ answers }: SheetProblem, { options }: AnswerView): unknown {
    const judged = options.map(({ give, cost, verdict }) => ({ give: formatTileList(give), cost, verdict }));
    const { rows, right, people } = spreadOf(answers, judged);
    return html`<section class="step">
      <h2>${words.steps[3]}</h2>
      <p>${warmUpWords.sheets.classRight(right.hits, people)}</p>
      ${rows
        .filter((row) => row.people > 0)
        .map(
          ({ give, people: chose, verdict, cost }) =>
            html`<div class="row">
              <strong>${chose}</strong> ${tiles(kinds(give), 'small')}
              <span>${warmUpWords.verdicts[verdict]}${cost > 0 ? `: ${points(cost)}` : ''}</span>
            </div>`,
        )}
    </section>`;
  }

  /** The last step of a problem; the class has one only where somebody's answer is entered. */
  get #lastStep(): number {
    return (this.sheet.problems[this.place]?.answers.length ?? 0) > 0 ? 3 : 2;
  }

  get #atEnd(): boolean {
    return this.place === this.sheet.problems.length - 1 && this.step === this.#lastStep;
  }

  #go(by: 1 | -1): void {
    if (by === 1 && this.#atEnd) return;
    const step = this.step + by;
    if (step >= 0 && step <= this.#lastStep) {
      this.step = step;
      return;
    }
    if (step < 0 && this.place === 0) return;
    this.place += by;
    this.step = by === 1 ? 0 : this.#lastStep;
  }

  #onKey(event: KeyboardEvent): void {
    const on = event.key === 'ArrowRight' || event.key === 'PageDown';
    const back = event.key === 'ArrowLeft' || event.key === 'PageUp';
    if (!on && !back) return;
    event.preventDefault();
    this.#go(on ? 1 : -1);
  }

  #cancelled(event: Event): void {
    event.preventDefault();
    this.#close();
  }

  #close(): void {
    this.renderRoot.querySelector('dialog')?.close();
    emit(this, 'project-closed', null);
  }
}

function passOf({ give, blind }: JudgedView): unknown {
  return html`<span>${tiles(give, 'small')} ${blind === 0 ? '' : warmUpWords.answer.blindNote(blind)}</span>`;
}

function tiles(list: readonly Kind[], size = ''): unknown {
  return html`<span class="tiles ${size}" role="img" aria-label=${list.map(nameOf).join(', ')}>
    ${list.map((kind) => html`<wr-tile .kind=${kind} aria-hidden="true"></wr-tile>`)}
  </span>`;
}

function kinds(text: string): readonly Kind[] {
  const list = parseTileList(text);
  return list.ok ? list.value : [];
}

customElements.define('wr-sheet-project', WrSheetProject);

declare global {
  interface HTMLElementTagNameMap {
    'wr-sheet-project': WrSheetProject;
  }
}
