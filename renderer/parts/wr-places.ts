import { css, html, LitElement } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';
import { partWords } from '../words/parts.ts';

export interface NavigationPlace {
  readonly id: string;
  readonly label: string;
  /** A hash route, for instance "#/journal". */
  readonly href: string;
}

/** The places of the window as plain links; the current one is marked by shape and for listeners. */
export class WrPlaces extends LitElement {
  static override properties = {
    places: { attribute: false },
    current: {},
    label: {},
  };

  declare places: readonly NavigationPlace[];
  /** The `id` of the place that is shown. */
  declare current: string;
  declare label: string;

  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }

      nav {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-1);
      }

      a {
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

      a:hover {
        background: var(--accent-wash);
      }

      a[aria-current='page'] {
        color: var(--accent);
      }

      /* The current place stands on a furrow. */
      a[aria-current='page']::after {
        position: absolute;
        inset: auto var(--room, 0.9em) 5px;
        height: 4px;
        border-radius: 2px;
        background: currentcolor;
        content: '';
      }

      @media (forced-colors: active) {
        a[aria-current='page']::after {
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
  }

  protected override render(): unknown {
    return html`<nav aria-label=${this.label}>
      ${this.places.map(
        ({ id, label, href }) =>
          html`<a href=${href} aria-current=${id === this.current ? 'page' : 'false'}>${label}</a>`,
      )}
    </nav>`;
  }
}

customElements.define('wr-places', WrPlaces);

declare global {
  interface HTMLElementTagNameMap {
    'wr-places': WrPlaces;
  }
}
