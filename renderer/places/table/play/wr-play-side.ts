import { css, html, LitElement, nothing } from 'lit';
import { emit } from '../../../parts/emit.ts';
import '../../../parts/wr-button.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { playWords as words } from '../../../words/play.ts';
import { exchangeStyles } from '../exchange-styles.ts';
import { panelStyles } from '../panel-styles.ts';
import { passesSoFar } from '../passes-so-far.ts';
import { isPlayShown } from './discard-due.ts';
import './wr-advice-panel.ts';
import './wr-play-panel.ts';
import './wr-result-dialog.ts';
import './wr-result-panel.ts';

/** Beside the reading, once the exchange is behind: the log of play, or the result. Sends `passes-wanted`. */
export class WrPlaySide extends LitElement {
  static override properties = { app: { attribute: false } };

  declare app: AppContext;

  static override styles = [
    sharedStyles,
    panelStyles,
    exchangeStyles,
    css`
      .side {
        gap: var(--space-4);
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.app.session]);
  }

  /** Puts the focus on the field for the next tile, or on the way to the next game. */
  async focusFirst(): Promise<void> {
    await this.updateComplete;
    const panel = this.renderRoot.querySelector<WrPlaySidePanel>('wr-play-panel, wr-result-panel');
    await panel?.updateComplete;
    panel?.focus();
  }

  protected override render(): unknown {
    const { state } = this.app.session;
    return html`<div class="side stack">
      ${
        state.result === null
          ? html`<wr-play-panel .app=${this.app}></wr-play-panel>`
          : html`<wr-result-panel .app=${this.app}></wr-result-panel>`
      }
      ${isPlayShown(state) ? nothing : this.#back()} ${state.exchange === null ? nothing : passesSoFar(state.exchange)}
    </div>`;
  }

  #back(): unknown {
    return html`<div>
      <wr-button look="quiet" @click=${() => emit(this, 'passes-wanted', null)}>${words.backToPasses}</wr-button>
    </div>`;
  }
}

type WrPlaySidePanel = HTMLElement & { readonly updateComplete: Promise<boolean> };

customElements.define('wr-play-side', WrPlaySide);

declare global {
  interface HTMLElementTagNameMap {
    'wr-play-side': WrPlaySide;
  }
}
