import { css, html, nothing, type PropertyValues } from 'lit';
import { announce } from '../parts/announcer.ts';
import { data, element, state, text } from '../parts/element.ts';
import '../parts/wr-button.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { chartWords as words } from '../words/charts.ts';
import { foldStyles } from './chart-styles.ts';
import type { LongTable } from './chart-table.ts';

/** Rows of a page: on the screen, and on paper, where nothing can be turned. */
const ON_SCREEN = 50;
const ON_PAPER = 500;

const Base = element({
  label: text(),
  table: data<LongTable>(() => ({ head: [], rows: [] })),
  open: state(false),
  /** The row that the page begins with. */
  first: state(0),
  paper: state(false),
});

/**
 * What a chart draws as a table, folded away until somebody wants it: it is made when it is opened, page by page. On
 * paper it is open.
 */
export class WrChartTable extends Base {
  static override styles = [
    sharedStyles,
    foldStyles,
    css`
      :host {
        display: block;
      }

      .scroll {
        overflow-x: auto;
      }

      table {
        border-collapse: collapse;
      }

      th,
      td {
        padding: 0.25em 1.2em 0.25em 0;
        border-top: 1px solid var(--hairline);
        text-align: start;
        vertical-align: top;
      }

      thead th {
        border-top: 0;
        font-weight: 600;
        vertical-align: bottom;
      }

      tbody th {
        font-weight: 400;
      }

      td {
        text-align: end;
      }

      nav {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2) var(--space-4);
        margin-top: var(--space-2);
      }

      @media print {
        nav wr-button {
          display: none;
        }

        tr {
          break-inside: avoid;
        }
      }
    `,
  ];

  readonly #print = window.matchMedia('print');
  readonly #onPaper = (): void => {
    this.paper = this.#print.matches;
  };
  readonly #beforePrint = (): void => {
    this.paper = true;
    // The page is printed as it stands when this returns.
    this.performUpdate();
  };

  override connectedCallback(): void {
    super.connectedCallback();
    this.#print.addEventListener('change', this.#onPaper);
    window.addEventListener('beforeprint', this.#beforePrint);
    window.addEventListener('afterprint', this.#onPaper);
    this.#onPaper();
  }

  override disconnectedCallback(): void {
    this.#print.removeEventListener('change', this.#onPaper);
    window.removeEventListener('beforeprint', this.#beforePrint);
    window.removeEventListener('afterprint', this.#onPaper);
    super.disconnectedCallback();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    // Fewer rows than before: the last page that there is.
    if (this.first >= this.table.rows.length) this.first = this.#lastPage();
  }

  protected override render(): unknown {
    return html`<details @toggle=${this.#toggled}>
      <summary>${words.asTable(this.label)}</summary>
      ${this.open || this.paper ? this.#page() : nothing}
    </details>`;
  }

  readonly #toggled = ({ currentTarget }: Event): void => {
    this.open = currentTarget instanceof HTMLDetailsElement && currentTarget.open;
  };

  #page(): unknown {
    const { head, rows } = this.table;
    const shown = rows.slice(this.first, this.#end());
    return html`<div class="scroll" tabindex="0" role="region" aria-label=${words.table(this.label)}>
        <table>
          <thead>
            <tr>
              ${head.map((cell) => html`<th scope="col">${cell}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${shown.map(
              ([name, ...cells]) =>
                html`<tr>
                  <th scope="row">${name}</th>
                  ${cells.map((cell) => html`<td>${cell}</td>`)}
                </tr>`,
            )}
          </tbody>
        </table>
      </div>
      ${shown.length < rows.length ? this.#turning() : nothing}`;
  }

  #turning(): unknown {
    const { rows, turns = words.turns } = this.table;
    return html`<nav aria-label=${words.pages(this.label)}>
      <wr-button ?disabled=${this.first === 0} @click=${() => this.#turn(-ON_SCREEN)}>${turns.before}</wr-button>
      <span>${this.#where()}</span>
      <wr-button ?disabled=${this.#end() >= rows.length} @click=${() => this.#turn(ON_SCREEN)}
        >${turns.after}</wr-button
      >
    </nav>`;
  }

  #where(): string {
    return words.rows(this.first + 1, this.#end(), this.table.rows.length);
  }

  /** The row after the last of the page. */
  #end(): number {
    return Math.min(this.table.rows.length, this.first + (this.paper ? ON_PAPER : ON_SCREEN));
  }

  #lastPage(): number {
    return Math.max(0, Math.ceil(this.table.rows.length / ON_SCREEN) - 1) * ON_SCREEN;
  }

  #turn(by: number): void {
    this.first = Math.min(this.#lastPage(), Math.max(0, this.first + by));
    announce(this.#where());
  }
}

customElements.define('wr-chart-table', WrChartTable);
