import { css, html, nothing } from 'lit';
import { type Random, randomFromSeed } from '../../../core/base/random.ts';
import type { LineDocument } from '../../../core/card/document.ts';
import { lineAt } from '../../../core/card/edit.ts';
import { readLine, understoodLines, type UnderstoodLine } from '../../../core/card/line.ts';
import {
  answerQuestion,
  dueLines,
  type StudySitting,
  SITTING_SIZE,
  startSitting,
  type StudyPlan,
} from '../../../core/card/study.ts';
import type { StudyQuestion } from '../../../core/card/study-question.ts';
import { data, element, state } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-notice.ts';
import type { TabChosen } from '../../parts/wr-tabs.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import type { CardRoom } from './card-room.ts';
import { cardStyles } from './card-styles.ts';
import './wr-line-groups.ts';

const words = cardWords.study;

/** Answers that are kept; the oldest go first. */
const MOST_ANSWERS = 5000;

const Base = element({
  room: data<CardRoom>(),
  /** Null before the first question. */
  sitting: state<StudySitting | null>(null),
  /** The choice just made for the first question; null while it is open. */
  given: state<number | null>(null),
});

/** Card study: asks about lines with something covered, gives the answer at once, and repeats missed lines. */
export class WrCardStudy extends Base {
  static override styles = [
    sharedStyles,
    cardStyles,
    css`
      .choices {
        display: flex;
        flex-direction: column;
        align-items: flex-start;
        gap: var(--space-2);
      }

      .answer {
        min-height: 6.5rem;
      }

      .good {
        color: var(--good);
        font-weight: 700;
      }
    `,
  ];

  #random: Random = randomFromSeed(0);

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#random = randomFromSeed(crypto.getRandomValues(new Uint32Array(1))[0] ?? 0);
  }

  protected override render(): unknown {
    const lines = this.#lines();
    if (lines.length === 0) return this.#empty();
    const question = this.sitting?.queue[0];
    if (this.sitting === null) return this.#beginning(lines);
    if (question === undefined) return this.#over(this.sitting, lines);
    return this.#question(this.sitting, question, lines);
  }

  #empty(): unknown {
    return html`<div class="sheet">
      <p>${words.empty}</p>
      <div>
        <wr-button look="main" @click=${() => emit<TabChosen>(this, 'view-requested', { id: 'lines' })}
          >${cardWords.check.toLines}</wr-button
        >
      </div>
    </div>`;
  }

  #beginning(lines: readonly UnderstoodLine[]): unknown {
    const due = Math.min(SITTING_SIZE, dueLines(this.#plan(lines)).length);
    return html`<div class="sheet">
      <p>${words.lead}</p>
      <p>${words.due(due)}</p>
      ${
        due === 0
          ? html`<p>${words.nothing}</p>`
          : html`<div><wr-button look="main" @click=${() => this.#start(lines)}>${words.start}</wr-button></div>`
      }
    </div>`;
  }

  #question(sitting: StudySitting, question: StudyQuestion, lines: readonly UnderstoodLine[]): unknown {
    const line = this.#lineOf(question, lines);
    const reading = line === undefined ? undefined : readLine(line);
    return html`<section class="sheet" aria-labelledby="question">
      <p class="soft">
        ${words.left(sitting.queue.length)} · ${lines.find(({ id }) => id === question.lineId)?.section}
      </p>
      ${
        reading === undefined
          ? nothing
          : html`<wr-line-groups
              fixed
              .reading=${reading.forms[0]}
              .covered=${this.given === null ? question.covered : []}
            ></wr-line-groups>`
      }
      <h2 id="question" tabindex="-1">${question.question}</h2>
      <div class="choices" role="group" aria-label=${words.choices}>
        ${question.choices.map(
          (choice, at) =>
            html`<wr-button
              ?disabled=${this.given !== null}
              ?pressed=${this.given === at}
              @click=${() => this.#answer(at)}
              >${choice}</wr-button
            >`,
        )}
      </div>
      <div class="answer stack close" role="status">
        ${this.given === null ? nothing : this.#answered(question, this.given === question.right)}
      </div>
      <div class="row">
        <wr-button look="main" ?disabled=${this.given === null} @click=${() => this.#next(lines)}
          >${words.next}</wr-button
        >
        <wr-button look="quiet" @click=${this.#stop}>${words.stop}</wr-button>
      </div>
    </section>`;
  }

  #answered({ choices, right: at, because }: StudyQuestion, right: boolean): unknown {
    return html`<p class=${right ? 'good' : 'bad'}>${right ? `✓ ${words.right}` : words.wrong(choices[at] ?? '')}</p>
      <p>${because}</p>`;
  }

  #over({ answers }: StudySitting, lines: readonly UnderstoodLine[]): unknown {
    const firsts = answers.filter((answer, at) => answers.findIndex(({ lineId }) => lineId === answer.lineId) === at);
    const right = firsts.filter((answer) => answer.right).length;
    return html`<div class="sheet">
      <h2 id="over" tabindex="-1">${words.over}</h2>
      <p>${words.result(right, firsts.length)}</p>
      ${right < firsts.length ? html`<p>${words.back}</p>` : nothing}
      <div><wr-button look="main" @click=${() => this.#start(lines)}>${words.again}</wr-button></div>
    </div>`;
  }

  #lines(): readonly UnderstoodLine[] {
    const document = this.room.editor?.document;
    return document === undefined ? [] : understoodLines(document).filter(({ ways }) => ways > 0);
  }

  #lineOf({ lineId }: StudyQuestion, lines: readonly UnderstoodLine[]): LineDocument | undefined {
    const place = lines.find(({ id }) => id === lineId)?.place;
    const document = this.room.editor?.document;
    return place === undefined || document === undefined ? undefined : lineAt(document, place);
  }

  #plan(lines: readonly UnderstoodLine[]): StudyPlan {
    return { lines, history: this.room.progress.answers, today: today(), random: this.#random };
  }

  #start(lines: readonly UnderstoodLine[]): void {
    const sitting = startSitting(this.#plan(lines));
    this.sitting = sitting.queue.length === 0 ? null : sitting;
    this.given = null;
    void this.#focusOn('#question');
  }

  #answer(choice: number): void {
    const question = this.sitting?.queue[0];
    if (this.given !== null || question === undefined) return;
    this.given = choice;
    const { lineId, ask, right } = question;
    const answer = { lineId, ask, right: choice === right, day: today() };
    this.room.changeProgress({ answers: [...this.room.progress.answers, answer].slice(-MOST_ANSWERS) });
  }

  #next(lines: readonly UnderstoodLine[]): void {
    if (this.sitting === null || this.given === null) return;
    this.sitting = answerQuestion(this.sitting, this.given, this.#plan(lines));
    this.given = null;
    void this.#focusOn('#question, #over');
  }

  #stop(): void {
    const answered = this.sitting !== null && this.sitting.answers.length > 0;
    this.sitting = answered && this.sitting !== null ? { ...this.sitting, queue: [] } : null;
    this.given = null;
  }

  async #focusOn(what: string): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>(what)?.focus();
  }
}

/** Today as a whole number of days, by this place's calendar. */
function today(): number {
  const now = new Date();
  return Math.floor(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / 86_400_000);
}

customElements.define('wr-card-study', WrCardStudy);
