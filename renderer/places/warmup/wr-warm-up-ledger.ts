import { css, html, LitElement, nothing } from 'lit';
import { PART_KINDS } from '../../../core/review/ledger.ts';
import type { Review } from '../../../core/review/review.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { howCounted } from '../../parts/how-counted.ts';
import { columnStyles } from '../../tokens/layout.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { countedWords } from '../../words/counted.ts';
import { warmUpWords } from '../../words/warmup.ts';
import { judgedWords, nowWords } from '../../print/judged-words.ts';
import { kindsOf, tileRow } from './tile-row.ts';
import type { PracticeRoom } from './practice-room.ts';
import type { WarmUpRun } from './warm-up-run.ts';
import { warmUpStyles } from './warm-up-styles.ts';

const words = warmUpWords.ledger;

/** The exchange at its end: the ledger, whose parts add up, and the verdict on each pass. */
export class WrWarmUpLedger extends LitElement {
  static override properties = {
    room: { attribute: false },
    run: { attribute: false },
  };

  declare room: PracticeRoom;
  declare run: WarmUpRun;

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

  /** The button that was pressed is gone with its decision. */
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

  #figures({ ledger, deal }: Review): unknown {
    const row = (name: string, amount: string, total = ''): unknown =>
      html`<tr class=${total}>
        <th scope="row">${name}</th>
        <td class="number">${amount}</td>
      </tr>`;
    return html`<p class="soft">${words.lead}</p>
      ${howCounted(countedWords.ledger)}
      <table data-ledger>
        <tbody>
          ${row(words.start((200 * deal.error).toFixed(1)), (100 * ledger.start).toFixed(1))}
          ${PART_KINDS.map((kind) =>
            ledger.totals[kind] === 0 ? nothing : row(words.parts[kind], signed(ledger.totals[kind])),
          )}
          ${row(words.end, (100 * ledger.end).toFixed(1), 'total')}
        </tbody>
      </table>
      <h3>${words.passes}</h3>
      <ol class="stack close">
        ${this.run.told.map(
          ({ step, give, now, ...told }) =>
            html`<li class="row">
              <strong>${warmUpWords.steps[step]}</strong>
              ${give === null ? html`<span>${words.stopped}</span>` : tileRow(kindsOf(give))}
              <span>${judgedWords(told)}${now === null || told.halfWidth === null ? '' : ` (${nowWords(now)})`}</span>
            </li>`,
        )}
      </ol>`;
  }
}

function signed(amount: number): string {
  return `${amount < 0 ? '−' : '+'}${Math.abs(100 * amount).toFixed(1)}`;
}

customElements.define('wr-warm-up-ledger', WrWarmUpLedger);

declare global {
  interface HTMLElementTagNameMap {
    'wr-warm-up-ledger': WrWarmUpLedger;
  }
}
