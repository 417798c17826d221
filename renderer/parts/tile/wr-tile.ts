import { css, LitElement, type PropertyValues } from 'lit';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { partWords } from '../../words/parts.ts';
import { drawTile, type TileMark, type TileStanding, tileStyles } from './drawing.ts';

export type { TileMark, TileStanding } from './drawing.ts';

/**
 * One tile. Only draws: it is an image with a name, unless the part that holds it gives it another
 * role. `kind` null is a tile face down. Its width is that of `--tile-width` on any ancestor. Many
 * tiles that are one picture are drawn by `drawTile` itself.
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
    tileStyles,
    css`
      :host {
        display: inline-block;
        position: relative;
        width: var(--tile-width);
        aspect-ratio: 3 / 4;
        flex: none;
      }

      :host([selected]) .plate {
        border-color: var(--enamel-mark);
        box-shadow: 0 0 0 3px var(--accent);
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
      this.#internals.ariaLabel = this.label || (this.kind === null ? partWords.faceDown : nameOf(this.kind));
    }
  }

  protected override render(): unknown {
    return drawTile(this.kind, this.standing, this.mark);
  }
}

customElements.define('wr-tile', WrTile);

declare global {
  interface HTMLElementTagNameMap {
    'wr-tile': WrTile;
  }
}
