import { css, html } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';
import { element, text } from './element.ts';
import { rove } from './rove.ts';
import type { WrButton } from './wr-button.ts';
import './wr-button.ts';

const Base = element({
  label: text(),
});

/** A row of `wr-button`s that is one tab stop; Left, Right, Home and End move within it (APG toolbar). */
export class WrToolbar extends Base {
  static override styles = [
    sharedStyles,
    css`
      div {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2);
      }
    `,
  ];

  protected override render(): unknown {
    return html`<div role="toolbar" aria-label=${this.label} @keydown=${this.#onKey} @focusin=${this.#onFocus}>
      <slot @slotchange=${this.#settle}></slot>
    </div>`;
  }

  #buttons(): WrButton[] {
    return [...this.querySelectorAll('wr-button')];
  }

  #settle(): void {
    const buttons = this.#buttons();
    const stop = buttons.find((button) => button.tabStop && button.matches(':focus-within')) ?? buttons[0];
    this.#stopAt(stop);
  }

  #onFocus(event: FocusEvent): void {
    this.#stopAt(this.#buttons().find((button) => button === event.target));
  }

  #onKey(event: KeyboardEvent): void {
    const buttons = this.#buttons();
    const at = buttons.findIndex((button) => button.matches(':focus-within'));
    const next = at < 0 ? null : rove(event.key, at, buttons.length, 'round');
    if (next === null) return;
    event.preventDefault();
    this.#stopAt(buttons[next]);
    buttons[next]?.focus();
  }

  #stopAt(stop: WrButton | undefined): void {
    if (!stop) return;
    for (const button of this.querySelectorAll('wr-button')) button.tabStop = button === stop;
  }
}

customElements.define('wr-toolbar', WrToolbar);
