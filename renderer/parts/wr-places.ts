import { css, html, LitElement } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';
import { partWords } from '../words/parts.ts';
import { tabLook } from './tab-look.ts';

export interface NavigationPlace {
  readonly id: string;
  readonly label: string;
  /** A hash route, for instance "#/journal". */
  readonly href: string;
}

/**
 * The places of the window, or the views of a place, as plain links; the current one is marked by shape and for
 * listeners. `look="tabs"` draws them as tabs.
 */
export class WrPlaces extends LitElement {
  static override properties = {
    places: { attribute: false },
    current: {},
    label: {},
    look: {},
  };

  declare places: readonly NavigationPlace[];
  /** The `id` of the place that is shown. */
  declare current: string;
  declare label: string;
  declare look: 'plain' | 'tabs';

  static override styles = [
    sharedStyles,
    tabLook,
    css`
      :host {
        display: block;
      }

      .places {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-1);
      }

      .place {
        position: relative;
        display: grid;
        place-items: center;
        min-height: var(--target-main);
        min-width: var(--target);
        padding: 0 var(--room, 0.9em);
        border-radius: var(--round);
        color: var(--ink);
        font-weight: 600;
        text-decoration: none;
      }

      .place:hover {
        background: var(--accent-wash);
      }

      .place[aria-current='page'] {
        color: var(--accent);
      }

      /* The current place stands on a furrow. */
      .place[aria-current='page']::after {
        position: absolute;
        inset: auto var(--room, 0.9em) 5px;
        height: 4px;
        border-radius: 2px;
        background: currentcolor;
        content: '';
      }

      @media (forced-colors: active) {
        .place[aria-current='page']::after {
          forced-color-adjust: none;
          background: Highlight;
        }
      }
    `,
  ];

  constructor() {
    super();
    this.places = [];
    this.current = '';
    this.label = partWords.places;
    this.look = 'plain';
  }

  protected override render(): unknown {
    return html`<nav class=${this.look === 'tabs' ? 'tabs' : 'places'} aria-label=${this.label}>
      ${this.places.map((place) => this.#link(place))}
    </nav>`;
  }

  #link({ id, label, href }: NavigationPlace): unknown {
    const current = id === this.current;
    const look = this.look === 'plain' ? 'place' : current ? 'tab current' : 'tab';
    return html`<a class=${look} href=${href} aria-current=${current ? 'page' : 'false'}>${label}</a>`;
  }
}

customElements.define('wr-places', WrPlaces);

declare global {
  interface HTMLElementTagNameMap {
    'wr-places': WrPlaces;
  }
}
