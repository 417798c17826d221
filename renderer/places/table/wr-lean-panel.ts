import { css, html, LitElement } from 'lit';
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

  static override styles = [sharedStyles, panelStyles, css``];

  constructor() {
    super();
    new StoreController(this, () => [this.app.analysis]);
  }

  protected override render(): unknown {
    const { value } = this.app.analysis.reading;
    return html`<section aria-label=${tableWords.lean.title}>
      <wr-lean label=${tableWords.lean.title} .shares=${value?.lean ?? []}></wr-lean>
    </section>`;
  }
}

customElements.define('wr-lean-panel', WrLeanPanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-lean-panel': WrLeanPanel;
  }
}
