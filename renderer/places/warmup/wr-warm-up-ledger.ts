import { css, html } from 'lit';
import { PART_WORDS, wholeLedger } from '../../../core/review/ledger.ts';
import type { Review } from '../../../core/review/review.ts';
import { kindsOf } from '../../../core/tiles/text.ts';
import { data, element } from '../../parts/element.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { howCounted } from '../../parts/how-counted.ts';
import { columnStyles } from '../../tokens/layout.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { countedWords } from '../../words/counted.ts';
import { warmUpWords } from '../../words/warmup.ts';
import { judgedWords, nowWords } from '../../print/judged.ts';
import { tileRow } from '../../parts/tile/tile-row.ts';
import type { PracticeRoom } from './practice-room.ts';
import type { WarmUpRun } from './warm-up-run.ts';
import { warmUpStyles } from './warm-up-styles.ts';
import { signed } from '../../words/numbers.ts';

const words = warmUpWords.ledger;

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
    const { ledger: review } = this.run;
    return html`<h2 class="asked" tabindex="-1">${words.title}</h2>
      ${review === null ? this.#pending() : this.#figures(review)}`;
  }

  #pending(): unknown {
    const { working, refusal } = this.run;
    return html`<p role="status">${words.pending}</p>
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
    return html`<p class="soft">${words.lead}</p>
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
          ({ step, give, now, ...judgement }) =>
            html`<li class="row">
              <strong>${warmUpWords.steps[step]}</strong>
              ${give === null ? html`<span>${words.stopped}</span>` : tileRow(kindsOf(give))}
              <span
                >${judgedWords(judgement)}${now === null || judgement.halfWidth === null ? '' : ` (${nowWords(now)})`}</span
              >
            </li>`,
        )}
      </ol>`;
  }
}

customElements.define('wr-warm-up-ledger', WrWarmUpLedger);
