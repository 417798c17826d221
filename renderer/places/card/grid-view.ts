import { html, nothing, type TemplateResult } from 'lit';
import type { LineDocument } from '../../../core/card/document.ts';
import { cardWords } from '../../words/card.ts';
import { type Cell, cellText, type Column, COLUMNS } from './grid-cells.ts';
import { lineFacts } from './line-reading.ts';
import './wr-pattern-field.ts';
import type { TypedPattern } from './wr-pattern-field.ts';

const words = cardWords.grid;

/** What the grid shows, and whom it tells what is done in it. */
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
  return html`<div
    role="gridcell"
    class="${column} ${writing ? 'writing' : ''}"
    tabindex=${writing ? nothing : here ? '0' : '-1'}
    ?data-here=${here}
    @click=${() => view.clicked(cell)}
    @focus=${() => view.arrived(cell)}
  >
    ${writing ? drawInput(view, column) : drawText(view, column, cell.row)}
  </div>`;
}

function drawText({ lines, section }: GridView, column: Column, row: number): TemplateResult {
  const line = lines[row];
  const caption = html`<span class="caption" aria-hidden="true">${words.columns[column]}</span>`;
  if (line === undefined) {
    return column === 'pattern' ? html`<span class="fresh">${words.newLine}</span>` : caption;
  }
  if (column !== 'ways') return html`${caption}<span class="text">${cellText(column, line)}</span>`;
  const { ways, problem } = lineFacts(line, section, row);
  if (problem === '') return html`${caption}${ways}`;
  return html`${caption}<span class="bad">${cardWords.outline.toMend}</span>`;
}

function drawInput({ writing, written, left }: GridView, column: Column): TemplateResult {
  if (column === 'pattern') {
    return html`<wr-pattern-field
      bare
      label=${words.columns.pattern}
      .value=${writing ?? ''}
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
