import { css, html, type PropertyValues } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';
import { partWords } from '../words/parts.ts';
import { element, flag, reflected, text } from './element.ts';
import { emit } from './emit.ts';
import './wr-button.ts';

/** What `dialog-closed` carries: by the close button or Escape. Buttons in the `actions` slot close it by setting `open`. */
interface DialogClosed {
  readonly by: 'person';
}

const Base = element({
  open: reflected(flag()),
  heading: text(),
});

/**
 * A question or a form over the page: the native modal dialog with a heading, a body that
 * scrolls when it must, and actions. One that grows while it is open is given `--dialog-least`, the height that it has from the start, so that nothing moves.
 */
export class WrDialog extends Base {
  static override styles = [
    sharedStyles,
    css`
      dialog {
        /* In a narrow window with large text the words need the room more than the edges do. */
        --edges: min(var(--space-5), 4vw);
        width: min(var(--dialog-width, 38rem), 100vw - 1.5rem);
        min-height: min(var(--dialog-least, 0px), 100dvh - 1.5rem);
        max-height: calc(100dvh - 1.5rem);
        padding: 0;
        border: var(--stroke) solid var(--edge);
        border-radius: var(--round-large);
        background: var(--sheet);
        color: var(--ink);
        overflow: auto;
      }

      dialog[open] {
        display: flex;
        flex-direction: column;
      }

      dialog::backdrop {
        background: rgb(18 16 13 / 55%);
      }

      header,
      footer {
        flex: none;
      }

      header {
        display: flex;
        flex-wrap: wrap;
        align-items: start;
        justify-content: space-between;
        gap: var(--space-4);
        padding: var(--space-4) var(--edges) 0;
      }

      h2 {
        flex: 1 1 10rem;
        margin: 0.15em 0 0;
        font-size: min(var(--text-title), max(var(--text-small), 9vw));
        line-height: 1.25;
        text-wrap: balance;
        overflow-wrap: anywhere;
        min-width: 0;
      }

      .body {
        position: relative;
        flex: 1 1 auto;
        min-height: 3.5em;
        overflow: auto;
        padding: var(--space-3) var(--edges);
        overflow-wrap: anywhere;
      }

      footer {
        display: flex;
        flex-wrap: wrap;
        align-items: start;
        justify-content: end;
        gap: var(--space-3);
        padding: var(--space-2) var(--edges) var(--space-5);
      }

      /* In a low window there is no room for three parts: all of it scrolls. */
      @media (max-height: 44rem) {
        .body {
          flex: none;
          overflow: visible;
        }
      }

      ::slotted(p) {
        margin: 0 0 var(--space-3);
      }
    `,
  ];

  protected override render(): unknown {
    return html`<dialog aria-labelledby="heading" @cancel=${this.#cancelled}>
      <header>
        <h2 id="heading">${this.heading}</h2>
        <wr-button look="quiet" @click=${this.#closedByPerson}>${partWords.close}</wr-button>
      </header>
      <div class="body"><slot></slot></div>
      <footer><slot name="actions"></slot></footer>
    </dialog>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (!changed.has('open')) return;
    const dialog = this.renderRoot.querySelector('dialog');
    if (this.open && !dialog?.open) dialog?.showModal();
    if (!this.open && dialog?.open) dialog.close();
  }

  #cancelled(event: Event): void {
    event.preventDefault();
    this.#closedByPerson();
  }

  #closedByPerson(): void {
    this.open = false;
    emit<DialogClosed>(this, 'dialog-closed', { by: 'person' });
  }
}

customElements.define('wr-dialog', WrDialog);

declare global {
  interface HTMLElementTagNameMap {
    'wr-dialog': WrDialog;
  }
}
