import { css, html, LitElement, nothing } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';

/** `main`: the next step of a screen, one a screen. `plain`: the others. `quiet`: beside a text. `danger`: takes away. */
export type ButtonLook = 'main' | 'plain' | 'quiet' | 'danger';

/**
 * A button with words, listened to by `click`. `pressed` makes it a switch. `reason` says why it is
 * off; then it stays in the tab order, is announced as unavailable, and shows the reason below.
 */
export class WrButton extends LitElement {
  static override shadowRootOptions: ShadowRootInit = { ...LitElement.shadowRootOptions, delegatesFocus: true };

  static override properties = {
    look: { reflect: true },
    disabled: { type: Boolean, reflect: true },
    pressed: { type: Boolean },
    reason: {},
    label: {},
    keys: {},
    tabStop: { type: Boolean },
  };

  declare look: ButtonLook;
  declare disabled: boolean;
  /** Null: not a switch. */
  declare pressed: boolean | null;
  declare reason: string;
  /** Spoken instead of the words shown, which it must contain. */
  declare label: string;
  /** As `aria-keyshortcuts` wants it, for instance "Control+Z". */
  declare keys: string;
  /** Whether Tab stops here; a toolbar keeps one stop for all its buttons. */
  declare tabStop: boolean;

  static override styles = [
    sharedStyles,
    css`
      :host {
        display: inline-block;
      }
    `,
  ];

  constructor() {
    super();
    this.look = 'plain';
    this.disabled = false;
    this.pressed = null;
    this.reason = '';
    this.label = '';
    this.keys = '';
    this.tabStop = true;
    // A refused click must not reach the listeners of whoever holds the button.
    this.addEventListener('click', (event) => this.#refuse(event), { capture: true });
  }

  protected override render(): unknown {
    const off = this.reason !== '';
    return html`<button
        type="button"
        class=${this.look}
        ?disabled=${this.disabled}
        tabindex=${this.tabStop ? '0' : '-1'}
        aria-disabled=${off ? 'true' : 'false'}
        aria-pressed=${this.pressed === null ? nothing : String(this.pressed)}
        aria-label=${this.label || nothing}
        aria-keyshortcuts=${this.keys || nothing}
        aria-describedby=${off ? 'reason' : nothing}
      >
        <slot></slot></button
      >${off ? html`<span id="reason" class="reason">${this.reason}</span>` : ''}`;
  }

  #refuse(event: Event): void {
    if (this.reason === '' && !this.disabled) return;
    event.stopImmediatePropagation();
    event.preventDefault();
  }
}

customElements.define('wr-button', WrButton);

declare global {
  interface HTMLElementTagNameMap {
    'wr-button': WrButton;
  }
}
