import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { templateContent } from 'lit/directives/template-content.js';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { partWords } from '../../words/parts.ts';
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
        flex: none;
      }

      /* Enamel stays enamel where the system sets all colours: its face is a picture. */
      .plate {
        position: absolute;
        inset: 0;
        border: var(--stroke) solid var(--enamel-edge);
        border-radius: calc(var(--tile-width) * 0.15);
        background: var(--enamel);
        forced-color-adjust: none;
      }

      svg {
        display: block;
        position: absolute;
        inset: 0;
        width: 100%;
        height: 100%;
      }

      .mark {
        fill: none;
        stroke: var(--enamel-mark);
        stroke-width: 2.6;
        stroke-linecap: round;
        stroke-linejoin: round;
      }

      :host([selected]) .plate {
        border-color: var(--enamel-mark);
        box-shadow: 0 0 0 3px var(--accent);
      }

      :host([standing='missing']) .plate {
        border: var(--stroke) dashed var(--edge);
        background: transparent;
      }

      :host([standing='missing']) svg {
        filter: var(--missing-filter);
        opacity: 0.72;
      }

      :host([standing='joker-held']) .plate {
        background: repeating-linear-gradient(135deg, var(--enamel) 0 4px, var(--enamel-hatch) 4px 6px);
      }

      :host([standing='joker-held']) .face {
        opacity: 0.5;
      }

      .badge {
        fill: var(--enamel-ink);
        stroke: var(--enamel);
        stroke-width: 5;
        paint-order: stroke;
      }

      :host([standing='ghost']) .plate {
        opacity: 0.4;
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
    return html`<div class="plate">
      <div class="face">${templateContent(this.kind === null ? backTemplate() : faceTemplate(this.kind))}</div>
      ${this.standing === 'joker-held' ? JOKER_BADGE : nothing} ${this.mark ? MARKS[this.mark] : nothing}
    </div>`;
  }
}

/** Told apart by shape: one bar, three rings, a zigzag. */
const MARKS: Readonly<Record<TileMark, unknown>> = {
  kept: html`<svg class="mark" viewBox="0 0 60 80" aria-hidden="true"><path d="M19 75H41" stroke-width="3.6" /></svg>`,
  spare: html`<svg class="mark" viewBox="0 0 60 80" aria-hidden="true">
    <path d="M20 73.2a1.8 1.8 0 1 0 .01 0M30 73.2a1.8 1.8 0 1 0 .01 0M40 73.2a1.8 1.8 0 1 0 .01 0" stroke-width="1.5" />
  </svg>`,
  strained: html`<svg class="mark" viewBox="0 0 60 80" aria-hidden="true">
    <path d="M16 76.5l4.7-4 4.7 4 4.7-4 4.7 4 4.7-4 4.7 4" stroke-width="2.2" />
  </svg>`,
};

/** The joker's star, over the tile that it stands for. */
const JOKER_BADGE = html`<svg class="badge" viewBox="0 0 60 80" aria-hidden="true">
  <path d="M44 46l3.4 8.1 8.7-1.1-5.3 7 5.3 7-8.7-1.1-3.4 8.1-3.4-8.1-8.7 1.1 5.3-7-5.3-7 8.7 1.1z" />
</svg>`;

customElements.define('wr-tile', WrTile);

declare global {
  interface HTMLElementTagNameMap {
    'wr-tile': WrTile;
  }
}
