import { css, html, nothing } from 'lit';
import { SEATS } from '../../../core/exchange/steps.ts';
import type { GameRecord } from '../../../core/game/record.ts';
import type { GameChange } from '../../../main/desk/desk.ts';
import { data, element, state } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { lookbackWords } from '../../words/lookback.ts';
import { lookbackStyles } from './lookback-styles.ts';

const words = lookbackWords.details;

/** What `details-changed` carries. */
export interface DetailsChanged {
  readonly change: GameChange;
}

const Base = element({
  record: data<GameRecord>(),
  /** Notes about the whole game. */
  notes: data<readonly string[]>(() => []),
  draft: state(''),
});

/** What a person may write about a game: place, tags, evening, names, notes. Sends `details-changed` and `note-written`. */
export class WrDetails extends Base {
  static override styles = [
    sharedStyles,
    placeStyles,
    lookbackStyles,
    css`
      .fields {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 16rem), 1fr));
        gap: 0 var(--space-4);
        align-items: end;
      }
    `,
  ];

  protected override render(): unknown {
    const { place, tags, evening = '', players = {} } = this.record;
    return html`<section aria-labelledby="details" class="screen">
      <h2 id="details">${words.title}</h2>
      <div class="fields">
        ${this.#field(words.place, place, '', (value) => ({ place: value }))}
        ${this.#field(words.tags, tags.join(', '), words.tagsHint, (value) => ({ tags: tagsIn(value) }))}
        ${this.#field(words.evening, evening, words.eveningHint, (value) => ({ evening: value }))}
      </div>
      <details>
        <summary>${words.names}</summary>
        <div class="fields">
          ${SEATS.map((seat) =>
            this.#field(seat, players[seat] ?? '', '', (value) => {
              const { [seat]: _, ...others } = players;
              return { players: value === '' ? others : { ...others, [seat]: value } };
            }),
          )}
        </div>
      </details>
      ${
        this.notes.length === 0
          ? nothing
          : html`<h3>${words.notes}</h3>
              <ul>
                ${this.notes.map((note) => html`<li>${note}</li>`)}
              </ul>`
      }
      <div>
        <wr-field label=${words.note} .lines=${2} .value=${this.draft} @field-typed=${this.#typed}></wr-field>
        <wr-button ?disabled=${this.draft.trim() === ''} @click=${() => this.#write()}
          >${lookbackWords.notes.keep}</wr-button
        >
      </div>
    </section>`;
  }

  #field(label: string, value: string, hint: string, change: (value: string) => GameChange): unknown {
    return html`<wr-field
      label=${label}
      hint=${hint}
      .value=${value}
      @field-changed=${({ detail }: CustomEvent<FieldText>) =>
        emit<DetailsChanged>(this, 'details-changed', { change: change(detail.value.trim()) })}
    ></wr-field>`;
  }

  readonly #typed = ({ detail }: CustomEvent<FieldText>): void => {
    this.draft = detail.value;
  };

  #write(): void {
    emit(this, 'note-written', { text: this.draft.trim() });
    this.draft = '';
  }
}

/** Words between commas, each once. */
function tagsIn(text: string): string[] {
  return [...new Set(text.split(',').map((tag) => tag.trim().slice(0, 60)))].filter((tag) => tag !== '').slice(0, 50);
}

customElements.define('wr-details', WrDetails);
