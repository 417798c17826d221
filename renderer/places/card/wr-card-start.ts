import { html, type PropertyValues } from 'lit';
import { element, flag, state } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-dialog.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { cardStyles } from './card-styles.ts';

const words = cardWords.start;

/** What `card-named` carries. */
export interface CardNamed {
  readonly title: string;
  readonly season: string;
}

const Base = element({
  open: flag(),
  cardTitle: state(''),
  season: state(''),
  error: state(''),
});

/** Asks for the title and season of a new card. Sends `card-named`, or `start-left`. */
export class WrCardStart extends Base {
  static override styles = [sharedStyles, cardStyles];

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('open') && this.open) {
      this.cardTitle = '';
      this.season = '';
      this.error = '';
    }
  }

  protected override render(): unknown {
    return html`<wr-dialog
      heading=${words.title}
      ?open=${this.open}
      @dialog-closed=${() => emit(this, 'start-left', null)}
    >
      <div class="stack" @keydown=${this.#onKey}>
        <wr-field
          label=${words.name}
          hint=${words.nameHint}
          .value=${this.cardTitle}
          error=${this.error}
          @field-typed=${this.#typedTitle}
        ></wr-field>
        <wr-field
          label=${words.season}
          hint=${words.seasonHint}
          .value=${this.season}
          @field-typed=${this.#typedSeason}
        ></wr-field>
      </div>
      <wr-button slot="actions" look="main" @click=${this.#go}>${words.go}</wr-button>
    </wr-dialog>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('open') && this.open) this.renderRoot.querySelector('wr-field')?.focus();
  }

  #typedTitle({ detail }: CustomEvent<FieldText>): void {
    this.cardTitle = detail.value;
  }

  #typedSeason({ detail }: CustomEvent<FieldText>): void {
    this.season = detail.value;
  }

  #onKey(event: KeyboardEvent): void {
    if (event.key === 'Enter') this.#go();
  }

  #go(): void {
    const title = this.cardTitle.trim();
    this.error = title === '' ? words.missing : '';
    if (title !== '') emit<CardNamed>(this, 'card-named', { title, season: this.season.trim() });
  }
}

customElements.define('wr-card-start', WrCardStart);
