import { css, html, nothing } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';
import { partWords } from '../words/parts.ts';
import { element, flag, reflected, text } from './element.ts';
import { emit } from './emit.ts';
import './wr-button.ts';

type NoticeTone = 'info' | 'good' | 'warn' | 'bad';

const Base = element({
  tone: reflected(text<NoticeTone>('info')),
  /** Words of the button that fixes or undoes what it is about; empty for none. */
  action: text(),
  closable: flag(true),
});

/**
 * A message that stays until it is closed: what happened, what is safe, what to do (the slot), and
 * if `action` has words a button that does it; further buttons go into the slot `more`. Sends `notice-action` and `notice-closed`.
 */
export class WrNotice extends Base {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }

      .notice {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2) var(--space-3);
        padding: var(--space-2) var(--space-2) var(--space-2) var(--space-4);
        border: var(--stroke) solid var(--tone);
        border-inline-start-width: 8px;
        border-radius: var(--round);
        background: var(--wash);
        --tone: var(--accent);
        --wash: var(--accent-wash);
      }

      .good {
        --tone: var(--good);
        --wash: var(--good-wash);
      }

      .warn {
        --tone: var(--warn);
        --wash: var(--warn-wash);
      }

      .bad {
        --tone: var(--bad);
        --wash: var(--bad-wash);
      }

      .tone {
        color: var(--tone);
        font-weight: 700;
      }

      .words {
        flex: 1 1 min(14rem, 100%);
        min-width: 0;
        overflow-wrap: anywhere;
      }
    `,
  ];

  /** Puts the focus on the button that fixes or undoes, else on the one that closes, as soon as that is drawn. */
  override focus(options?: FocusOptions): void {
    void this.#focusFirst(options);
  }

  async #focusFirst(options?: FocusOptions): Promise<void> {
    await this.updateComplete;
    const button = this.renderRoot.querySelector('wr-button');
    await button?.updateComplete;
    button?.focus(options);
  }

  protected override render(): unknown {
    return html`<div class="notice ${this.tone}" role=${this.tone === 'bad' ? 'alert' : 'status'}>
      <span class="tone">${partWords.tones[this.tone]}</span>
      <div class="words"><slot></slot></div>
      ${this.action ? html`<wr-button @click=${this.#acted}>${this.action}</wr-button>` : nothing}
      <slot name="more"></slot>
      ${this.closable ? html`<wr-button look="quiet" @click=${this.#closed}>${partWords.close}</wr-button>` : nothing}
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
