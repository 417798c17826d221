import { css, html, nothing } from 'lit';
import { data, element } from '../../../parts/element.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { othersWords as words } from '../../../words/others.ts';
import { isAdviceWelcome } from '../aids.ts';
import { panelStyles } from '../panel-styles.ts';
import { failed } from '../work-part.ts';
import { seatRows, seatRowStyles } from './seat-row.ts';
import './wr-tile-risks.ts';

const Base = element({
  app: data<AppContext>(),
});

/** What each other seat can be playing, and what the own tiles risk. */
export class WrOthers extends Base {
  static override styles = [
    sharedStyles,
    panelStyles,
    seatRowStyles,
    css`
      .head {
        min-height: calc(var(--target) + 1px);
        border-bottom: 1px solid var(--hairline);
      }

      /* The room of the fold, which comes with the reading. */
      .risks {
        min-height: var(--target);
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.app.session, this.app.analysis]);
  }

  protected override render(): unknown {
    const { session, analysis } = this.app;
    const { status, value, message } = analysis.others;
    return html`<section aria-label=${words.title} aria-busy=${status === 'pending'}>
      <div class="row head"><h2>${words.title}</h2></div>
      ${status === 'failed' ? failed(words.failed, message, () => analysis.again()) : nothing}
      ${seatRows(session, value?.seats ?? [])}
      <div class="risks">
        ${value === null || !isAdviceWelcome(this.app) ? nothing : html`<wr-tile-risks .table=${session} .risks=${value.tiles}></wr-tile-risks>`}
      </div>
    </section>`;
  }
}

customElements.define('wr-others', WrOthers);
