import { css, html, LitElement, nothing } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';
import { emit } from './emit.ts';

export type NoticeTone = 'info' | 'good' | 'warn' | 'bad';

const TONE_WORDS: Readonly<Record<NoticeTone, string>> = {
  info: 'Note',
  good: 'Done',
  warn: 'Please look',
  bad: 'Something went wrong',
};

/**
 * A message that stays until it is closed: what happened, what is safe, what to do (the slot), and
 * if `action` has words a button that does it. Sends `notice-action` and `notice-closed`.
 */
export class WrNotice extends LitElement {
  static override properties = {
    tone: { reflect: true },
    action: {},
    closable: { type: Boolean },
  };

  declare tone: NoticeTone;
  /** Words of the button that mends or takes back; empty for none. */
  declare action: string;
  declare closable: boolean;

  static override styles = [sharedStyles, css``];

  constructor() {
    super();
    this.tone = 'info';
    this.action = '';
    this.closable = true;
  }

  protected override render(): unknown {
    return html`<div class="notice ${this.tone}" role=${this.tone === 'bad' ? 'alert' : 'status'}>
      <span class="tone">${TONE_WORDS[this.tone]}</span>
      <div class="words"><slot></slot></div>
      ${this.action ? html`<button type="button" @click=${this.#acted}>${this.action}</button>` : nothing}
      ${this.closable ? html`<button type="button" @click=${this.#closed}>Close</button>` : nothing}
    </div>`;
  }

  #acted(): void {
    emit(this, 'notice-action', null);
  }

  #closed(): void {
    emit(this, 'notice-closed', null);
  }
}

customElements.define('wr-notice', WrNotice);

declare global {
  interface HTMLElementTagNameMap {
    'wr-notice': WrNotice;
  }
}
