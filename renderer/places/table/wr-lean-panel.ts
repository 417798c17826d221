import { css, html, LitElement } from 'lit';
import type { LeanShare } from '../../parts/shares.ts';
import '../../parts/wr-explain.ts';
import '../../parts/wr-lean.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { tableWords } from '../../words/table.ts';
import { panelStyles } from './panel-styles.ts';

/** How the rack leans: the shares of the card's sections, over the reading. */
export class WrLeanPanel extends LitElement {
  static override properties = { app: { attribute: false } };

  declare app: AppContext;

  static override styles = [
    sharedStyles,
    panelStyles,
    css`
      section {
        display: grid;
        grid-template-columns: auto minmax(0, 1fr);
        gap: var(--space-2);
      }

      /* Two rows, also before the first reading is there. */
      wr-lean {
        --lean-legend: 2.9em;
      }

      wr-explain {
        margin-block-start: -7px;
      }

      @container (max-width: 24rem) {
        section {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(
      this,
      () => [this.app.analysis],
      () => [this.app.analysis.reading.value],
    );
  }

  protected override render(): unknown {
    const { value } = this.app.analysis.reading;
    return html`<section aria-label=${tableWords.lean.title}>
      <wr-explain value=${tableWords.lean.title} heading=${tableWords.lean.heading}
        >${tableWords.lean.words}</wr-explain
      >
      <wr-lean label=${tableWords.lean.title} .shares=${mainShares(value?.lean ?? [])}></wr-lean>
    </section>`;
  }
}

/** Shares that are shown by themselves; more would be slivers. */
const SHOWN = 5;

/** The largest shares, and the others as one. */
function mainShares(lean: readonly LeanShare[]): LeanShare[] {
  if (lean.length <= SHOWN + 1) return [...lean];
  const others = lean.slice(SHOWN);
  const share = others.reduce((sum, { share: each }) => sum + each, 0);
  return [...lean.slice(0, SHOWN), { section: tableWords.lean.others(others.length), share }];
}

customElements.define('wr-lean-panel', WrLeanPanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-lean-panel': WrLeanPanel;
  }
}
