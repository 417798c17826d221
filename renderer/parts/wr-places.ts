import { css, html, LitElement } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';

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

  static override styles = [sharedStyles, css``];

  constructor() {
    super();
    this.places = [];
    this.current = '';
    this.label = 'Places';
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
