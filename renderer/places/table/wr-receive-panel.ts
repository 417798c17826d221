import { css, html, nothing } from 'lit';
import type { GameEvent } from '../../../core/game/events.ts';
import { legalEvents } from '../../../core/game/legal.ts';
import { JOKER, type Kind } from '../../../core/tiles/kinds.ts';
import { tileNames } from '../../../core/tiles/names.ts';
import { formatTileList } from '../../../core/tiles/text.ts';
import { announce } from '../../parts/announcer.ts';
import { data, element } from '../../parts/element.ts';
import '../../parts/tile/wr-tile.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { tableWords } from '../../words/table.ts';
import { EntryAndTray } from './entry-and-tray.ts';
import { isReadingWelcome } from './aids.ts';
import { bandStyles } from './band-styles.ts';
import { chancePart } from './chance-part.ts';
import { panelStyles } from './panel-styles.ts';
import { planStyles } from './plan-styles.ts';
import { stations } from './stations.ts';
import './wr-passes-so-far.ts';

const words = tableWords.exchange;
const JOKER_REASON: ReadonlyMap<Kind, string> = new Map([[JOKER, words.joker]]);

const Base = element({
  app: data<AppContext>(),
});

/** What came in, tile by tile: the places of the pass with the field beside them, and all tiles to click. Each is read at once. */
export class WrReceivePanel extends Base {
  static override styles = [
    sharedStyles,
    panelStyles,
    planStyles,
    bandStyles,
    css`
      .answer {
        grid-template-columns: auto minmax(0, 26rem);
        justify-content: start;
      }

      /* Very large type in a small window. */
      @container (max-width: 16rem) {
        .answer {
          grid-template-columns: minmax(0, 1fr);
        }
      }

      .places {
        display: flex;
        gap: var(--tile-gap);
        padding: 12px;
        border: var(--stroke) solid var(--hairline);
        border-radius: var(--round-large);
      }

      .place {
        width: var(--tile-width);
        aspect-ratio: 3 / 4;
      }

      .free {
        border: var(--stroke) dashed var(--accent);
        border-radius: calc(var(--tile-width) * 0.15);
      }

      @container (24rem < width < 33rem) {
        wr-tray {
          --tile-width: 40px;
        }
      }
    `,
  ];

  readonly #entry = new EntryAndTray(this, { all: (kinds) => this.#receive(kinds) });

  constructor() {
    super();
    new StoreController(
      this,
      () => [this.app.session, this.app.analysis],
      () => [this.app.session.state, this.app.analysis.chance],
    );
  }

  /** Puts the focus on the field. */
  async focusFirst(): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector('wr-entry')?.focus();
  }

  protected override render(): unknown {
    const { state } = this.app.session;
    const { receive, canCome } = legalEvents(state);
    if (receive === null) return nothing;
    const { exchange } = state;
    const last = exchange?.passes.at(-1);
    if (exchange === null || last === undefined) return nothing;
    const due = receive.toCome + last.received.size;
    const title = words.receiveTitle[receive.step];
    return html`<section class="band" aria-label=${title}>
        <div class="head">
          <h2>${title}</h2>
          ${stations(exchange)} ${isReadingWelcome(this.app) ? chancePart(this.app, null) : nothing}
        </div>
        <div class="answer">
          ${incoming(last.received.toKinds(), due)}
          <div class="typed">
            ${this.#entry.field({ label: words.typing, counts: [] })}
            <p class="soft" role="status">${words.received(due - receive.toCome, due)}</p>
            <p role="status">${this.app.draft.afterwards}</p>
          </div>
        </div>
      </section>
      <section class="side" aria-label=${words.tray}>
        <h2>${words.tray}</h2>
        ${this.#entry.tray({ label: words.tray, left: canCome.toCounts(), reasons: JOKER_REASON })}
        <wr-passes-so-far .app=${this.app}></wr-passes-so-far>
      </section>`;
  }

  /** Logs tiles that came in together, all or none, so that one undo takes them back; see `EntryAndTray`. */
  #receive(kinds: readonly Kind[]): string | null {
    const { session } = this.app;
    const step = session.state.exchange?.step;
    if (step === null || step === undefined) return null;
    const received: GameEvent = { type: 'received', step, tiles: formatTileList(kinds) };
    const done = session.apply(received);
    if (!done.ok) return done.problem.message;
    announce(words.tookIn(tileNames(kinds)));
    return '';
  }
}

/** The tiles that have come in, and the places of those to come. */
function incoming(kinds: readonly Kind[], due: number): unknown {
  const free = Math.max(0, due - kinds.length);
  return html`<div class="places" aria-hidden="true">
    ${kinds.map((kind) => html`<wr-tile class="place" .kind=${kind}></wr-tile>`)}
    ${Array.from({ length: free }, () => html`<span class="place free"></span>`)}
  </div>`;
}

customElements.define('wr-receive-panel', WrReceivePanel);

declare global {
  interface HTMLElementTagNameMap {
    'wr-receive-panel': WrReceivePanel;
  }
}
