import { html, nothing } from 'lit';
import { kindsOf } from '../../core/tiles/text.ts';
import type { Sheet, SheetProblem } from '../../core/warmup/sheet.ts';
import { data, element, state } from '../parts/element.ts';
import { emit } from '../parts/emit.ts';
import { howCounted } from '../parts/how-counted.ts';
import { tileRow } from '../parts/tile/tile-row.ts';
import '../parts/wr-button.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { answerWords, projectWords, turnWords } from '../words/sheets.ts';
import type { AnswerFor } from './judged.ts';
import { answerStep, COUNTED, isAtEnd, movedBy, type ProjectAt, stepAt } from './project-parts.ts';
import { projectStyles } from './project-styles.ts';

const words = projectWords;

const Base = element({
  sheet: data<Sheet>(),
  answerFor: data<AnswerFor>(),
  place: state(0),
  /** The step of the answer that is shown, from 1; 0 for the question. */
  step: state(0),
});

/** A sheet for a projector: one problem at a time, its answer revealed step by step. */
export class WrSheetProject extends Base {
  static override styles = [sharedStyles, projectStyles];

  show(): void {
    this.renderRoot.querySelector('dialog')?.showModal();
    this.renderRoot.querySelector<HTMLElement>('footer wr-button:last-of-type')?.focus();
  }

  protected override render(): unknown {
    const { problems } = this.sheet;
    const problem = problems[this.place];
    const step = stepAt(this.sheet, this.#at);
    const counted = step === null ? null : COUNTED[step];
    return html`<dialog aria-labelledby="title" @cancel=${this.#cancelled} @keydown=${this.#onKey}>
      <header>
        <h1 id="title">${this.#title(problem)}</h1>
        <wr-button look="quiet" @click=${this.#close}>${words.close}</wr-button>
      </header>
      ${problem === undefined ? nothing : this.#problem(problem)}
      <footer>
        <span class="before"></span>
        <wr-button ?disabled=${this.place === 0 && this.step === 0} @click=${() => this.#go(-1)}
          >${words.back}</wr-button
        >
        <wr-button look="main" ?disabled=${isAtEnd(this.sheet, this.#at)} @click=${() => this.#go(1)}
          >${words.next}</wr-button
        >
        <span class="counted">${counted === null ? nothing : howCounted(counted)}</span>
      </footer>
    </dialog>`;
  }

  /** "Problem 2 of 3: South, first pass across"; who is to pass is always said. */
  #title(problem: SheetProblem | undefined): string {
    const at = words.of(this.place + 1, this.sheet.problems.length);
    const turn = problem === undefined ? '' : turnWords(problem.seat, problem.step);
    return [at, turn].filter((each) => each !== '').join(': ');
  }

  #problem(problem: SheetProblem): unknown {
    const found = this.answerFor(problem);
    const step = stepAt(this.sheet, this.#at);
    return html`<div class="rack ${step === null ? '' : 'small'}">${tileRow(kindsOf(problem.rack))}</div>
      ${
        problem.gone === '' || step !== null
          ? nothing
          : html`<div class="gone"><span>${answerWords.gone}</span> ${tileRow(kindsOf(problem.gone))}</div>`
      }
      <div class="shown" aria-live="polite">
        ${
          step === null || found === null
            ? html`<p>${problem.question}</p>
                ${problem.remark === '' ? nothing : html`<p>${problem.remark}</p>`}`
            : answerStep(step, problem, found)
        }
      </div>`;
  }

  get #at(): ProjectAt {
    return { place: this.place, step: this.step };
  }

  #go(by: 1 | -1): void {
    const { place, step } = movedBy(this.sheet, this.#at, by);
    this.place = place;
    this.step = step;
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

customElements.define('wr-sheet-project', WrSheetProject);

declare global {
  interface HTMLElementTagNameMap {
    'wr-sheet-project': WrSheetProject;
  }
}
