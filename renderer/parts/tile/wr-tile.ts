import { css, type PropertyValues } from 'lit';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { partWords } from '../../words/parts.ts';
import { element, flag, numeric, reflected, text } from '../element.ts';
import { drawTile, type TileMark, type TileStanding, tileStyles } from './drawing.ts';

export type { TileMark } from './drawing.ts';

const Base = element({
  kind: numeric<Kind | null>(null),
  mark: reflected(text<TileMark | null>(null)),
  standing: reflected(text<TileStanding>('whole')),
  selected: reflected(flag()),
  /** Spoken instead of the tile's name. */
  label: text(),
});

/**
 * One tile. Only draws: it is an image with a name, unless the part that holds it gives it another
 * role. `kind` null is a tile face down. Its width is that of `--tile-width` on any ancestor. Many
 * tiles that are one picture are drawn by `drawTile` itself.
 */
export class WrTile extends Base {
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
