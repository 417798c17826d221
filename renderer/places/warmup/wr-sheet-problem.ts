import { css, html, nothing } from 'lit';
import { PASS_STEPS, SEATS } from '../../../core/exchange/steps.ts';
import { moveProblem, problemBefore, seatsOf, type SheetProblem } from '../../../core/warmup/sheet.ts';
import { kindsOf } from '../../../core/tiles/text.ts';
import { data, element, numeric, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { answerWords, sheetWords, stepNames, turnWords } from '../../words/sheets.ts';
import type { PracticeRoom } from './practice-room.ts';
import { tileRow } from '../../parts/tile/tile-row.ts';
import { warmUpStyles } from './warm-up-styles.ts';
import type { CodesCounted } from './wr-answer-codes.ts';
import './wr-class-answers.ts';

const words = sheetWords;

const Base = element({
  room: data<PracticeRoom>(),
  problem: data<SheetProblem>(),
  place: numeric(),
  /** Whether the answers of the class were looked at: a sheet has many problems. */
  opened: state(false),
});

/** One problem of the sheet: its tiles, the teacher's words, its place, and what the class chose. */
export class WrSheetProblem extends Base {
  static override styles = [
    sharedStyles,
    warmUpStyles,
    css`
      .panel {
        gap: var(--space-2);
        padding-block: var(--space-2);
      }

      .words {
        display: grid;
        gap: 0 var(--space-4);
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 19rem), 1fr));
      }

      /* The openers side by side; what is opened takes the whole width. */
      .more {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-5);
      }

      details[open] {
        flex: 1 0 100%;
      }

      summary {
        min-height: var(--target);
        padding-block: 0.4em;
        font-weight: 600;
        cursor: pointer;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  protected override render(): unknown {
    const { problem, place } = this;
    const number = place + 1;
    const last = place === (this.room.sheets.sheet?.problems.length ?? 0) - 1;
    return html`<section class="panel" aria-label=${words.problem(number)}>
      <div class="row spread">
        <h2>${words.problem(number)}</h2>
        <span class="turn">${turnWords(problem.seat, problem.step)}</span>
        ${problem.code === undefined ? nothing : html`<span class="soft">${problem.code}</span>`}
        <div class="row">
          <wr-button look="quiet" label=${words.up(number)} ?disabled=${place === 0} @click=${() => this.#move(-1)}
            >${words.upShort}</wr-button
          >
          <wr-button look="quiet" label=${words.down(number)} ?disabled=${last} @click=${() => this.#move(1)}
            >${words.downShort}</wr-button
          >
          <wr-button look="quiet" label=${words.takeOff(number)} @click=${this.#remove}
            >${words.takeOffShort}</wr-button
          >
        </div>
      </div>
      ${tileRow(kindsOf(problem.rack))}
      ${problem.gone === '' ? nothing : html`<p class="row soft">${answerWords.gone} ${tileRow(kindsOf(problem.gone))}</p>`}
      <div class="more">
        <details>
          <summary>${words.about}</summary>
          ${this.#about(problem)}
        </details>
        <details ?open=${problem.answers.length > 0} @toggle=${this.#opened}>
          <summary>${words.classTitle}</summary>
          ${this.opened || problem.answers.length > 0 ? this.#class() : nothing}
        </details>
      </div>
    </section>`;
  }

  /** The teacher's words, and who is to pass. */
  #about(problem: SheetProblem): unknown {
    return html`<div class="words">
        <wr-field
          label=${words.question}
          .value=${problem.question}
          @field-changed=${({ detail }: CustomEvent<FieldText>) => this.#change({ question: detail.value.slice(0, 500) })}
        ></wr-field>
        <wr-field
          label=${words.remark}
          .value=${problem.remark}
          @field-changed=${({ detail }: CustomEvent<FieldText>) => this.#change({ remark: detail.value.slice(0, 2000) })}
        ></wr-field>
        <label class="labelled"
          >${words.seat}
          <select @change=${this.#seatChosen}>
            ${seatsOf(problem).map(
              (seat) => html`<option value=${seat} ?selected=${seat === problem.seat}>${seat}</option>`,
            )}
          </select>
        </label>
        <label class="labelled"
          >${words.step}
          <select @change=${this.#stepChosen}>
            ${PASS_STEPS.map(
              (step) => html`<option value=${step} ?selected=${step === problem.step}>${stepNames[step]}</option>`,
            )}
          </select>
        </label>
      </div>
      ${problem.code === undefined ? nothing : html`<p class="soft">${words.codeGoes}</p>`}`;
  }

  #seatChosen({ target }: Event): void {
    const seat = SEATS.find((each) => target instanceof HTMLSelectElement && each === target.value);
    if (seat !== undefined) this.#turn({ ...this.problem, seat });
  }

  #stepChosen({ target }: Event): void {
    const step = PASS_STEPS.find((each) => target instanceof HTMLSelectElement && each === target.value);
    if (step !== undefined) this.#turn({ ...this.problem, step });
  }

  #turn(turn: Pick<SheetProblem, 'seat' | 'step'>): void {
    const changed = problemBefore(this.problem, turn);
    if (changed !== this.problem) this.room.sheets.changeProblem(this.place, changed);
  }

  #class(): unknown {
    const { problem } = this;
    return html`<wr-class-answers
      .answer=${this.room.sheets.answerTo(problem)}
      .progress=${this.room.sheets.answering}
      .problem=${problem}
      .sheet=${this.room.sheets.sheet}
      @codes-counted=${({ detail }: CustomEvent<CodesCounted>) => this.#codesCounted(detail)}
      @class-changed=${({ detail }: CustomEvent<SheetProblem>) => this.#classChanged(detail)}
    ></wr-class-answers>`;
  }

  #move(by: -1 | 1): void {
    const { sheet } = this.room.sheets;
    if (sheet !== null) this.room.sheets.change(moveProblem(sheet, this.place, by));
  }

  #remove(): void {
    const { sheet } = this.room.sheets;
    if (sheet === null) return;
    this.room.sheets.change({ ...sheet, problems: sheet.problems.toSpliced(this.place, 1) });
  }

  #change(change: Partial<Pick<SheetProblem, 'question' | 'remark'>>): void {
    const changed = { ...this.problem, ...change };
    if (changed.question === this.problem.question && changed.remark === this.problem.remark) return;
    this.room.sheets.changeProblem(this.place, changed);
  }

  /** Opening the class's answers starts working out the engine's. */
  #opened({ target }: Event): void {
    const open = target instanceof HTMLDetailsElement && target.open;
    this.opened ||= open;
    if (open && !this.room.sheets.isWhole(this.problem)) void this.room.sheets.answerAll();
  }

  /** Codes may answer any problem of the sheet. */
  #codesCounted({ problems }: CodesCounted): void {
    const { sheet } = this.room.sheets;
    if (sheet === null) return;
    this.room.sheets.change({ ...sheet, problems });
    void this.room.sheets.answerAll();
  }

  /** A pass entered for the first time is judged, too. */
  #classChanged(changed: SheetProblem): void {
    this.room.sheets.changeProblem(this.place, changed);
    if (!this.room.sheets.isWhole(changed)) void this.room.sheets.answerAll();
  }
}

customElements.define('wr-sheet-problem', WrSheetProblem);
