import { css, html } from 'lit';
import { data, element } from '../../../parts/element.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { panelStyles } from '../panel-styles.ts';
import './wr-advice-panel.ts';
import './wr-open-jokers.ts';
import './wr-play-panel.ts';
import './wr-result-dialog.ts';
import './wr-result-panel.ts';
import '../wr-passes-so-far.ts';

const Base = element({
  app: data<AppContext>(),
});

/** Once the game is over: its result, and the passes that led to it. */
export class WrPlaySide extends Base {
  static override styles = [
    sharedStyles,
    panelStyles,
    css`
      :host {
        container-type: inline-size;
      }

      .side {
        gap: var(--space-4);
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.app.session]);
  }

  /** Puts the focus on the way to the next game. */
  async focusFirst(): Promise<void> {
    await this.updateComplete;
    const panel = this.renderRoot.querySelector('wr-result-panel');
    await panel?.updateComplete;
    panel?.focus();
  }

  protected override render(): unknown {
    return html`<div class="side stack">
      <wr-result-panel .app=${this.app}></wr-result-panel>
      <wr-passes-so-far .app=${this.app}></wr-passes-so-far>
    </div>`;
  }
}

customElements.define('wr-play-side', WrPlaySide);

declare global {
  interface HTMLElementTagNameMap {
    'wr-play-side': WrPlaySide;
  }
}
