import { html, LitElement, nothing } from 'lit';
import {
  type CardDocument,
  type LineDocument,
  type SectionDocument,
  sectionName,
  textField,
} from '../../../core/card/document.ts';
import { changeLine } from '../../../core/card/edit.ts';
import { announce } from '../../parts/announcer.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import type { CardEditor } from './card-editor.ts';
import type { CardRoom } from './card-room.ts';
import { cardStyles } from './card-styles.ts';
import { type Cell, cellText, type Column, COLUMNS, emptied, goTo, isTextColumn, setByKey } from './grid-cells.ts';
import { gridStyles } from './grid-styles.ts';
import { drawGrid } from './grid-view.ts';
import { newLine, shiftLine, type Step } from './line-moves.ts';
import { lineToolbar } from './line-toolbar.ts';
import { liveLine } from './live-line.ts';
import { pointsFrom } from './points.ts';
import './wr-grid-sections.ts';
import type { SectionChosen } from './wr-grid-sections.ts';

const words = cardWords.grid;
const lineWords = cardWords.line;

/**
 * A section as a grid for typing, one row a line, the last row a new one. One tab stop; arrows go
 * about, a letter begins to write in a cell, Tab ends it and goes on, Enter goes to the next line.
 */
export class WrCardGrid extends LitElement {
  static override properties = {
    room: { attribute: false },
    section: { state: true },
    cell: { state: true },
    writing: { state: true },
  };

  declare room: CardRoom;
  declare protected section: number;
  declare protected cell: Cell;
  /** What is being written in the cell; null when nothing is. */
  declare protected writing: string | null;

  static override styles = [sharedStyles, cardStyles, gridStyles];

  readonly #onKey = (event: KeyboardEvent): void =>
    this.writing === null ? this.#goAbout(event) : this.#whileWriting(event);

  #refocus = false;
  /** The document before the cell was written in, for Escape. */
  #before: CardDocument | null = null;

  constructor() {
    super();
    this.section = 0;
    this.cell = { row: 0, column: 0 };
    this.writing = null;
    new StoreController(this, () => [this.room]);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    const selection = this.room.editor?.selection;
    this.section = selection?.section ?? 0;
    this.cell = { row: selection?.line ?? 0, column: 0 };
  }

  get #editor(): CardEditor | null {
    return this.room.editor;
  }
  get #lines(): readonly LineDocument[] {
    return this.#editor?.document.sections[this.section]?.lines ?? [];
  }
  get #rows(): number {
    return this.#lines.length + (this.#editor?.fixed === true ? 0 : 1);
  }
  get #column(): Column {
    return COLUMNS[this.cell.column] ?? 'pattern';
  }

  protected override willUpdate(): void {
    const sections = this.#editor?.document.sections.length ?? 0;
    this.section = Math.max(0, Math.min(this.section, sections - 1));
    const row = Math.max(0, Math.min(this.cell.row, this.#rows - 1));
    if (row !== this.cell.row) this.cell = { ...this.cell, row };
  }

  protected override updated(): void {
    if (!this.#refocus) return;
    this.#refocus = false;
    const cell = this.renderRoot.querySelector<HTMLElement>('[data-here]');
    const inner = cell?.querySelector<HTMLElement>('wr-pattern-field, input') ?? null;
    if (inner === null) cell?.focus();
    else void this.#focusInner(inner);
  }

  protected override render(): unknown {
    const editor = this.#editor;
    if (editor === null) return nothing;
    const section = editor.document.sections[this.section];
    return html`<div class="stack">
      <p>${words.lead} ${words.keys}</p>
      <wr-grid-sections
        .editor=${editor}
        .section=${this.section}
        @section-chosen=${({ detail }: CustomEvent<SectionChosen>) => this.#choose(detail.section)}
        @section-named=${this.#named}
      ></wr-grid-sections>
      ${section === undefined ? html`<p>${words.noSections}</p>` : this.#grid(section)}
      ${section === undefined ? nothing : this.#below(editor)}
    </div>`;
  }

  #grid(section: SectionDocument): unknown {
    return drawGrid({
      lines: this.#lines,
      rows: this.#rows,
      section: sectionName(section, this.section),
      cell: this.cell,
      writing: this.writing,
      pressed: this.#onKey,
      clicked: (cell) => this.#clicked(cell),
      arrived: (cell) => this.#arrive(cell),
      written: (text) => this.#write(text),
      left: () => this.#finish(),
    });
  }

  /** What the line at hand is, and what can be done with it. */
  #below(editor: CardEditor): unknown {
    const line = this.#lines[this.cell.row];
    const place = { section: this.section, line: this.cell.row };
    const off = line === undefined || editor.fixed;
    return html`<section class="sheet close live" aria-label=${lineWords.example}>
        ${line === undefined ? html`<p>${words.empty}</p>` : liveLine(line, this.#column === 'points' ? this.writing : null)}
      </section>
      ${lineToolbar({ card: editor.document, place, off, step: (step) => this.#step(step) })}
      <p class="soft" id="keys">${words.moreKeys}</p>`;
  }

  #whileWriting(event: KeyboardEvent): void {
    const { row, column } = this.cell;
    if (event.key === 'Escape') this.#giveUp();
    else if (event.key === 'Enter') this.#finishAndGo({ row: row + 1, column: 0 });
    else if (event.key === 'Tab') {
      const next = column + (event.shiftKey ? -1 : 1);
      this.#finishAndGo({ row, column: Math.max(0, Math.min(COLUMNS.length - 1, next)) });
    } else return;
    event.preventDefault();
  }

  #goAbout(event: KeyboardEvent): void {
    const { row } = this.cell;
    const line = this.#lines[row];
    const next = event.altKey || event.metaKey ? null : goTo(event, this.cell, this.#rows);
    if (next !== null) this.#go(next);
    else if (event.altKey && (event.key === 'ArrowUp' || event.key === 'ArrowDown')) this.#shift(event.key);
    else if (event.ctrlKey || event.metaKey || event.altKey || event.key === 'Tab') return;
    else if (this.#editor?.fixed !== false) return;
    else if (event.key === 'Delete') this.#set(line === undefined ? null : emptied(this.#column));
    else if (isTextColumn(this.#column)) return this.#beginBy(event);
    else {
      const set = setByKey(event.key, this.#column, line ?? {});
      if (set === null) return;
      this.#set(set);
    }
    event.preventDefault();
  }

  /** Enter or F2 goes on with what stands in the cell, a character begins anew. */
  #beginBy(event: KeyboardEvent): void {
    const line = this.#lines[this.cell.row];
    const column = this.#column;
    if (!isTextColumn(column)) return;
    if (event.key === 'Enter' || event.key === 'F2') this.#begin(line === undefined ? '' : cellText(column, line));
    else if (event.key.length === 1) {
      this.#begin('');
      this.#write(event.key);
    } else return;
    event.preventDefault();
  }

  #begin(text: string): void {
    this.#editor?.settle();
    this.#before = this.#editor?.document ?? null;
    this.writing = text;
    this.#refocus = true;
  }

  #write(text: string): void {
    this.writing = text;
    const column = this.#column;
    if (column === 'points') {
      const points = pointsFrom(text);
      if (points !== null) this.#set({ points }, 'points');
    } else this.#set({ [column]: text }, column);
  }

  /** Changes the line at hand; in the last row that makes a line. */
  #set(change: LineDocument | null, doing = ''): void {
    const editor = this.#editor;
    if (editor === null || change === null) return;
    const place = { section: this.section, line: this.cell.row };
    const known = this.#lines[place.line] !== undefined;
    const document = known ? editor.document : newLine(editor.document, place).document;
    const what = doing === '' ? '' : `grid ${place.section}.${place.line} ${doing}`;
    editor.change(changeLine(document, place, change), place, what);
  }

  #finish(): void {
    this.writing = null;
    this.#before = null;
    this.#editor?.settle();
  }

  #finishAndGo(cell: Cell): void {
    this.#finish();
    this.#go({ ...cell, row: Math.min(cell.row, this.#rows - 1) });
  }

  /** Escape: as it was before the cell was written in. */
  #giveUp(): void {
    const editor = this.#editor;
    if (editor !== null && this.#before !== null && editor.document !== this.#before) editor.undo();
    this.#finish();
    this.#refocus = true;
  }

  #go(cell: Cell): void {
    this.cell = cell;
    this.#refocus = true;
    this.#look();
  }

  #arrive(cell: Cell): void {
    if (this.writing !== null) return;
    this.cell = cell;
    this.#look();
  }

  /** The line at hand is the one that the other views show, too. */
  #look(): void {
    const line = this.#lines[this.cell.row] === undefined ? null : this.cell.row;
    const now = this.#editor?.selection;
    if (now?.section === this.section && now.line === line) return;
    this.#editor?.select({ section: this.section, line });
  }

  #clicked(cell: Cell): void {
    if (this.writing !== null) return;
    this.#go(cell);
    const column = this.#column;
    const line = this.#lines[cell.row];
    if (isTextColumn(column) && this.#editor?.fixed === false) {
      this.#begin(line === undefined ? '' : cellText(column, line));
    }
  }

  #shift(key: string): void {
    const editor = this.#editor;
    const line = this.#lines[this.cell.row];
    const by = key === 'ArrowUp' ? -1 : 1;
    if (editor === null || line === undefined) return;
    this.#step(shiftLine(editor.document, { section: this.section, line: this.cell.row }, by));
    announce(lineWords.moved(textField(line, 'pattern'), this.cell.row + 1, this.#lines.length));
  }

  #step({ document, selection }: Step): void {
    this.#editor?.change(document, selection);
    this.section = selection.section;
    this.cell = { ...this.cell, row: selection.line ?? 0 };
    this.#refocus = true;
  }

  #choose(section: number): void {
    this.section = section;
    this.cell = { row: 0, column: 0 };
  }

  /** From the section's name on to its last row. */
  #named(): void {
    this.#go({ row: this.#rows - 1, column: 0 });
  }

  async #focusInner(inner: HTMLElement): Promise<void> {
    if ('updateComplete' in inner) await inner.updateComplete;
    inner.focus();
    if ('caretToEnd' in inner && typeof inner.caretToEnd === 'function') inner.caretToEnd();
    if (inner instanceof HTMLInputElement) inner.setSelectionRange(inner.value.length, inner.value.length);
  }
}

customElements.define('wr-card-grid', WrCardGrid);

declare global {
  interface HTMLElementTagNameMap {
    'wr-card-grid': WrCardGrid;
  }
}
