import { css, html, nothing, type PropertyValues } from 'lit';
import { type CardDocument, type LinePlace, sectionName, textField } from '../../../core/card/document.ts';
import { findLines } from '../../../core/card/find.ts';
import { data, element, state } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import { rove } from '../../parts/rove.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import type { TabChosen } from '../../parts/wr-tabs.ts';
import { printCard } from '../../print/wr-card-paper.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import type { Selection } from './card-editor.ts';
import type { CardRoom } from './card-room.ts';
import { cardStyles } from './card-styles.ts';
import { wholeLine } from './whole-line.ts';

const words = cardWords.whole;

const Base = element({
  room: data<CardRoom>(),
  /** What is looked for. */
  wanted: state(''),
  /** The line that Tab leads to, counted over those that are shown. */
  current: state(0),
});

/**
 * The whole card on one page, to read, to find a line in, and to print. The lines are one tab stop:
 * Up, Down, Home and End go through them. Sends `line-shown` with a `Selection`.
 */
export class WrCardWhole extends Base {
  static override styles = [
    sharedStyles,
    cardStyles,
    css`
      :host {
        container-type: inline-size;
      }

      .head {
        display: flex;
        flex-wrap: wrap;
        align-items: end;
        gap: var(--space-2) var(--space-4);
      }

      wr-field {
        flex: 0 1 24rem;
        min-width: 0;
        /* Nothing can be wrong with what is looked for: that room is not needed. */
        margin-bottom: -1.45em;
      }

      .found {
        flex: 1 1 10rem;
        padding-bottom: 0.6rem;
      }

      .titled {
        font-size: var(--text-title);
        line-height: 1.25;
        overflow-wrap: anywhere;
      }

      .titled .soft {
        font-weight: 400;
      }

      .sections {
        column-width: 27rem;
        column-gap: var(--space-5);
      }

      section {
        break-inside: avoid-column;
        padding-bottom: var(--space-4);
      }

      h3 {
        padding-bottom: var(--space-1);
        border-bottom: var(--stroke) solid var(--edge);
        font-size: var(--text-lead);
        break-after: avoid;
        overflow-wrap: anywhere;
      }

      li {
        position: relative;
        break-inside: avoid;
        border-bottom: 1px solid var(--hairline);
      }

      li button {
        display: grid;
        grid-template-columns: 1.6em minmax(0, 1fr) 1.2em 2.2em;
        gap: 0 var(--space-2);
        align-items: baseline;
        width: 100%;
        min-height: var(--target);
        padding: var(--space-1) var(--space-2);
        border: 0;
        border-radius: var(--round-small);
        background: transparent;
        text-align: start;
        align-content: center;
        cursor: pointer;
      }

      /* With very large letters the line has a row of its own. */
      @container (max-width: 18rem) {
        li button {
          grid-template-columns: minmax(0, 1fr) auto auto;
        }

        .place {
          text-align: start;
        }

        .text {
          grid-row: 2;
          grid-column: 1 / -1;
        }
      }

      li button:hover {
        background: var(--accent-wash);
      }

      li button:focus-visible {
        outline-offset: -3px;
      }

      .text {
        display: flex;
        flex-direction: column;
        min-width: 0;
      }

      .place,
      .or {
        color: var(--ink-soft);
      }

      .place,
      .points {
        text-align: end;
      }

      .note,
      .or {
        font-family: var(--font);
      }

      .note {
        color: var(--ink-soft);
        font-size: var(--text-small);
        overflow-wrap: anywhere;
      }

      .fix {
        color: var(--bad);
        font-weight: 600;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('wanted')) this.current = 0;
  }

  protected override render(): unknown {
    const document = this.room.editor?.document;
    if (document === undefined) return nothing;
    const all = document.sections.reduce((sum, { lines }) => sum + lines.length, 0);
    if (all === 0) return this.#empty();
    const found = findLines(document, this.wanted);
    return html`<div class="sheet">
      <div class="head" @keydown=${this.#onFindKey}>
        <wr-field
          type="search"
          label=${words.find}
          hint=${words.findHint}
          .value=${this.wanted}
          @field-typed=${this.#look}
        ></wr-field>
        <p class="found" role="status">${this.#foundWords(found.length, all)}</p>
        <wr-button @click=${() => void printCard(document)}>${words.print}</wr-button>
      </div>
      <h2 class="titled">
        ${textField(document, 'title') || cardWords.untitled} <span class="soft">${textField(document, 'season')}</span>
      </h2>
      <p class="soft">${words.marks}</p>
      <div class="sections" @keydown=${this.#onKey}>
        ${document.sections.map((_, index) => this.#section(document, index, found))}
      </div>
    </div>`;
  }

  #look({ detail }: CustomEvent<FieldText>): void {
    this.wanted = detail.value;
  }

  #foundWords(found: number, all: number): string {
    if (this.wanted.trim() === '') return cardWords.lines(all);
    return found === 0 ? words.none : words.found(found, cardWords.lines(all));
  }

  #empty(): unknown {
    return html`<div class="sheet">
      <p>${words.empty}</p>
      <div>
        <wr-button look="main" @click=${() => emit<TabChosen>(this, 'view-requested', { id: 'lines' })}
          >${words.toLines}</wr-button
        >
      </div>
    </div>`;
  }

  #section(document: CardDocument, index: number, found: readonly LinePlace[]): unknown {
    const section = document.sections[index];
    const shown = found.filter((place) => place.section === index);
    const isSearched = this.wanted.trim() !== '';
    if (section === undefined || (isSearched && shown.length === 0)) return nothing;
    return html`<section aria-labelledby="section-${index}">
      <h3 id="section-${index}">${sectionName(section, index)}</h3>
      ${section.lines.length === 0 ? html`<p class="soft">${cardWords.outline.noLines}</p>` : nothing}
      <ul>
        ${shown.map((place) => {
          const at = found.indexOf(place);
          return html`<li>
            <button
              type="button"
              data-at=${at}
              tabindex=${at === this.current ? 0 : -1}
              @focus=${() => (this.current = at)}
              @click=${() => emit<Selection>(this, 'line-shown', place)}
            >
              ${wholeLine(section.lines[place.line] ?? {}, place.line)}
            </button>
          </li>`;
        })}
      </ul>
    </section>`;
  }

  /** Escape empties the field; Down goes from it to the first line that was found. */
  #onFindKey(event: KeyboardEvent): void {
    if (event.key === 'Escape' && this.wanted !== '') {
      event.preventDefault();
      this.wanted = '';
    }
    if (event.key === 'ArrowDown' || event.key === 'Enter') {
      event.preventDefault();
      this.#goTo(0);
    }
  }

  #onKey(event: KeyboardEvent): void {
    const count = this.renderRoot.querySelectorAll('[data-at]').length;
    const key = UP_AND_DOWN[event.key] ?? event.key;
    const next = rove(key, this.current, count);
    if (next === null) return;
    event.preventDefault();
    this.#goTo(next);
  }

  #goTo(at: number): void {
    this.renderRoot.querySelector<HTMLElement>(`[data-at="${at}"]`)?.focus();
  }
}

/** The keys of a row, for a list that stands upright. */
const UP_AND_DOWN: Readonly<Record<string, string>> = { ArrowUp: 'ArrowLeft', ArrowDown: 'ArrowRight' };

customElements.define('wr-card-whole', WrCardWhole);
