import { css, html, LitElement } from 'lit';
import { type Kind, KINDS } from '../../core/tiles/kinds.ts';
import { nameOf } from '../../core/tiles/names.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { emit } from './emit.ts';
import './tile/wr-tile.ts';

/** What `tile-picked` carries. */
export interface TilePicked {
  readonly kind: Kind;
}

/** All 36 kinds to pick from, one click a tile, with how many are left. Sends `tile-picked`. */
export class WrTray extends LitElement {
  static override properties = {
    left: { attribute: false },
    reasons: { attribute: false },
    full: {},
    label: {},
  };

  /** How many of each kind can still be picked, by kind; 36 numbers. */
  declare left: ArrayLike<number>;
  /** Why a kind can't be picked (beyond that none is left), for those that can't. */
  declare reasons: ReadonlyMap<Kind, string>;
  /** Why nothing at all can be picked now; empty when something can. */
  declare full: string;
  declare label: string;

  static override styles = [sharedStyles, css``];

  constructor() {
    super();
    this.left = [];
    this.reasons = new Map();
    this.full = '';
    this.label = 'Tiles to pick from';
  }

  protected override render(): unknown {
    return html`<div role="group" aria-label=${this.label}>
      ${KINDS.map(
        (kind) =>
          html`<button
            type="button"
            aria-label="${nameOf(kind)}, ${this.left[kind] ?? 0} left"
            aria-disabled=${String(this.reasonAgainst(kind) !== '')}
            @click=${() => this.#pick(kind)}
          >
            <wr-tile .kind=${kind} aria-hidden="true"></wr-tile>
          </button>`,
      )}
    </div>`;
  }

  /** Why a kind can't be picked; empty when it can. */
  reasonAgainst(kind: Kind): string {
    if (this.full !== '') return this.full;
    const reason = this.reasons.get(kind);
    if (reason !== undefined) return reason;
    return (this.left[kind] ?? 0) > 0 ? '' : 'none left';
  }

  #pick(kind: Kind): void {
    if (this.reasonAgainst(kind) === '') emit<TilePicked>(this, 'tile-picked', { kind });
  }
}

customElements.define('wr-tray', WrTray);

declare global {
  interface HTMLElementTagNameMap {
    'wr-tray': WrTray;
  }
}
