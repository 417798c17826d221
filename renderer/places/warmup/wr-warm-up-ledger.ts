import { css, html, nothing } from 'lit';
import { PART_WORDS, wholeLedger } from '../../../core/review/ledger.ts';
import { isRight, type Judgement } from '../../../core/review/decision.ts';
import type { Review } from '../../../core/review/review.ts';
import { PASS_STEPS, type PassStep } from '../../../core/exchange/steps.ts';
import { kindsOf } from '../../../core/tiles/text.ts';
import { rackNow } from '../../../core/warmup/warm-up.ts';
import { data, element } from '../../parts/element.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { howCounted } from '../../parts/how-counted.ts';
import { columnStyles } from '../../tokens/layout.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { countedWords } from '../../words/counted.ts';
import { stepNames } from '../../words/sheets.ts';
import { warmUpWords } from '../../words/warmup.ts';
import { tileRow } from '../../parts/tile/tile-row.ts';
import type { PracticeRoom } from './practice-room.ts';
import type { EndedExchange } from './run-work.ts';
import type { Comparison, WarmUpRun } from './warm-up-run.ts';
import { warmUpStyles } from './warm-up-styles.ts';
import { differenceAlone, differenceInGames, inHundred, signed } from '../../words/numbers.ts';
import { practiceWords } from '../../words/practice.ts';

const words = warmUpWords.ledger;
const exchangeWords = practiceWords.exchange;

const Base = element({
  room: data<PracticeRoom>(),
  run: data<WarmUpRun>(),
});

/** The exchange at its end: the ledger, whose parts add up, and the verdict on each pass. */
export class WrWarmUpLedger extends Base {
  static override styles = [
    sharedStyles,
    warmUpStyles,
    columnStyles,
    css`
      /* Two columns stay side by side in a narrow window with large text. */
      table {
        font-size: min(1rem, max(16px, 7vw));
      }

      .two {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 18rem), 1fr));
        gap: var(--space-3);
      }

      .total {
        font-weight: 700;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  /** The button that was pressed is gone, so the focus moves to the heading. */
  protected override firstUpdated(): void {
    this.renderRoot.querySelector<HTMLElement>('.asked')?.focus();
  }

  protected override render(): unknown {
    const { ledger: review, comparison, isSettled } = this.run;
    return html`<h2 class="asked" tabindex="-1">${exchangeWords.title}</h2>
      ${isSettled && comparison !== null ? this.#compared(comparison) : nothing}
      ${isSettled && review !== null ? this.#figures(review) : nothing}
      ${isSettled && comparison !== null && review !== null ? nothing : this.#pending()}`;
  }

  /** How the player's passes came out beside Windrow's, on the same wall and with the same neighbours. */
  #compared({ mine, windrows }: Comparison): unknown {
    const gap = windrows.chance - mine.chance;
    const said =
      Math.abs(gap) < 0.005 ? exchangeWords.even : gap > 0 ? exchangeWords.ahead(gap) : exchangeWords.behind(-gap);
    return html`<p><strong data-compared>${said}</strong> ${exchangeWords.one}</p>
      <div class="two">${this.#ended(exchangeWords.yours, mine)} ${this.#ended(exchangeWords.windrows, windrows)}</div>
      <h3>${exchangeWords.passes}</h3>
      <div class="scroll" tabindex="0" role="group" aria-label=${exchangeWords.passes}>
        <table>
          <thead>
            <tr>
              <th scope="col">${exchangeWords.pass}</th>
              <th scope="col">${exchangeWords.yours}</th>
              <th scope="col">${exchangeWords.windrows}</th>
            </tr>
          </thead>
          <tbody>
            ${stepsOfBoth(mine, windrows).map(
              (step) =>
                html`<tr>
                  <th scope="row">${stepNames[step]}</th>
                  <td>${passAt(mine, step)}</td>
                  <td>${passAt(windrows, step)}</td>
                </tr>`,
            )}
          </tbody>
        </table>
      </div>`;
  }

  #ended(title: string, { warmUp, chance, reading }: EndedExchange): unknown {
    return html`<div class="panel">
      <h3>${title}</h3>
      <p>${exchangeWords.won(inHundred(chance))} ${exchangeWords.away(reading.away)}</p>
      ${tileRow(rackNow(warmUp).toKinds())}
    </div>`;
  }

  #pending(): unknown {
    const { working, refusal, ledger } = this.run;
    return html`<p role="status">${ledger === null ? words.pending : exchangeWords.pending}</p>
      <progress aria-label=${words.pending} max="1" .value=${working ?? 0}></progress>
      <p class="bad" role="alert">${refusal}</p>`;
  }

  #figures({ ledger }: Review): unknown {
    const { start, parts, end } = wholeLedger(ledger);
    const row = (name: string, amount: string, total = ''): unknown =>
      html`<tr class=${total}>
        <th scope="row">${name}</th>
        <td class="number">${amount}</td>
      </tr>`;
    return html`<h3>${words.title}</h3>
      <p class="soft">${words.lead}</p>
      ${howCounted(countedWords.ledger)}
      <table data-ledger>
        <tbody>
          ${row(words.start, String(start))} ${parts.map(({ kind, amount }) => row(PART_WORDS[kind], signed(amount)))}
          ${row(words.end, String(end), 'total')}
        </tbody>
      </table>
      <h3>${words.passes}</h3>
      <ol class="stack close">
        ${this.run.judged.map(
          ({ step, give, ...judgement }) =>
            html`<li class="row">
              <strong>${stepNames[step]}</strong>
              ${give === null ? html`<span>${words.stopped}</span>` : tileRow(kindsOf(give))}
              <span>${judgedWords(judgement)}</span>
            </li>`,
        )}
      </ol>`;
  }
}

/** The steps that either of the two came to, in their order. */
function stepsOfBoth(mine: EndedExchange, other: EndedExchange): PassStep[] {
  const made = [mine, other].flatMap(({ warmUp }) => warmUp.past.map(({ step }) => step));
  return PASS_STEPS.filter((step) => made.includes(step));
}

/** What was given at a step; a dash where it was not due. */
function passAt({ warmUp }: EndedExchange, step: PassStep): unknown {
  const past = warmUp.past.find((each) => each.step === step);
  if (past === undefined) return exchangeWords.nobody;
  const { stops, give, blind } = past.attempt;
  if (stops) return exchangeWords.stopped;
  return html`${tileRow(kindsOf(give))} ${blind > 0 ? warmUpWords.answer.blindNote(blind) : ''}`;
}

/** What a choice costs: "About 2 games in 100, give or take 1". */
function judgedWords({ verdict, cost, halfWidth }: Judgement): string {
  const size = warmUpWords.verdict(verdict, cost);
  if (cost === 0) return size;
  const amount = isRight(verdict) ? `${size}, ${differenceInGames(cost)}` : size;
  return halfWidth === null ? amount : warmUpWords.within(amount, differenceAlone(halfWidth));
}

customElements.define('wr-warm-up-ledger', WrWarmUpLedger);
