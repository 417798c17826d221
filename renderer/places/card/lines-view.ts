import { html, nothing, type TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { type LineDocument, type SectionDocument, sectionName } from '../../../core/card/document.ts';
import { type LineReading, pointsFrom, readLine } from '../../../core/card/line.ts';
import { formSentence } from '../../../core/card/sentence.ts';
import { cardWords } from '../../words/card.ts';
import { type Cell, cellText, type Column, COLUMNS } from './line-cells.ts';
import { lineTone, standingWords } from './line-standing.ts';
import './wr-pattern-field.ts';
import type { PastedLines, TypedPattern } from './wr-pattern-field.ts';

const words = cardWords.rows;

/** What the table of lines shows, and what to call when something is done in it. */
export interface LinesView {
  readonly sections: readonly SectionDocument[];
  readonly cell: Cell;
  /** Whether the card can't be changed. */
  readonly fixed: boolean;
  readonly isConfirmed: (line: LineDocument) => boolean;
  /** Above the lines of a section. */
  readonly head: (section: SectionDocument, at: number) => unknown;
  /** Under the line that is chosen. */
  readonly panel: (line: LineDocument) => unknown;
  readonly pressed: (event: KeyboardEvent) => void;
  readonly chosen: (cell: Cell) => void;
  /** A field that goes may still say what it drops: of its own line, not of the one that is current by then. */
  readonly typed: (cell: Cell, forms: readonly string[]) => void;
  readonly pasted: (text: string) => void;
  readonly points: (text: string) => void;
}

/** What stands in the row for a new line. */
const NEW_LINE: LineDocument = {};

/** All lines of a card as a grid (WAI-ARIA APG), section by section. */
export function drawLines(view: LinesView): TemplateResult {
  return html`<div class="grid" role="grid" aria-label=${words.label} aria-describedby="how" @keydown=${view.pressed}>
    <div role="row" class="heads">
      <div role="columnheader" class="place">${words.place}</div>
      ${COLUMNS.map((column) => html`<div role="columnheader">${words.columns[column]}</div>`)}
      <div role="columnheader">${words.inWords}</div>
    </div>
    ${view.sections.map((section, at) => drawSection(view, section, at))}
  </div>`;
}

function drawSection(view: LinesView, section: SectionDocument, at: number): TemplateResult {
  const rows = view.fixed ? section.lines : [...section.lines, undefined];
  return html`<div role="rowgroup" aria-label=${sectionName(section, at)}>
    <div role="row" class="section">
      <div role="gridcell" aria-colspan=${COLUMNS.length + 2}>${view.head(section, at)}</div>
    </div>
    ${rows.map((line, row) => drawRow(view, line, { section: at, line: row }))}
  </div>`;
}

function drawRow(view: LinesView, line: LineDocument | undefined, place: Omit<Cell, 'column'>): unknown {
  const isHere = place.section === view.cell.section && place.line === view.cell.line;
  if (!isHere) {
    const known = [line, place.section, place.line, line !== undefined && view.isConfirmed(line), view.fixed];
    return guard(known, () => drawOther(view, line, place));
  }
  return html`<div role="row" class="line now" aria-selected="true">
      ${drawPlace(view, line, place)}
      ${cells(line).map((column, at) => drawCell(view, line, { ...place, column: at }, column))}
      ${drawWords(line, true)}
    </div>
    <div role="row" class="opened">
      <div role="gridcell" aria-colspan=${COLUMNS.length + 2}>${view.panel(line ?? NEW_LINE)}</div>
    </div>`;
}

function drawOther(view: LinesView, line: LineDocument | undefined, place: Omit<Cell, 'column'>): TemplateResult {
  return html`<div role="row" class="line">
    ${drawPlace(view, line, place)}
    ${cells(line).map((column, at) => drawText(view, line, { ...place, column: at }, column))} ${drawWords(line, false)}
  </div>`;
}

/** The row for a new line has one cell. */
function cells(line: LineDocument | undefined): readonly Column[] {
  return line === undefined ? COLUMNS.slice(0, 1) : COLUMNS;
}

function drawPlace(
  view: LinesView,
  line: LineDocument | undefined,
  { line: at }: Omit<Cell, 'column'>,
): TemplateResult {
  const tick =
    line !== undefined && view.isConfirmed(line)
      ? html`<span class="tick" aria-hidden="true">✓</span><span class="unseen">, ${cardWords.outline.confirmed}</span>`
      : nothing;
  return html`<div role="rowheader" class="place">${at + 1}${tick}</div>`;
}

function drawText(view: LinesView, line: LineDocument | undefined, cell: Cell, column: Column): TemplateResult {
  const text = line === undefined ? '' : cellText(column, line);
  const shown =
    line === undefined
      ? html`<span class="fresh">${words.newLine}</span>`
      : html`<span class="caption" aria-hidden="true">${words.columns[column]}</span
          ><span class="text">${text || words.empty}</span>`;
  // oxlint-disable-next-line lit-a11y/click-events-have-key-events -- the grid hears the keys
  return html`<div
    role="gridcell"
    class=${`${column} ${line === undefined ? 'alone' : ''}`}
    tabindex="-1"
    @click=${() => view.chosen(cell)}
  >
    ${shown}
  </div>`;
}

function drawCell(view: LinesView, line: LineDocument | undefined, cell: Cell, column: Column): TemplateResult {
  if (cell.column !== view.cell.column) return drawText(view, line, cell, column);
  const isTyped = !view.fixed && (column === 'pattern' || column === 'points');
  if (!isTyped) {
    return html`<div role="gridcell" class="${column} here" tabindex="0" data-here>
      <span class="caption" aria-hidden="true">${words.columns[column]}</span
      ><span class="text">${line === undefined ? '' : cellText(column, line)}</span>
    </div>`;
  }
  return html`<div role="gridcell" class="${column} here writing ${line === undefined ? 'alone' : ''}" data-here>
    ${column === 'pattern' ? drawPattern(view, line, cell) : drawPoints(view, line ?? NEW_LINE)}
  </div>`;
}

function drawPattern(view: LinesView, line: LineDocument | undefined, cell: Cell): TemplateResult {
  return html`<wr-pattern-field
    label=${words.columns.pattern}
    value=${line === undefined ? '' : cellText('pattern', line)}
    @pattern-typed=${({ detail }: CustomEvent<TypedPattern>) => view.typed(cell, detail.forms)}
    @lines-pasted=${({ detail }: CustomEvent<PastedLines>) => view.pasted(detail.text)}
  ></wr-pattern-field>`;
}

function drawPoints({ points }: LinesView, line: LineDocument): TemplateResult {
  return html`<input
    aria-label=${words.columns.points}
    aria-invalid=${String(pointsFrom(cellText('points', line)) === null)}
    autocomplete="off"
    inputmode="numeric"
    .value=${cellText('points', line)}
    @input=${({ target }: Event) => target instanceof HTMLInputElement && points(target.value)}
  />`;
}

/** The line in words, or how far it is. */
function drawWords(line: LineDocument | undefined, isHere: boolean): TemplateResult | typeof nothing {
  if (line === undefined) return nothing;
  const reading = readLine(line);
  const tone = lineTone(reading);
  if (isHere || tone !== 'whole') {
    return html`<div role="gridcell" class="words ${tone}">${standingWords(reading)}</div>`;
  }
  return html`<div role="gridcell" class="words">${formsSentence(reading)}</div>`;
}

/** What stands in the row of a line that is whole: the cells beside it say the rest. */
function formsSentence(reading: LineReading): string {
  const [first = '', ...others] = [reading.pattern, ...reading.or].map((pattern) => formSentence(pattern, reading));
  return [first, ...others.map((each) => each.charAt(0).toLowerCase() + each.slice(1))].join(', or ');
}
