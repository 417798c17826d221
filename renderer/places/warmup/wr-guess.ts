import { css, html, LitElement, nothing } from 'lit';
import { GUESSED } from '../../../core/warmup/history.ts';
import type { WarmUpItem } from '../../../core/warmup/item.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-hand.ts';
import '../../parts/wr-explain.ts';
import { panelStyles } from '../table/panel-styles.ts';
import { readingStyles } from '../table/reading-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { TruthView } from '../../worker/warm-up-calls.ts';
import { answerOf } from './answers.ts';
import { type GuessRound, guessEntries, guessTrouble, NO_GUESSES } from './guess-round.ts';
import { guessQuestion } from './guess-questions.ts';
import { guessReading, guessTold } from './guess-told.ts';
import type { PracticeRoom } from './practice-room.ts';
import { kindsOf, tileRow } from './tile-row.ts';
import { warmUpStyles } from './warm-up-styles.ts';

const words = warmUpWords.guess;

/** A round of guesses: away, lean and reach, each with how sure one is; only then the truth. */
export class WrGuess extends LitElement {
  static override properties = {
    room: { attribute: false },
    item: { state: true },
    round: { state: true },
    told: { state: true },
    refusal: { state: true },
  };

  declare room: PracticeRoom;
  declare item: WarmUpItem | null;
  declare round: GuessRound;
  /** The truth, once all three are guessed. */
  declare told: TruthView | null;
  declare refusal: string;

  static override styles = [
    sharedStyles,
    panelStyles,
    readingStyles,
    warmUpStyles,
    css`
      .questions {
        display: grid;
        gap: var(--space-4);
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 19rem), 1fr));
      }

      .question {
        min-width: 0;
        display: flex;
        flex-direction: column;
        /* All answers in one row. */
        --choice-room: 0.6em;
        gap: var(--space-3);
        padding: var(--space-4);
        background: var(--sheet);
        border: 1px solid var(--hairline);
        border-radius: var(--round-large);
      }

      /* What is asked below stands on one line in all three. */
      .question:has(wr-choice) {
        justify-content: space-between;
      }

      .result {
        font-weight: 700;
      }
    `,
  ];

  constructor() {
    super();
    this.item = null;
    this.round = NO_GUESSES;
    this.told = null;
    this.refusal = '';
    new StoreController(this, () => [this.room]);
  }

  protected override render(): unknown {
    if (this.item === null) {
      return html`<div class="stack">
        <p>${words.lead}</p>
        <div><wr-button look="main" @click=${this.#deal}>${words.start}</wr-button></div>
      </div>`;
    }
    return html`<div class="stack">
      <h2 class="unseen" tabindex="-1">${warmUpWords.run.rack}</h2>
      ${tileRow(kindsOf(this.item.rack), 'large')}
      <div class="questions">${this.#questions()}</div>
      <p class="bad" role="alert">${this.refusal}</p>
      <div class="row">
        ${
          this.told === null
            ? html`<wr-button look="main" @click=${this.#show}>${words.show}</wr-button>`
            : html`<wr-button look="main" @click=${this.#deal}>${words.another}</wr-button>`
        }
      </div>
      ${this.told === null ? nothing : guessReading(this.told)}
    </div>`;
  }

  /** What is asked, or, once the truth is there, what came of it. */
  #questions(): unknown {
    const { round, told } = this;
    return GUESSED.map(
      (what) =>
        html`<div class="question">
          ${
            told === null
              ? guessQuestion(what, { round, sections: this.room.sections, changed: (next) => (this.round = next) })
              : guessTold(round, what, told.truth)
          }
        </div>`,
    );
  }

  async #deal(): Promise<void> {
    const found = await this.room.find(this.room.wishes.kind, 13);
    if (found === null) return;
    this.item = found.item;
    this.round = NO_GUESSES;
    this.told = null;
    this.refusal = '';
    await this.#focus('h2');
  }

  async #show(): Promise<void> {
    this.refusal = guessTrouble(this.round);
    if (this.refusal !== '' || this.item === null) return;
    const request = { card: this.room.card, rack: this.item.rack };
    const told = answerOf(await this.room.worker.askNewest('truth', request));
    if (told === null) return;
    if (!told.ok) {
      this.refusal = told.message;
      return;
    }
    this.told = told.value;
    this.room.note(...guessEntries(this.round, told.value.truth));
    await this.#focus('h3');
  }

  /** The button that was pressed is gone: the focus goes to where what came begins. */
  async #focus(heading: string): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>(heading)?.focus();
  }
}

customElements.define('wr-guess', WrGuess);

declare global {
  interface HTMLElementTagNameMap {
    'wr-guess': WrGuess;
  }
}
