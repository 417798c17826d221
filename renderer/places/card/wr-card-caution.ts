import { html } from 'lit';
import type { CardCaution } from '../../../main/desk/desk.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-dialog.ts';
import type { PreferenceStore } from '../../session/preference-store.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';

const words = cardWords.caution;

const Base = element({
  preferences: data<PreferenceStore>(),
  /** The caution that is shown, and what follows once it was read. */
  shown: state<{ readonly about: CardCaution; readonly follow: () => void } | null>(null),
});

/** The caution about printed cards: shown once at entry, once at import, once at export. */
export class WrCardCaution extends Base {
  static override styles = [sharedStyles];

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
