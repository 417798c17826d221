import { css, html, LitElement } from 'lit';
import { nameOf } from '../../core/tiles/names.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { emit } from './emit.ts';
import type { RackTile } from './rack/rack-tile.ts';
import './tile/wr-tile.ts';

/** What `slots-returned` carries: tiles taken back to the rack. */
export interface SlotsReturned {
  readonly ids: readonly string[];
}

/**
 * The tray of a pass: a listbox of three places (or fewer). Left, Right, Home and End move; Delete,
 * Backspace or a click takes a tile back; Escape takes all back. Sends `slots-returned`.
 */
export class WrSlots extends LitElement {
  static override properties = {
    tiles: { attribute: false },
    places: { type: Number },
    blind: { type: Number },
    label: {},
    disabled: { type: Boolean },
  };

  declare tiles: readonly RackTile[];
  /** How many tiles this pass takes. */
  declare places: number;
  /** How many of them are handed on unseen. */
  declare blind: number;
  declare label: string;
  declare disabled: boolean;

  static override styles = [sharedStyles, css``];

  constructor() {
    super();
    this.tiles = [];
    this.places = 3;
    this.blind = 0;
    this.label = 'Tiles to give';
    this.disabled = false;
  }

  protected override render(): unknown {
    return html`<div role="listbox" aria-label=${this.label} aria-orientation="horizontal">
      ${this.tiles.map(
        (tile) =>
          html`<wr-tile
            role="option"
            aria-selected="false"
            aria-label=${nameOf(tile.kind)}
            tabindex="0"
            .kind=${tile.kind}
            @click=${() => this.#takeBack([tile.id])}
          ></wr-tile>`,
      )}
    </div>`;
  }

  #takeBack(ids: readonly string[]): void {
    if (!this.disabled && ids.length > 0) emit<SlotsReturned>(this, 'slots-returned', { ids });
  }
}

customElements.define('wr-slots', WrSlots);

declare global {
  interface HTMLElementTagNameMap {
    'wr-slots': WrSlots;
  }
}
