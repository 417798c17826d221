import { css, html, LitElement, nothing } from 'lit';
import { SURENESS } from '../../../core/warmup/estimate.ts';
import type { Guessed } from '../../../core/warmup/history.ts';
import type { WarmUpItem } from '../../../core/warmup/item.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
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
        gap: var(--space-3);
        padding: var(--space-4);
        background: var(--sheet);
        border: 1px solid var(--hairline);
        border-radius: var(--round-large);
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
      <div class="questions">${this.#away()} ${this.#lean()} ${this.#reach()}</div>
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

  #away(): unknown {
    return this.#question(
      'away',
      html`<wr-field
        label=${words.away}
        type="number"
        .value=${this.round.guesses.away ?? ''}
        @field-typed=${({ detail }: CustomEvent<FieldText>) => this.#guess('away', detail.value)}
      ></wr-field>`,
    );
  }

  #lean(): unknown {
    return this.#question(
      'lean',
      html`<label class="labelled"
        >${words.lean}
        <select
          @change=${({ target }: Event) =>
            target instanceof HTMLSelectElement ? this.#guess('lean', target.value) : undefined}
        >
          <option value="" ?selected=${(this.round.guesses.lean ?? '') === ''}></option>
          ${this.room.sections.map(
            ({ name }) => html`<option value=${name} ?selected=${this.round.guesses.lean === name}>${name}</option>`,
          )}
        </select>
      </label>`,
    );
  }

  #reach(): unknown {
    return this.#question(
      'reach',
      html`<wr-field
        label=${words.reach}
        hint=${words.reachHint}
        type="number"
        .value=${this.round.guesses.reach ?? ''}
        @field-typed=${({ detail }: CustomEvent<FieldText>) => this.#guess('reach', detail.value)}
      ></wr-field>`,
    );
  }

  #question(what: Guessed, field: unknown): unknown {
    if (this.told !== null) return html`<div class="question">${guessTold(this.round, what, this.told.truth)}</div>`;
    return html`<div class="question">
      ${field}
      <wr-choice
        label=${words.sure}
        .options=${SURENESS.map((sure) => ({ value: String(sure), label: words.sureWords(sure) }))}
        .value=${String(this.round.sure[what] ?? '')}
        @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) =>
          (this.round = { ...this.round, sure: { ...this.round.sure, [what]: Number(detail.value) } })}
      ></wr-choice>
    </div>`;
  }

  #guess(what: Guessed, value: string): void {
    this.round = { ...this.round, guesses: { ...this.round.guesses, [what]: value } };
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
