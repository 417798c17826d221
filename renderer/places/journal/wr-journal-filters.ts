import { css, html, nothing } from 'lit';
import type { JournalFilter } from '../../../core/journal/filter.ts';
import { SORT_FIELDS } from '../../../core/journal/filter.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { journalWords as words } from '../../words/journal.ts';
import { type FilterPick, filterPicks, filtersInUse } from './filter-options.ts';
import type { JournalStore } from './journal-store.ts';
import './wr-pick.ts';

const Base = element({
  store: data<JournalStore>(),
  open: state(false),
});

/** Search, filters and order of the list of games; all of it changes the store's filter. */
export class WrJournalFilters extends Base {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
        container-type: inline-size;
      }

      .search,
      .picks {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 13rem), 1fr));
        gap: var(--space-3) var(--space-4);
        align-items: end;
      }

      /* Nothing typed here can be wrong, so the room for a sentence about it is not needed. */
      wr-field {
        margin-bottom: -1.45rem;
      }

      .search wr-field {
        grid-column: span 2;
      }

      .buttons {
        margin-top: var(--space-4);
      }

      @container (width < 28rem) {
        .search wr-field {
          grid-column: auto;
        }
      }

      .picks {
        margin-top: var(--space-3);
        padding: var(--space-4);
        border: 1px solid var(--hairline);
        border-radius: var(--round);
        background: var(--paper);
      }

      .buttons {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2);
      }

      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.store]);
  }

  protected override render(): unknown {
    const { filter, sort } = this.store;
    const used = filtersInUse(filter);
    return html`<div class="search" role="search">
        <wr-field
          type="search"
          label=${words.search}
          hint=${words.searchHint}
          .value=${filter.words ?? ''}
          @field-typed=${({ detail }: CustomEvent<FieldText>) => this.#search(detail.value)}
        ></wr-field>
        <wr-pick
          label=${words.sort}
          .options=${SORT_FIELDS.map((field) => ({ value: field, label: words.sorts[field] }))}
          .value=${sort.field}
          @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => this.#sortBy(detail.value)}
        ></wr-pick>
        <wr-pick
          label=${words.direction}
          .options=${[
            { value: 'falling', label: words.falling[sort.field] },
            { value: 'rising', label: words.rising[sort.field] },
          ]}
          .value=${sort.rising ? 'rising' : 'falling'}
          @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) =>
            this.store.order({ ...sort, rising: detail.value === 'rising' })}
        ></wr-pick>
      </div>
      <div class="buttons">
        <wr-button .pressed=${this.open} @click=${this.#toggle}>${words.filters(used)}</wr-button>
        ${
          used > 0 || filter.words !== undefined
            ? html`<wr-button look="quiet" @click=${() => this.store.narrow({})}>${words.clear}</wr-button>`
            : nothing
        }
      </div>
      ${this.open ? this.#picks(filter) : nothing}`;
  }

  #picks(filter: JournalFilter): unknown {
    return html`<div class="picks" role="group" aria-label=${words.filters(0)}>
      ${this.#date(words.from, 'from', filter)} ${this.#date(words.to, 'to', filter)}
      ${filterPicks(this.store.games ?? [], filter).map((pick) => this.#pick(pick))}
      ${this.#away(words.awayLeast, 'least', filter)} ${this.#away(words.awayMost, 'most', filter)}
    </div>`;
  }

  #pick({ label, value, options, picked }: FilterPick): unknown {
    return html`<wr-pick
      label=${label}
      .options=${options}
      .value=${value}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => this.store.narrow(picked(detail.value))}
    ></wr-pick>`;
  }

  #date(label: string, field: 'from' | 'to', filter: JournalFilter): unknown {
    const { [field]: value = '', ...rest } = filter;
    return html`<wr-field
      type="date"
      label=${label}
      .value=${value}
      @field-changed=${({ detail }: CustomEvent<FieldText>) =>
        this.store.narrow(detail.value === '' ? rest : { ...rest, [field]: detail.value })}
    ></wr-field>`;
  }

  #away(label: string, end: 'least' | 'most', filter: JournalFilter): unknown {
    const { dealtAway, ...rest } = filter;
    const all = { least: 0, most: 14 };
    const value = dealtAway === undefined || dealtAway[end] === all[end] ? '' : String(dealtAway[end]);
    const change = (text: string): JournalFilter => {
      const next = { ...all, ...dealtAway, [end]: text === '' ? all[end] : Number(text) };
      return next.least === all.least && next.most === all.most ? rest : { ...rest, dealtAway: next };
    };
    return html`<wr-field
      type="number"
      label=${label}
      .value=${value}
      @field-changed=${({ detail }: CustomEvent<FieldText>) => this.store.narrow(change(detail.value))}
    ></wr-field>`;
  }

  readonly #toggle = (): void => {
    this.open = !this.open;
  };

  #search(text: string): void {
    const { words: _, ...rest } = this.store.filter;
    this.store.narrow(text.trim() === '' ? rest : { ...rest, words: text });
  }

  #sortBy(value: string): void {
    const field = SORT_FIELDS.find((each) => each === value);
    if (field !== undefined) this.store.order({ ...this.store.sort, field });
  }
}

customElements.define('wr-journal-filters', WrJournalFilters);
