import { css, html, LitElement, type PropertyValues } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';
import { emit } from './emit.ts';

/** What `dialog-closed` carries: by the close button or Escape. Buttons in the `actions` slot close it by setting `open`. */
export interface DialogClosed {
  readonly by: 'person';
}

/** A question or a form over the page: the native modal dialog with a heading, a body and actions. */
export class WrDialog extends LitElement {
  static override properties = {
    open: { type: Boolean, reflect: true },
    heading: {},
  };

  declare open: boolean;
  declare heading: string;

  static override styles = [sharedStyles, css``];

  constructor() {
    super();
    this.open = false;
    this.heading = '';
  }

  protected override render(): unknown {
    return html`<dialog aria-labelledby="heading" @cancel=${this.#cancelled}>
      <header>
        <h2 id="heading">${this.heading}</h2>
        <button type="button" class="close" @click=${this.#closedByPerson}>Close</button>
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
