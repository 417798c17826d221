import { html, LitElement } from 'lit';
import type { CardCaution } from '../../../main/desk/desk.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-dialog.ts';
import type { PreferenceStore } from '../../session/preference-store.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';

const words = cardWords.caution;

/** The caution about printed cards: shown once at entry, once at import, once at export. */
export class WrCardCaution extends LitElement {
  static override properties = {
    preferences: { attribute: false },
    shown: { state: true },
  };

  declare preferences: PreferenceStore;
  /** The caution that is shown, and what follows once it was read. */
  declare protected shown: { readonly about: CardCaution; readonly follow: () => void } | null;

  static override styles = [sharedStyles];

  constructor() {
    super();
    this.shown = null;
  }

  get open(): boolean {
    return this.shown !== null;
  }

  /** Shows the caution and then goes on; goes on at once if it was shown before. */
  warn(about: CardCaution, follow: () => void): void {
    if (this.preferences.values.cautionsSeen.includes(about)) follow();
    else this.shown = { about, follow };
  }

  protected override render(): unknown {
    return html`<wr-dialog heading=${words.title} ?open=${this.shown !== null} @dialog-closed=${this.#leave}>
      <p>${words.words[this.shown?.about ?? 'entry']}</p>
      <p>${words.rest}</p>
      <wr-button slot="actions" look="main" @click=${this.#agree}>${words.agree}</wr-button>
    </wr-dialog>`;
  }

  #leave(): void {
    this.shown = null;
  }

  #agree(): void {
    const { shown, preferences } = this;
    if (shown === null) return;
    this.shown = null;
    void preferences.change({ cautionsSeen: [...preferences.values.cautionsSeen, shown.about] });
    shown.follow();
  }
}

customElements.define('wr-card-caution', WrCardCaution);

declare global {
  interface HTMLElementTagNameMap {
    'wr-card-caution': WrCardCaution;
  }
}
