import { css, html, nothing } from 'lit';
import { GUESSED } from '../../../core/warmup/history.ts';
import type { WarmUpItem } from '../../../core/warmup/item.ts';
import type { TruthDocument } from '../../../core/engine/practice-questions.ts';
import { kindsOf } from '../../../core/tiles/text.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-hand.ts';
import '../../parts/wr-explain.ts';
import { panelStyles } from '../table/panel-styles.ts';
import { readingStyles } from '../table/reading-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { warmUpWords } from '../../words/warmup.ts';
import {
  guessEntries,
  guessQuestion,
  guessReading,
  guessResult,
  type GuessRound,
  guessTrouble,
  NO_GUESSES,
} from './guess-round.ts';
import type { PracticeRoom } from './practice-room.ts';
import { countsOf, worded } from './room-parts.ts';
import { tileRow } from '../../parts/tile/tile-row.ts';
import { warmUpStyles } from './warm-up-styles.ts';

const words = warmUpWords.guess;

const Base = element({
  room: data<PracticeRoom>(),
  item: state<WarmUpItem | null>(null),
  round: state<GuessRound>(() => NO_GUESSES),
  /** The truth, once all three are guessed. */
  truth: state<TruthDocument | null>(null),
  refusal: state(''),
});

/** A round of guesses: away, lean and reach, each with how sure the player is; only then the truth. */
export class WrGuess extends Base {
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

      /* The second questions stand on one line in all three. */
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
      ${tileRow(kindsOf(this.item.rack), { size: 'large' })}
      <div class="questions">${this.#questions()}</div>
      <p class="bad" role="alert">${this.refusal}</p>
      <div class="row">
        ${
          this.truth === null
            ? html`<wr-button look="main" @click=${this.#show}>${words.show}</wr-button>`
            : html`<wr-button look="main" @click=${this.#deal}>${words.another}</wr-button>`
        }
      </div>
      ${this.truth === null ? nothing : guessReading(this.truth)}
    </div>`;
  }

  /** The questions, or, once the truth is known, the results. */
  #questions(): unknown {
    const { round, truth } = this;
    return GUESSED.map(
      (what) =>
        html`<div class="question">
          ${
            truth === null
              ? guessQuestion(what, { round, sections: this.room.sections, changed: (next) => (this.round = next) })
              : guessResult(round, what, truth.truth)
          }
        </div>`,
    );
  }

  async #deal(): Promise<void> {
    const found = await this.room.find(this.room.options.kind, 13);
    if (found === null) return;
    this.item = found.item;
    this.round = NO_GUESSES;
    this.truth = null;
    this.refusal = '';
    await this.#focus('h2');
  }

  async #show(): Promise<void> {
    this.refusal = guessTrouble(this.round);
    if (this.refusal !== '' || this.item === null) return;
    const { item } = this;
    const answer = worded(await this.room.worker.ask('truth', { card: this.room.card, rack: countsOf(item.rack) }));
    if (item !== this.item || this.truth !== null) return;
    if (!answer.ok) {
      this.refusal = answer.problem.message;
      return;
    }
    this.truth = answer.value;
    this.room.note(...guessEntries(this.round, answer.value.truth));
    await this.#focus('h3');
  }

  /** The button that was pressed is gone: the focus moves to where the new content begins. */
  async #focus(heading: string): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>(heading)?.focus();
  }
}

customElements.define('wr-guess', WrGuess);
