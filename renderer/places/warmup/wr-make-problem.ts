import { css, html, nothing } from 'lit';
import type { WarmUpItem } from '../../../core/warmup/item.ts';
import { codeOfItem } from '../../../core/warmup/problem-code.ts';
import { data, element, state, text } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-dialog.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { classWords } from '../../words/class.ts';
import { addressOfItem, type ItemGoal } from './item-route.ts';

const words = classWords.make;

const Base = element({
  item: data<WarmUpItem>(),
  /** The id of the game that it comes from; empty for none. */
  source: text(),
  asking: state(false),
  /** What was done last, in words. */
  status: state(''),
});

/** A button that makes a problem of a moment: its code, on a sheet, or on a screen, each one click further. */
export class WrMakeProblem extends Base {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: inline-block;
      }

      /* What the place says of its own buttons is not for those of the dialog. */
      wr-dialog {
        --room: initial;
      }

      p {
        margin: 0;
      }

      .code {
        font-family: var(--font-code);
        font-size: var(--text-title);
        overflow-wrap: anywhere;
      }

      .ways {
        align-items: center;
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-3);
      }

      .stack {
        display: flex;
        flex-direction: column;
        gap: var(--space-3);
      }

      .status {
        min-height: 1.45em;
      }
    `,
  ];

  protected override render(): unknown {
    return html`<wr-button look="quiet" @click=${this.#open}>${words.button}</wr-button>
      <wr-dialog heading=${words.title} ?open=${this.asking} @dialog-closed=${this.#close}>
        ${this.asking ? this.#ways() : nothing}
      </wr-dialog>`;
  }

  #ways(): unknown {
    return html`<div class="stack">
      <p>${words.lead}</p>
      <div>
        <p>${words.code}</p>
        <p class="code">${codeOfItem(this.item)}</p>
      </div>
      <div class="ways">
        <wr-button look="main" @click=${this.#copy}>${words.copy}</wr-button>
        <wr-button @click=${() => this.#go('sheet')}>${words.sheet}</wr-button>
        <wr-button @click=${() => this.#go('show')}>${words.show}</wr-button>
      </div>
      <p class="status" role="status">${this.status}</p>
    </div>`;
  }

  #open(): void {
    this.status = '';
    this.asking = true;
  }

  #close(): void {
    this.asking = false;
  }

  async #copy(): Promise<void> {
    try {
      await navigator.clipboard.writeText(codeOfItem(this.item));
      this.status = words.copied;
    } catch {
      this.status = words.notCopied;
    }
  }

  /** The dialog is closed before its page goes. */
  async #go(goal: ItemGoal): Promise<void> {
    // The window begins at the Table, without an address.
    const back = window.location.hash || '#/table';
    this.asking = false;
    await this.updateComplete;
    window.location.hash = addressOfItem(this.item, goal, this.source, back);
  }
}

customElements.define('wr-make-problem', WrMakeProblem);

declare global {
  interface HTMLElementTagNameMap {
    'wr-make-problem': WrMakeProblem;
  }
}
