import { css, html, type PropertyValues } from 'lit';
import type { CardEntry } from '../../../main/desk/desk.ts';
import { data, element, flag, state } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-dialog.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { cardFacts, isAlike } from '../../words/card-names.ts';
import { cardStyles } from './card-styles.ts';

const words = cardWords.start;

/** What `card-named` carries. */
export interface CardNamed {
  readonly title: string;
  readonly season: string;
}

const Base = element({
  open: flag(),
  /** The cards there are. */
  entries: data<readonly CardEntry[]>(() => []),
  cardTitle: state(''),
  season: state(''),
  error: state(''),
});

/** Asks for the title and season of a new card. Sends `card-named`, or `start-left`. */
export class WrCardStart extends Base {
  static override styles = [
    sharedStyles,
    cardStyles,
    css`
      /* Its place is kept free, so that the button below does not move. */
      .taken {
        min-height: calc(2 * 1lh);
        font-weight: 600;
      }
    `,
  ];

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
        <p class="taken" role="status">${this.#taken()}</p>
      </div>
      <wr-button slot="actions" look="main" @click=${this.#go}>${words.go}</wr-button>
    </wr-dialog>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('open') && this.open) this.renderRoot.querySelector('wr-field')?.focus();
  }

  /** That there is a card of this title and season, in words; empty if there is none. */
  #taken(): string {
    const names = { title: this.cardTitle, season: this.season };
    const entry = this.entries.find((each) => isAlike(each, names));
    return entry === undefined ? '' : words.taken(cardFacts(entry, this.entries));
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
