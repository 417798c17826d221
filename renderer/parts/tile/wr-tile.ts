import { css, html, LitElement, type PropertyValues } from 'lit';
import { templateContent } from 'lit/directives/template-content.js';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { backTemplate, faceTemplate } from './faces.ts';

/** What a tile is to the reading: kept for it, spare, or wanted by two targets at once. */
export type TileMark = 'kept' | 'spare' | 'strained';

/**
 * How a tile stands: whole, held by a joker that stands for it, still missing, or a ghost (the
 * place that a dragged tile has left).
 */
export type TileStanding = 'whole' | 'joker-held' | 'missing' | 'ghost';

/**
 * One tile. Only draws: it is an image with a name, unless the part that holds it gives it another
 * role. `kind` null is a tile face down. Its width is that of `--tile-width` on any ancestor.
 */
export class WrTile extends LitElement {
  static override properties = {
    kind: { type: Number },
    mark: { reflect: true },
    standing: { reflect: true },
    selected: { type: Boolean, reflect: true },
    label: {},
  };

  declare kind: Kind | null;
  declare mark: TileMark | null;
  declare standing: TileStanding;
  declare selected: boolean;
  /** Spoken instead of the tile's name. */
  declare label: string;

  static override styles = [
    sharedStyles,
    css`
      :host {
        display: inline-block;
        position: relative;
        width: var(--tile-width);
        aspect-ratio: 3 / 4;
      }
    `,
  ];

  readonly #internals = this.attachInternals();

  constructor() {
    super();
    this.kind = null;
    this.mark = null;
    this.standing = 'whole';
    this.selected = false;
    this.label = '';
    this.#internals.role = 'img';
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('kind') || changed.has('label')) {
      this.#internals.ariaLabel = this.label || (this.kind === null ? 'tile face down' : nameOf(this.kind));
    }
  }

  protected override render(): unknown {
    return html`<div class="plate">
      ${templateContent(this.kind === null ? backTemplate() : faceTemplate(this.kind))}
    </div>`;
  }
}

customElements.define('wr-tile', WrTile);

declare global {
  interface HTMLElementTagNameMap {
    'wr-tile': WrTile;
  }
}
