import { css, html, LitElement, nothing } from 'lit';
import type { ExchangeState, Pass } from '../../../core/exchange/state.ts';
import type { Tiles } from '../../../core/tiles/tiles.ts';
import '../../parts/tile/wr-tile.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { tableWords } from '../../words/table.ts';
import { exchangeStyles } from './exchange-styles.ts';
import { panelStyles } from './panel-styles.ts';
import { stations } from './stations.ts';
import './wr-give-panel.ts';
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

  static override styles = [sharedStyles, panelStyles, exchangeStyles, css``];

  constructor() {
    super();
    this.returnTo = null;
    new StoreController(this, () => [this.app.session]);
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
      ${stations(exchange)} ${this.#due(exchange)} ${passesSoFar(exchange)}
    </section>`;
  }

  #due({ phase }: ExchangeState): unknown {
    if (phase === 'giving') return html`<wr-give-panel .app=${this.app} .returnTo=${this.returnTo}></wr-give-panel>`;
    if (phase === 'receiving') return html`<wr-receive-panel .app=${this.app}></wr-receive-panel>`;
    return html`<div class="over">
      <h2>${words.over}</h2>
      <p>${words.overWords}</p>
    </div>`;
  }
}

function passesSoFar({ passes }: ExchangeState): unknown {
  if (passes.length === 0) return nothing;
  return html`<details class="passes">
    <summary>${words.passes}</summary>
    <ol>
      ${passes.map(
        (pass) =>
          html`<li>
            <h3>${words.step[pass.step]}</h3>
            ${tilesRow(words.gave, pass.given, blindWords(pass))} ${tilesRow(words.got, pass.received, '')}
          </li>`,
      )}
    </ol>
  </details>`;
}

function blindWords({ blind }: Pass): string {
  return blind > 0 ? words.unseen(blind) : '';
}

function tilesRow(title: string, tiles: Tiles, more: string): unknown {
  return html`<div class="row small">
    <span class="soft">${title}</span>
    ${tiles.toKinds().map((kind) => html`<wr-tile .kind=${kind}></wr-tile>`)}
    <span class="soft">${more}</span>
  </div>`;
}

customElements.define('wr-exchange-panel', WrExchangePanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-exchange-panel': WrExchangePanel;
  }
}
