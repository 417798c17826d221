import { css, html, LitElement, type PropertyValues } from 'lit';
import { nameOf } from '../../../core/tiles/names.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { emit } from '../emit.ts';
import { orderOf, plainLayout, reconcile, type RackLayout } from './rack-layout.ts';
import type { RackTile } from './rack-tile.ts';
import '../tile/wr-tile.ts';

/** What `rack-reordered` carries: the order, and the whole layout to keep. */
export interface RackReordered {
  readonly ids: readonly string[];
  readonly layout: RackLayout;
}

/** What `rack-selected` (all that are selected now) and `rack-sent` (those to give) carry. */
export interface RackIds {
  readonly ids: readonly string[];
}

/**
 * The rack: a rearrangeable listbox. It owns nothing: tiles and layout come in, `rack-reordered`,
 * `rack-selected` and `rack-sent` go out. It shows a move at once and is put right by what comes in next.
 */
export class WrRack extends LitElement {
  static override properties = {
    tiles: { attribute: false },
    layout: { attribute: false },
    tiers: { type: Number },
    selected: { attribute: false },
    limit: { type: Number },
    label: {},
    sendTo: { attribute: false },
  };

  /** The tiles, each with an identity of its own. */
  declare tiles: readonly RackTile[];
  /** How they lie; null for one group in the order of `tiles`. Tiles that it lacks are added at its end. */
  declare layout: RackLayout | null;
  declare tiers: 1 | 2;
  /** The tiles chosen, by id. */
  declare selected: readonly string[];
  /** How many may be selected at once. */
  declare limit: number;
  declare label: string;
  /** A tile dragged onto this element is sent, as Enter sends the selected. */
  declare sendTo: Element | null;

  static override styles = [sharedStyles, css``];

  constructor() {
    super();
    this.tiles = [];
    this.layout = null;
    this.tiers = 1;
    this.selected = [];
    this.limit = 3;
    this.label = 'Your rack';
    this.sendTo = null;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('tiles') && !changed.has('layout') && !changed.has('tiers')) return;
    const ids = this.tiles.map(({ id }) => id);
    this.layout = this.layout ? reconcile(this.layout, ids, this.tiers) : plainLayout(ids, this.tiers);
    this.selected = this.selected.filter((id) => ids.includes(id));
  }

  protected override render(): unknown {
    const byId = new Map(this.tiles.map((tile) => [tile.id, tile]));
    return html`<div role="listbox" aria-label=${this.label} aria-multiselectable="true" aria-orientation="horizontal">
      ${orderOf(this.layout ?? []).map((id) => this.#tile(byId.get(id)))}
    </div>`;
  }

  #tile(tile: RackTile | undefined): unknown {
    if (!tile) return '';
    const selected = this.selected.includes(tile.id);
    return html`<wr-tile
      role="option"
      tabindex="0"
      aria-selected=${String(selected)}
      aria-label=${nameOf(tile.kind)}
      .kind=${tile.kind}
      .mark=${tile.mark ?? null}
      ?selected=${selected}
      @click=${() => this.#toggle(tile.id)}
    ></wr-tile>`;
  }

  #toggle(id: string): void {
    this.selected = this.selected.includes(id) ? this.selected.filter((other) => other !== id) : [...this.selected, id];
    emit<RackIds>(this, 'rack-selected', { ids: this.selected });
  }
}

customElements.define('wr-rack', WrRack);

declare global {
  interface HTMLElementTagNameMap {
    'wr-rack': WrRack;
  }
}
