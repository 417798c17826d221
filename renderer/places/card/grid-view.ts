import { css, html, nothing, type TemplateResult } from 'lit';
import type { LineDocument } from '../../../core/card/document.ts';
import { readLine } from '../../../core/card/line.ts';
import { cardWords } from '../../words/card.ts';
import { type Cell, cellText, type Column, COLUMNS } from './grid-cells.ts';
import './wr-pattern-field.ts';
import type { TypedPattern } from './wr-pattern-field.ts';

const words = cardWords.grid;

/** What the grid shows, and what to call when something is done in it. */
export interface GridView {
  readonly lines: readonly LineDocument[];
  /** Rows in all, the one for a new line included. */
  readonly rows: number;
  /** The section's name. */
  readonly section: string;
  readonly cell: Cell;
  /** What is being written in the cell; null when nothing is. */
  readonly writing: string | null;
  readonly pressed: (event: KeyboardEvent) => void;
  readonly clicked: (cell: Cell) => void;
  readonly arrived: (cell: Cell) => void;
  readonly written: (text: string) => void;
  readonly left: () => void;
}

/** What stands in the row for a new line. */
const NEW_LINE: LineDocument = {};

/** The lines of a section as a grid (WAI-ARIA APG). */
export function drawGrid(view: GridView): TemplateResult {
  return html`<div
    class="grid"
    role="grid"
    aria-label=${words.label(view.section)}
    aria-describedby="keys"
    @keydown=${view.pressed}
  >
    <div role="row" class="first">
      ${COLUMNS.map((column) => html`<div role="columnheader">${words.columns[column]}</div>`)}
    </div>
    ${Array.from({ length: view.rows }, (_, row) => drawRow(view, row))}
  </div>`;
}

function drawRow(view: GridView, row: number): TemplateResult {
  return html`<div role="row">${COLUMNS.map((column, at) => drawCell(view, { row, column: at }, column))}</div>`;
}

function drawCell(view: GridView, cell: Cell, column: Column): TemplateResult {
  const here = cell.row === view.cell.row && cell.column === view.cell.column;
  const writing = here && view.writing !== null;
  // oxlint-disable-next-line lit-a11y/click-events-have-key-events -- the grid hears the keys
  return html`<div
    role="gridcell"
    class="${column} ${writing ? 'writing' : ''}"
    tabindex=${writing ? nothing : here ? '0' : '-1'}
    ?data-here=${here}
    @click=${() => view.clicked(cell)}
    @focus=${() => view.arrived(cell)}
  >
    ${writing ? drawInput(view, column, cell.row) : drawText(view, column, cell.row)}
  </div>`;
}

function drawText({ lines }: GridView, column: Column, row: number): TemplateResult {
  const line = lines[row];
  const caption = html`<span class="caption" aria-hidden="true">${words.columns[column]}</span>`;
  if (line === undefined) {
    return column === 'pattern' ? html`<span class="fresh">${words.newLine}</span>` : caption;
  }
  if (column !== 'ways') return html`${caption}<span class="text">${cellText(column, line)}</span>`;
  const { wayCount, problems } = readLine(line);
  if (problems.length === 0) return html`${caption}${wayCount}`;
  return html`${caption}<span class="bad">${cardWords.outline.toFix}</span>`;
}

function drawInput({ lines, writing, written, left }: GridView, column: Column, row: number): TemplateResult {
  if (column === 'pattern') {
    return html`<wr-pattern-field
      bare
      label=${words.columns.pattern}
      .reading=${readLine(lines[row] ?? NEW_LINE).forms[0]}
      @pattern-typed=${({ detail }: CustomEvent<TypedPattern>) => written(detail.text)}
      @focusout=${left}
    ></wr-pattern-field>`;
  }
  return html`<input
    aria-label=${words.columns[column]}
    autocomplete="off"
    .value=${writing ?? ''}
    @input=${({ target }: Event) => target instanceof HTMLInputElement && written(target.value)}
    @focusout=${left}
  />`;
}

/** Quick entry: wide as a table, narrow with each line's small cells below its pattern. */
export const gridStyles = css`
  :host {
    container-type: inline-size;
  }

  .grid {
    display: flex;
    flex-direction: column;
    border: var(--stroke) solid var(--edge);
    border-radius: var(--round);
    background: var(--sheet);
  }

  [role='row'] {
    display: grid;
    grid-template-columns: repeat(2, minmax(0, 1fr));
    border-top: 1px solid var(--hairline);
  }

  [role='row'].first {
    display: none;
  }

  [role='gridcell'] {
    position: relative;
    min-height: var(--target-main);
    padding: 0.4em 0.5em;
    overflow-wrap: anywhere;
    cursor: pointer;
    scroll-margin-block: 1rem 16rem;
  }

  [role='gridcell']:first-child,
  .note {
    grid-column: 1 / -1;
  }

  [role='gridcell']:focus {
    outline: var(--ring) solid var(--focus);
    outline-offset: -3px;
    background: var(--accent-wash);
  }

  .writing {
    padding: 0;
  }

  .caption {
    display: block;
    color: var(--ink-soft);
    font-size: var(--text-small);
  }

  .pattern .text {
    font-family: var(--font-code);
  }

  .fresh {
    color: var(--ink-soft);
    font-style: italic;
  }

  input {
    display: block;
    width: 100%;
    min-height: var(--target-main);
    padding: 0.3em 0.6em;
    border: 2px solid var(--edge);
    border-radius: var(--round);
    background: var(--sheet);
  }

  [role='columnheader'] {
    padding: 0.4em 0.5em;
    font-weight: 700;
  }

  .live {
    min-height: 8.5rem;
    padding: var(--space-3);
  }

  @container (min-width: 60rem) {
    [role='row'],
    [role='row'].first {
      display: grid;
      grid-template-columns: minmax(0, 3fr) 8rem 5rem 7.5rem 8rem minmax(0, 1.5fr) 6rem;
      border-top: 1px solid var(--hairline);
    }

    [role='row'].first {
      border-top: 0;
    }

    [role='gridcell']:first-child,
    .note {
      grid-column: auto;
    }

    [role='gridcell'] + [role='gridcell'] {
      border-inline-start: 1px solid var(--hairline);
    }

    .caption {
      display: none;
    }
  }

  @media (min-height: 40em) {
    @container (min-width: 60rem) {
      .live {
        position: sticky;
        bottom: 0;
        z-index: 2;
      }
    }
  }
`;
