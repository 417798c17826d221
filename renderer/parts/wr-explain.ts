import { css, html, LitElement } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';

/**
 * A number that explains itself: `<wr-explain value="4 away" heading="Away">plain words</wr-explain>`.
 * The number is a button; it opens a popover with the words of the slot. Escape or a click beside closes it.
 */
export class WrExplain extends LitElement {
  static override shadowRootOptions: ShadowRootInit = { ...LitElement.shadowRootOptions, delegatesFocus: true };

  static override properties = {
    value: {},
    heading: {},
  };

  /** What is shown: the number with its unit. */
  declare value: string;
  /** What it is called. */
  declare heading: string;

  static override styles = [sharedStyles, css``];

  constructor() {
    super();
    this.value = '';
    this.heading = '';
  }

  protected override render(): unknown {
    return html`<button type="button" popovertarget="words" aria-label="${this.value}, explain ${this.heading}">
        ${this.value}
      </button>
      <div id="words" popover="auto" role="dialog" aria-label=${this.heading}>
        <strong>${this.heading}</strong>
        <slot></slot>
      </div>`;
  }
}

customElements.define('wr-explain', WrExplain);

declare global {
  interface HTMLElementTagNameMap {
    'wr-explain': WrExplain;
  }
}
