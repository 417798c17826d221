import { css, html, LitElement, svg } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';

export interface LeanShare {
  readonly section: string;
  /** 0 to 1; all together 1. */
  readonly share: number;
}

/** How the reach is spread over the card's sections: a bar of patterned shares, with the same as a table. */
export class WrLean extends LitElement {
  static override properties = {
    shares: { attribute: false },
    label: {},
  };

  /** In the order in which they are to be drawn. */
  declare shares: readonly LeanShare[];
  declare label: string;

  static override styles = [sharedStyles, css``];

  constructor() {
    super();
    this.shares = [];
    this.label = 'Lean';
  }

  protected override render(): unknown {
    let from = 0;
    const bars = this.shares.map(({ share }, at) => {
      const x = from;
      from += share * 1000;
      return svg`<rect class="share p${at % 8}" x=${x} y="0" width=${share * 1000} height="28"></rect>`;
    });
    return html`<figure aria-label=${this.label}>
      <svg viewBox="0 0 1000 28" preserveAspectRatio="none" aria-hidden="true">${bars}</svg>
      <table>
        ${this.shares.map(
          ({ section, share }) =>
            html`<tr>
              <th scope="row">${section}</th>
              <td>${Math.round(share * 100)} %</td>
            </tr>`,
        )}
      </table>
    </figure>`;
  }
}

customElements.define('wr-lean', WrLean);

declare global {
  interface HTMLElementTagNameMap {
    'wr-lean': WrLean;
  }
}
