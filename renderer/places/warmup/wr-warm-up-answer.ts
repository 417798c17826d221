import { css, html, nothing } from 'lit';
import type { AnswerDocument } from '../../../core/engine/practice-questions.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import { kindsOf } from '../../../core/tiles/text.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';
import type { AimStanding } from '../../../core/warmup/answer.ts';
import type { Attempt } from '../../../core/warmup/warm-up.ts';
import { data, element } from '../../parts/element.ts';
import '../../parts/wr-hand.ts';
import '../../parts/wr-explain.ts';
import '../../parts/wr-lean.ts';
import { handRow } from '../table/hand-row.ts';
import { panelStyles } from '../table/panel-styles.ts';
import { readingStyles } from '../table/reading-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { PracticeRoom } from './practice-room.ts';
import { asGoodPart, planPart } from './passes-part.ts';
import { type AnswerSoFar, passVerdict, stopVerdict } from './verdict-part.ts';
import type { WarmUpRun } from './warm-up-run.ts';
import { warmUpStyles } from './warm-up-styles.ts';

const words = warmUpWords.answer;

const SHOWN_HANDS = 4;

const Base = element({
  room: data<PracticeRoom>(),
  run: data<WarmUpRun>(),
});

/** The answer to a decision: the verdict and its cost first, then why, then the reading and the plan. */
export class WrWarmUpAnswer extends Base {
  static override styles = [
    sharedStyles,
    panelStyles,
    readingStyles,
    warmUpStyles,
    css`
      :host {
        container-type: inline-size;
        --explain-wrap: normal;
      }

      .answer {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-4) var(--space-6);
      }

      @container (min-width: 54rem) {
        .answer {
          grid-template-columns: minmax(0, 4fr) minmax(0, 5fr);
        }
      }

      .column {
        display: flex;
        flex-direction: column;
        gap: var(--space-4);
        min-width: 0;
      }

      section {
        display: flex;
        flex-direction: column;
        align-items: flex-start;
        gap: var(--space-2);
        min-width: 0;
      }

      .verdict {
        padding-inline-start: var(--space-4);
        border-inline-start: 8px solid var(--edge);
      }

      .verdict.best,
      .verdict.equal {
        border-inline-start-color: var(--good);
      }

      .verdict.slip {
        border-inline-start-color: var(--warn);
        border-inline-start-style: double;
      }

      .verdict.costly {
        border-inline-start-color: var(--bad);
        border-inline-start-style: dashed;
      }

      .headline:focus {
        outline: none;
      }

      /* The verdict is shown at any width, though the reading hides its own heading in a narrow column. */
      .waiting,
      .headline {
        position: static;
        width: auto;
        height: auto;
        overflow: visible;
        clip-path: none;
        font-size: var(--text-title);
      }

      wr-explain {
        --explain-wrap: normal;
      }

      /* On one line with the words above it: the room for a finger stands out to the left. */
      .verdict wr-explain {
        margin-inline-start: -0.5em;
      }

      .reasons li::before {
        content: '· ';
      }

      .reading,
      .hands {
        width: 100%;
      }

      .hands li {
        contain: none;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  #shown: AnswerDocument | null = null;

  protected override updated(): void {
    const { answer } = this.run;
    const headline = this.renderRoot.querySelector<HTMLElement>('.headline');
    if (answer === this.#shown || headline === null) return;
    this.#shown = answer;
    headline.focus();
  }

  protected override render(): unknown {
    const { answer, ahead, working, warmUp } = this.run;
    if (answer === null) return this.#working();
    const soFar = { answer, ahead, working };
    const verdict = verdictPart(soFar);
    if (verdict === null) return this.#working();
    return html`<div class="answer">
      <div class="column">
        ${verdict} ${ownPart(warmUp.attempt, answer)} ${answer.chosen === null ? nothing : asGoodPart(soFar)}
        ${planPart(soFar)}
      </div>
      ${this.#reading(answer)}
    </div>`;
  }

  #working(): unknown {
    const { working, refusal } = this.run;
    return html`<h2 class="waiting">${words.title}</h2>
      <p role="status">${warmUpWords.run.working}</p>
      <progress aria-label=${warmUpWords.run.working} max="1" .value=${working ?? 0}></progress>
      <p class="bad" role="alert">${refusal}</p>`;
  }

  #reading({ reading }: AnswerDocument): unknown {
    return html`<section class="reading">
      <h3>${words.reading}</h3>
      <wr-lean label=${words.lean} .shares=${reading.lean}></wr-lean>
      <ol class="hands">
        ${reading.hands.slice(0, SHOWN_HANDS).map((hand) => html`<li>${handRow(hand, reading.draws)}</li>`)}
      </ol>
    </section>`;
  }
}

/** The verdict, or null until it is known: only the look ahead judges a stop. */
function verdictPart(soFar: AnswerSoFar): unknown {
  const { answer, ahead } = soFar;
  if (answer.chosen !== null) return passVerdict(soFar, answer.chosen);
  return ahead === null ? null : stopVerdict(answer, ahead);
}

/** The player's own aims, keepers and reasons beside what the engine found. */
function ownPart({ keeps, why }: Attempt, { aims, tiles }: AnswerDocument): unknown {
  const kept = Tiles.of(kindsOf(keeps));
  const keepers = Tiles.of(tiles.filter(({ verdict }) => verdict !== 'spare').map(({ kind }) => kind));
  const right = kept.minus(kept.minus(keepers));
  const missed = keepers.minus(kept).distinct().map(nameOf).join(', ');
  return html`<section>
    ${aims.length === 0 ? nothing : html`<h3>${words.aims}</h3>`} ${aims.map((aim) => html`<p>${aimWords(aim)}</p>`)}
    ${
      kept.size === 0
        ? nothing
        : html`<h3>${words.keeps}</h3>
            <p>${words.keepsRight(right.size, kept.size)} ${missed === '' ? '' : words.keepsMissed(missed)}</p>`
    }
    ${
      why === ''
        ? nothing
        : html`<h3>${words.why}</h3>
            <p>${why}</p>`
    }
  </section>`;
}

/** How an aim stands, in a sentence. */
function aimWords({ name, rank, of }: AimStanding): string {
  if (rank === 0) return words.aimGone(name);
  return rank === 1 ? words.aimFirst(name) : words.aimRank(name, rank, of);
}

customElements.define('wr-warm-up-answer', WrWarmUpAnswer);
