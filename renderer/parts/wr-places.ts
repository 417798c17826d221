import { css, html } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';
import { partWords } from '../words/parts.ts';
import { data, element, text } from './element.ts';
import { tabLook } from './tab-look.ts';

export interface NavigationPlace {
  readonly id: string;
  readonly label: string;
  /** A hash route, for instance "#/journal". */
  readonly href: string;
}

const Base = element({
  places: data<readonly NavigationPlace[]>(() => []),
  /** The `id` of the place that is shown. */
  current: text(),
  label: text(partWords.places),
  look: text<'plain' | 'tabs'>('plain'),
});

/**
 * The places of the window, or the views of a place, as plain links; the current one is marked by shape and for
 * listeners. `look="tabs"` draws them as tabs.
 */
export class WrPlaces extends Base {
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

  protected override render(): unknown {
    return html`<nav class=${this.look === 'tabs' ? 'tabs' : 'places'} aria-label=${this.label}>
      ${this.places.map((place) => this.#link(place))}
    </nav>`;
  }

  /** Puts the focus on the place that one is at. */
  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector<HTMLElement>('[aria-current=page]')?.focus(options);
  }

  #link({ id, label, href }: NavigationPlace): unknown {
    const current = id === this.current;
    const look = this.look === 'plain' ? 'place' : current ? 'tab current' : 'tab';
    return html`<a class=${look} href=${href} aria-current=${current ? 'page' : 'false'}>${label}</a>`;
  }
}

customElements.define('wr-places', WrPlaces);
