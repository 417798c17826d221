import { css, html, nothing } from 'lit';
import { kindsOf } from '../../core/tiles/text.ts';
import type { Sheet, SheetProblem } from '../../core/warmup/sheet.ts';
import { data, element, state } from '../parts/element.ts';
import { emit } from '../parts/emit.ts';
import { tileRow } from '../parts/tile/tile-row.ts';
import '../parts/wr-button.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { projectWords } from '../words/sheets.ts';
import type { AnswerFor } from './judged.ts';
import { classStep, isAtEnd, movedBy, passesStep, type ProjectAt, readingStep } from './project-parts.ts';

const words = projectWords;

/** A sheet on a screen: letters and tiles that can be read from the last row. */
const projectStyles = css`
  dialog {
    display: none;
    flex-direction: column;
    width: 100vw;
    max-width: none;
    height: 100dvh;
    max-height: none;
    margin: 0;
    padding: var(--space-4) var(--space-5);
    overflow: hidden;
    border: 0;
    background: var(--paper);
    color: var(--ink);
    font-size: clamp(1.2rem, 2.2vw, 2.2rem);
  }

  dialog[open] {
    display: flex;
    gap: var(--space-4);
  }

  /* Between a head and buttons that keep their place. */
  .problem {
    position: relative;
    flex: 1 1 0;
    display: flex;
    flex-direction: column;
    gap: var(--space-4);
    min-height: 0;
    overflow: auto;
    overflow-wrap: anywhere;
  }

  header,
  footer {
    flex: none;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: var(--space-2) var(--space-4);
    font-size: var(--text-body);
  }

  footer {
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
`;

const Base = element({
  sheet: data<Sheet>(),
  answerFor: data<AnswerFor>(),
  place: state(0),
  /** How many of the steps are shown, from 0. */
  step: state(0),
});

/** A sheet for a projector: one problem at a time, its answer revealed step by step. */
export class WrSheetProject extends Base {
  static override styles = [sharedStyles, projectStyles];

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
      ${tileRow(kindsOf(problem.rack))}
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
