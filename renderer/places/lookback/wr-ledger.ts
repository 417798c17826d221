import { css, html, LitElement } from 'lit';
import type { GameEvent } from '../../../core/game/events.ts';
import type { Ledger } from '../../../core/review/ledger.ts';
import '../../charts/wr-bars.ts';
import '../../charts/wr-course.ts';
import { paperStyles } from '../../charts/paper-styles.ts';
import { howCounted } from '../../parts/how-counted.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { countedWords } from '../../words/counted.ts';
import { lookbackWords } from '../../words/lookback.ts';
import { percent } from '../../words/numbers.ts';
import { courseTable, ledgerBars, ledgerCourse, ledgerTable, luckAndChoices, signed } from './ledger-charts.ts';
import { lookbackStyles } from './lookback-styles.ts';

const words = lookbackWords.ledger;

/** The ledger of a game: how luck and how choices moved the chance, adding up exactly. */
export class WrLedger extends LitElement {
  static override properties = {
    ledger: { attribute: false },
    events: { attribute: false },
    model: {},
  };

  declare ledger: Ledger;
  declare events: readonly GameEvent[];
  /** Where the model of reach has its numbers from. */
  declare model: string;

  static override styles = [
    sharedStyles,
    placeStyles,
    lookbackStyles,
    paperStyles,
    css`
      .sums {
        font-size: var(--text-lead);
        font-weight: 600;
      }
    `,
  ];

  protected override render(): unknown {
    const { ledger } = this;
    const { good, luck, choices } = luckAndChoices(ledger);
    return html`<section aria-labelledby="ledger">
      <h2 id="ledger">${words.title}</h2>
      <p>${words.lead(percent(ledger.start), percent(ledger.end))}</p>
      <p class="sums">${words.sums(signed(good), signed(luck), signed(choices))}</p>
      ${howCounted(countedWords.ledger)}
      <wr-bars
        label=${words.title}
        .rows=${ledgerBars(ledger)}
        .table=${ledgerTable(ledger)}
        .most=${10}
        brief
        .keys=${[
          { fill: 'stripes', label: words.luck },
          { fill: 'solid', label: words.choices },
          { fill: 'dots', label: words.average },
          { fill: 'outline', label: words.standing },
        ]}
      ></wr-bars>
      <p class="soft">${words.exact} ${words.model(this.model)}</p>
      <div class="screen">
        <h3>${words.course}</h3>
        <wr-course
          label=${words.course}
          shape="steps"
          .points=${ledgerCourse(ledger)}
          .table=${courseTable(ledger, this.events)}
          .most=${10}
        ></wr-course>
      </div>
    </section>`;
  }
}

customElements.define('wr-ledger', WrLedger);

declare global {
  interface HTMLElementTagNameMap {
    'wr-ledger': WrLedger;
  }
}
