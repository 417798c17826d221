import { html, LitElement, nothing } from 'lit';
import { cache } from 'lit/directives/cache.js';
import type { ExchangeState } from '../../../core/exchange/state.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { playWords } from '../../words/play.ts';
import { tableWords } from '../../words/table.ts';
import { exchangeStyles } from './exchange-styles.ts';
import { panelStyles } from './panel-styles.ts';
import { passesSoFar } from './passes-so-far.ts';
import { stations } from './stations.ts';
import './wr-give-panel.ts';
import './wr-plan-panel.ts';
import './wr-receive-panel.ts';

const words = tableWords.exchange;

/** The exchange beside the reading: its steps, what is due now, and the passes so far. */
export class WrExchangePanel extends LitElement {
  static override properties = {
    app: { attribute: false },
    returnTo: { attribute: false },
  };

  declare app: AppContext;
  /** Where tiles of the tray may be dropped to be taken back. */
  declare returnTo: Element | null;

  static override styles = [sharedStyles, panelStyles, exchangeStyles];

  constructor() {
    super();
    this.returnTo = null;
    new StoreController(
      this,
      () => [this.app.session],
      () => [this.app.session.state],
    );
  }

  /** Puts the focus on the field for what came in. */
  async focusFirst(): Promise<void> {
    const panel = this.renderRoot.querySelector('wr-receive-panel');
    await panel?.updateComplete;
    panel?.focus();
  }

  protected override render(): unknown {
    const { exchange } = this.app.session.state;
    if (exchange === null) return html`<p class="soft">${words.nothingYet}</p>`;
    return html`<section class="exchange stack" aria-label=${words.title}>
      ${stations(exchange)} ${cache(this.#due(exchange))} ${this.#onward(exchange)} ${passesSoFar(exchange)}
      ${cache(this.#plan(exchange))}
    </section>`;
  }

  /** What was there for giving and receiving is kept and comes back: its many tiles are slow to make anew. */
  #due({ phase }: ExchangeState): unknown {
    if (phase === 'giving') return html`<wr-give-panel .app=${this.app} .returnTo=${this.returnTo}></wr-give-panel>`;
    if (phase === 'receiving') return html`<wr-receive-panel .app=${this.app}></wr-receive-panel>`;
    return nothing;
  }

  /** Passes need not be logged: the way to play past those that are due. */
  #onward({ phase }: ExchangeState): unknown {
    if (phase !== 'giving') return nothing;
    return html`<div class="row stop onward">
      <wr-button look="quiet" @click=${() => emit(this, 'play-wanted', null)}>${playWords.begin}</wr-button>
      <p class="soft">${playWords.beginHelp}</p>
    </div>`;
  }

  /** Last, because it grows as it is worked out: what has its place above keeps it. */
  #plan({ phase }: ExchangeState): unknown {
    return phase === 'giving' ? html`<wr-plan-panel .app=${this.app}></wr-plan-panel>` : nothing;
  }
}

customElements.define('wr-exchange-panel', WrExchangePanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-exchange-panel': WrExchangePanel;
  }
}
