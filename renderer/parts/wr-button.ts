import { css, html, nothing } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';
import { element, flag, reflected, text } from './element.ts';

/** `main`: the next step of a screen, one a screen. `plain`: the others. `quiet`: beside a text. `danger`: takes away. */
type ButtonLook = 'main' | 'plain' | 'quiet' | 'danger';

const Base = element({
  look: reflected(text<ButtonLook>('plain')),
  disabled: reflected(flag()),
  /** Null: not a switch. */
  pressed: flag(null),
  reason: text(),
  /** Spoken instead of the words shown, which it must contain. */
  label: text(),
  /** As `aria-keyshortcuts` wants it, for instance "Control+Z". */
  keys: text(),
  /** Whether Tab stops here; a toolbar keeps one stop for all its buttons. */
  tabStop: flag(true),
});

/**
 * A button with words, listened to by `click`. `pressed` makes it a switch. Off (`disabled`, or with
 * a `reason`, which is shown below) it is announced as unavailable and does nothing, but keeps its
 * place, its tab stop and the focus, so that no one is thrown off by the last undo.
 */
export class WrButton extends Base {
  static override shadowRootOptions: ShadowRootInit = { ...Base.shadowRootOptions, delegatesFocus: true };

  static override styles = [
    sharedStyles,
    css`
      :host {
        display: inline-block;
        max-width: 100%;
      }

      button {
        min-height: var(--target);
        min-width: var(--target);
        padding: 0.35em var(--room, min(1em, 5vw));
        border: var(--stroke) solid var(--edge);
        border-radius: var(--round);
        background: var(--sheet);
        color: var(--ink);
        font-weight: 600;
        line-height: 1.25;
        overflow-wrap: anywhere;
        cursor: pointer;
        transition: background var(--quick);
      }

      button:hover {
        background: var(--accent-wash);
        border-color: var(--accent);
      }

      button:active {
        background: var(--well);
      }

      .main {
        min-height: var(--target-main);
        padding-inline: min(1.4em, 5vw);
        border-color: var(--accent);
        background: var(--accent);
        color: var(--on-accent);
      }

      .main:hover {
        background: var(--accent-deep);
        border-color: var(--accent-deep);
      }

      .main:active {
        background: var(--accent);
      }

      .quiet {
        border-color: transparent;
        background: transparent;
        color: var(--accent);
        text-decoration: underline;
        text-decoration-thickness: 1px;
        text-underline-offset: 0.22em;
      }

      .danger {
        border-color: var(--bad);
        color: var(--bad);
      }

      .danger:hover {
        border-color: var(--bad);
        background: var(--bad-wash);
      }

      [aria-pressed='true'] {
        border-color: var(--accent);
        background: var(--accent-wash);
        box-shadow: inset 0 -4px 0 var(--accent);
      }

      [aria-disabled='true'],
      [aria-disabled='true']:hover {
        border: var(--stroke) dashed var(--edge);
        background: transparent;
        color: var(--ink-soft);
        cursor: not-allowed;
      }

      .quiet[aria-disabled='true'] {
        border-color: transparent;
        text-decoration: none;
      }

      .reason {
        display: block;
        margin-top: var(--space-1);
        color: var(--ink-soft);
        font-size: var(--text-small);
      }

      @media (forced-colors: active) {
        .main,
        [aria-pressed='true'] {
          forced-color-adjust: none;
          background: Highlight;
          color: HighlightText;
        }

        [aria-disabled='true'],
        [aria-disabled='true']:hover {
          border-color: GrayText;
          background: Canvas;
          color: GrayText;
        }
      }
    `,
  ];

  constructor() {
    super();
    // A refused click must not reach the listeners of whoever holds the button.
    this.addEventListener('click', (event) => this.#refuse(event), { capture: true });
  }

  protected override render(): unknown {
    const off = this.disabled || this.reason !== '';
    return html`<button
        type="button"
        class=${this.look}
        tabindex=${this.tabStop ? '0' : '-1'}
        aria-disabled=${off ? 'true' : 'false'}
        aria-pressed=${this.pressed === null ? nothing : String(this.pressed)}
        aria-label=${this.label || nothing}
        aria-keyshortcuts=${this.keys || nothing}
        aria-describedby=${this.reason ? 'reason' : nothing}
      >
        <slot></slot></button
      >${this.reason ? html`<span id="reason" class="reason">${this.reason}</span>` : ''}`;
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
