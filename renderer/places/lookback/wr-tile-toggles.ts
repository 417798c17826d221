import { css, html } from 'lit';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import { data, element, state, text } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import { rove } from '../../parts/rove.ts';
import '../../parts/tile/wr-tile.ts';
import { sharedStyles } from '../../tokens/shared.ts';

/** What `toggles-changed` carries: the places that are chosen. */
export interface TogglesChanged {
  readonly chosen: readonly number[];
}

const Base = element({
  kinds: data<readonly Kind[]>(() => []),
  chosen: data<readonly number[]>(() => []),
  label: text(),
  active: state(0),
});

/** Tiles that can each be chosen or not; one tab stop, Left, Right, Home and End move. Sends `toggles-changed`. */
export class WrTileToggles extends Base {
  static override styles = [
    sharedStyles,
    css`
      div {
        display: flex;
        flex-wrap: wrap;
        gap: var(--tile-gap);
        padding-top: 10px;
      }

      button {
        display: block;
        width: var(--tile-width);
        padding: 0;
        border: 0;
        border-radius: calc(var(--tile-width) * 0.15);
        background: transparent;
        cursor: pointer;
      }

      wr-tile {
        display: block;
      }

      button:hover {
        box-shadow: 0 0 0 3px var(--accent);
      }

      [aria-pressed='true'] {
        transform: translateY(-10px);
        box-shadow:
          0 0 0 3px var(--accent),
          0 10px 0 -3px var(--accent);
      }
    `,
  ];

  protected override render(): unknown {
    return html`<div role="group" aria-label=${this.label} @keydown=${this.#onKey}>
      ${this.kinds.map((kind, place) => this.#tile(kind, place))}
    </div>`;
  }

  #tile(kind: Kind, place: number): unknown {
    return html`<button
      type="button"
      aria-pressed=${String(this.chosen.includes(place))}
      aria-label=${nameOf(kind)}
      tabindex=${place === Math.min(this.active, this.kinds.length - 1) ? '0' : '-1'}
      @click=${() => this.#toggle(place)}
      @focus=${() => (this.active = place)}
    >
      <wr-tile .kind=${kind} aria-hidden="true"></wr-tile>
    </button>`;
  }

  #toggle(place: number): void {
    this.chosen = this.chosen.includes(place)
      ? this.chosen.filter((other) => other !== place)
      : [...this.chosen, place];
    emit<TogglesChanged>(this, 'toggles-changed', { chosen: this.chosen });
  }

  #onKey(event: KeyboardEvent): void {
    const next = rove(event.key, this.active, this.kinds.length);
    if (next === null) return;
    event.preventDefault();
    this.renderRoot.querySelectorAll<HTMLElement>('button')[next]?.focus();
  }
}

customElements.define('wr-tile-toggles', WrTileToggles);
