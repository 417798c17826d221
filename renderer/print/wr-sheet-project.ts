import { html, LitElement, nothing } from 'lit';
import type { Sheet, SheetProblem } from '../../core/warmup/sheet.ts';
import { emit } from '../parts/emit.ts';
import '../parts/wr-button.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { warmUpWords } from '../words/warmup.ts';
import type { AnswerFor } from './answer-for.ts';
import { classStep, passesStep, readingStep } from './project-parts.ts';
import { isAtEnd, movedBy, type ProjectAt } from './project-steps.ts';
import { projectStyles } from './project-styles.ts';
import { kindsOf, tiles } from './sheet-tiles.ts';

const words = warmUpWords.project;

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

  static override styles = [sharedStyles, projectStyles];

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
        <wr-button look="main" ?disabled=${isAtEnd(this.sheet, this.#at)} @click=${() => this.#go(1)}
          >${words.next}</wr-button
        >
      </footer>
    </dialog>`;
  }

  #problem(problem: SheetProblem): unknown {
    const found = this.answerFor(problem);
    return html`<div class="problem">
      ${tiles(kindsOf(problem.rack))}
      <p>${problem.question}</p>
      ${problem.remark === '' ? nothing : html`<p>${problem.remark}</p>`}
      <div aria-live="polite">
        ${found === null || this.step < 1 ? nothing : readingStep(found.answer)}
        ${found === null || this.step < 2 ? nothing : passesStep(found)}
        ${found === null || this.step < 3 ? nothing : classStep(problem, found)}
      </div>
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
