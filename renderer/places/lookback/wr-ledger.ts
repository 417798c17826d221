import { css, html } from 'lit';
import type { GameEvent } from '../../../core/game/events.ts';
import type { Ledger } from '../../../core/review/ledger.ts';
import { luckAndChoices } from '../../../core/review/story.ts';
import '../../charts/wr-bars.ts';
import '../../charts/wr-course.ts';
import { data, element, text } from '../../parts/element.ts';
import { howCounted } from '../../parts/how-counted.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { countedWords } from '../../words/counted.ts';
import { lookbackWords } from '../../words/lookback.ts';
import { signed } from '../../words/numbers.ts';
import { courseTable, ledgerBars, ledgerCourse, ledgerTable } from './ledger-charts.ts';
import { lookbackStyles } from './lookback-styles.ts';

const words = lookbackWords.ledger;

const Base = element({
  ledger: data<Ledger>(),
  events: data<readonly GameEvent[]>(),
  /** Where the model of reach has its numbers from. */
  model: text(),
});

/** The ledger of a game: how luck and how choices moved the chance, adding up exactly. */
export class WrLedger extends Base {
  static override styles = [
    sharedStyles,
    placeStyles,
    lookbackStyles,
    css`
      .sums {
        font-size: var(--text-lead);
        font-weight: 600;
      }
    `,
  ];

  protected override render(): unknown {
    const { ledger } = this;
    const { luck, choices } = luckAndChoices(ledger);
    return html`<section aria-labelledby="ledger">
      <h2 id="ledger">${words.title}</h2>
      <p>${words.lead(hundred(ledger.start), hundred(ledger.end))}</p>
      <p class="sums">${words.sums(signed(luck), signed(choices))}</p>
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
          { fill: 'outline', label: words.standing },
        ]}
      ></wr-bars>
      <p class="soft">${words.exact} ${words.model(this.model)}</p>
      <div>
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

function hundred(chance: number): string {
  return String(Math.round(100 * chance));
}

customElements.define('wr-ledger', WrLedger);
