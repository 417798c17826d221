import { css, html, nothing, type PropertyValues } from 'lit';
import type { Pass } from '../../../core/exchange/state.ts';
import type { Correction } from '../../../core/game/correct.ts';
import { legalEvents } from '../../../core/game/legal.ts';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import { parseTiles } from '../../../core/tiles/text.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';
import { announce } from '../../parts/announcer.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/tile/wr-tile.ts';
import '../../parts/wr-button.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { tableWords } from '../../words/table.ts';
import { EntryAndTray } from './entry-and-tray.ts';
import { panelStyles } from './panel-styles.ts';

const words = tableWords.exchange;

/** A tile of an earlier step, picked to be corrected. */
type Picked = Omit<Correction, 'right'>;

const Base = element({
  app: data<AppContext>(),
  /** Whether the list is open; closed, none of its many tiles is drawn. */
  open: state(false),
  picked: state<Picked | null>(null),
});

/** The deal and the passes that are behind, with what was given and what came; a wrong tile can be corrected. */
export class WrPassesSoFar extends Base {
  static override styles = [
    sharedStyles,
    panelStyles,
    css`
      ol {
        padding: 0;
        list-style: none;
      }

      li {
        display: grid;
        gap: var(--space-1);
        padding-block: var(--space-2);
        border-top: 1px solid var(--hairline);
      }

      .small {
        --tile-width: 30px;
      }

      .tile {
        display: inline-grid;
        place-items: center;
        min-width: var(--target);
        min-height: var(--target);
        padding: 2px;
        border: 2px solid transparent;
        border-radius: var(--round);
        background: none;
        cursor: pointer;
      }

      .tile:hover,
      .tile[aria-pressed='true'] {
        border-color: var(--accent);
        background: var(--accent-wash);
      }

      .tiles {
        display: flex;
        flex-wrap: wrap;
      }

      @media (forced-colors: active) {
        .tile[aria-pressed='true'] {
          forced-color-adjust: none;
          border-color: Highlight;
          background: Highlight;
          color: HighlightText;
        }
      }
    `,
  ];

  readonly #entry = new EntryAndTray(this, { all: ([kind]) => (kind === undefined ? null : this.#correct(kind)) });
  /** Where the focus goes once this is drawn: a tile's key, or the field. */
  #focus = '';

  constructor() {
    super();
    new StoreController(this, () => [this.app.session]);
  }

  protected override render(): unknown {
    const { exchange } = this.app.session.state;
    if (exchange === null || exchange.passes.length === 0) return nothing;
    return html`<details class="passes" @toggle=${this.#toggled}>
      <summary>${words.passes}</summary>
      ${this.open ? this.#list(exchange.passes) : nothing}
    </details>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    if (this.#focus === 'field') void this.#focusField();
    else if (this.#focus !== '') this.renderRoot.querySelector<HTMLElement>(`[data-key="${this.#focus}"]`)?.focus();
    this.#focus = '';
  }

  async #focusField(): Promise<void> {
    const entry = this.renderRoot.querySelector('wr-entry');
    await entry?.updateComplete;
    entry?.focus();
  }

  #list(passes: readonly Pass[]): unknown {
    return html`<p class="soft">${words.correctHelp}</p>
      <ol>
        <li>${this.#tiles(words.dealt, { type: 'dealt' }, this.#dealt())}</li>
        ${passes.map(
          (pass) =>
            html`<li>
              <h3>${words.step[pass.step]}</h3>
              ${this.#tiles(words.gave, { type: 'gave', step: pass.step }, pass.given, blindWords(pass))}
              ${this.#tiles(words.got, { type: 'received', step: pass.step }, pass.received)}
            </li>`,
        )}
      </ol>`;
  }

  #dealt(): Tiles {
    const deal = this.app.session.events.find((event) => event.type === 'dealt');
    const tiles = parseTiles(deal?.tiles ?? '');
    return tiles.ok ? tiles.value : Tiles.none;
  }

  /** The tiles of one part of a step, and the way to correct the one that is picked right below them. */
  #tiles(title: string, of: Correction['of'], tiles: Tiles, more = ''): unknown {
    const { picked } = this;
    const isHere = picked !== null && keyOf({ ...picked, of }) === keyOf(picked);
    return html`<div class="row small">
        <span class="soft">${title}</span>
        <span class="tiles">${tiles.toKinds().map((kind) => this.#tile({ of, wrong: kind }))}</span>
        <span class="soft">${more}</span>
      </div>
      ${isHere ? this.#correction(picked) : nothing}`;
  }

  #tile(tile: Picked): unknown {
    const key = keyOf(tile);
    const isPicked = this.picked !== null && keyOf(this.picked) === key;
    return html`<button
      class="tile"
      data-key=${key}
      aria-pressed=${isPicked}
      aria-label=${words.correctLabel(nameOf(tile.wrong))}
      @click=${() => this.#pick(isPicked ? null : tile)}
    >
      <wr-tile .kind=${tile.wrong} aria-hidden="true"></wr-tile>
    </button>`;
  }

  #correction({ of, wrong }: Picked): unknown {
    const { state: game } = this.app.session;
    // What was really given is still in the rack by the log; what really came in is nowhere yet.
    const left = of.type === 'gave' ? game.rack : legalEvents(game).canCome;
    return html`<div class="stack">
      ${this.#entry.field({ label: words.correctWith(nameOf(wrong)), counts: [1] })}
      ${this.#entry.tray({ label: words.correctWith(nameOf(wrong)), left: left.toCounts() })}
      <div><wr-button look="quiet" @click=${() => this.#pick(null)}>${words.correctNot}</wr-button></div>
    </div>`;
  }

  #pick(picked: Picked | null): void {
    this.#entry.clear();
    this.#focus = picked === null ? (this.picked === null ? '' : keyOf(this.picked)) : 'field';
    this.picked = picked;
  }

  #correct(right: Kind): string | null {
    const { picked } = this;
    if (picked === null) return null;
    const corrected = this.app.session.correct({ ...picked, right });
    if (!corrected.ok) return corrected.problem.message;
    announce(words.corrected(nameOf(picked.wrong), nameOf(right)));
    this.#focus = keyOf({ ...picked, wrong: right });
    this.picked = null;
    return '';
  }

  readonly #toggled = ({ currentTarget }: Event): void => {
    this.open = currentTarget instanceof HTMLDetailsElement && currentTarget.open;
  };
}

function keyOf({ of, wrong }: Picked): string {
  return [of.type, 'step' in of ? of.step : '', wrong].join(' ');
}

function blindWords({ blind }: Pass): string {
  return blind > 0 ? words.unseen(blind) : '';
}

customElements.define('wr-passes-so-far', WrPassesSoFar);

declare global {
  interface HTMLElementTagNameMap {
    'wr-passes-so-far': WrPassesSoFar;
  }
}
