import { html, LitElement, nothing } from 'lit';
import { legalEvents } from '../../../core/game/legal.ts';
import { JOKER, type Kind } from '../../../core/tiles/kinds.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import { formatTileList } from '../../../core/tiles/text.ts';
import { announce } from '../../parts/announcer.ts';
import '../../parts/wr-entry.ts';
import type { TypedTiles } from '../../parts/wr-entry.ts';
import '../../parts/wr-tray.ts';
import type { TilePicked } from '../../parts/wr-tray.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { tableWords } from '../../words/table.ts';
import { exchangeStyles } from './exchange-styles.ts';
import { panelStyles } from './panel-styles.ts';

const words = tableWords.exchange;
const JOKER_REASON: ReadonlyMap<Kind, string> = new Map([[JOKER, words.joker]]);

/** What came in, tile by tile; each tile is read at once. */
export class WrReceivePanel extends LitElement {
  static override properties = {
    app: { attribute: false },
    typed: { state: true },
    refusal: { state: true },
  };

  declare app: AppContext;
  declare typed: string;
  declare refusal: string;

  static override styles = [sharedStyles, panelStyles, exchangeStyles];

  constructor() {
    super();
    this.typed = '';
    this.refusal = '';
    new StoreController(
      this,
      () => [this.app.session],
      () => [this.app.session.state],
    );
  }

  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector('wr-entry')?.focus(options);
  }

  protected override render(): unknown {
    const { state } = this.app.session;
    const { receive, canCome } = legalEvents(state);
    if (receive === null) return nothing;
    const due = state.exchange?.passes.at(-1)?.given.size ?? receive.toCome;
    return html`<div class="stack">
      <div class="row spread">
        <h2>${words.receiveTitle[receive.step]}</h2>
        <span class="soft" role="status">${words.received(due - receive.toCome, due)}</span>
      </div>
      <wr-entry
        bare
        label=${words.typing}
        .value=${this.typed}
        .counts=${[1, 2, 3].slice(0, receive.toCome)}
        .refusal=${this.refusal}
        @tiles-typed=${this.#typedNow}
        @tiles-entered=${this.#entered}
      ></wr-entry>
      <wr-tray
        label=${words.tray}
        .left=${canCome.toCounts()}
        .reasons=${JOKER_REASON}
        @tile-picked=${({ detail }: CustomEvent<TilePicked>) => this.#take([detail.kind])}
      ></wr-tray>
    </div>`;
  }

  #typedNow({ detail }: CustomEvent<TypedTiles>): void {
    this.typed = detail.text;
    this.refusal = '';
  }

  #entered({ detail }: CustomEvent<TypedTiles>): void {
    if (this.#take(detail.kinds)) this.typed = '';
  }

  /** Takes tiles in one by one; a refused one is told and ends the row. */
  #take(kinds: readonly Kind[]): boolean {
    const { session } = this.app;
    for (const [place, kind] of kinds.entries()) {
      const step = session.state.exchange?.step;
      if (step === null || step === undefined) return false;
      const taken = session.apply({ type: 'received', step, tiles: formatTileList([kind]) });
      if (!taken.ok) {
        this.refusal = taken.problem.message;
        this.typed = formatTileList(kinds.slice(place));
        return false;
      }
      announce(words.tookIn(nameOf(kind)));
    }
    this.refusal = '';
    return true;
  }
}

customElements.define('wr-receive-panel', WrReceivePanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-receive-panel': WrReceivePanel;
  }
}
