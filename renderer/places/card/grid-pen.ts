import type { CardDocument, LineDocument } from '../../../core/card/document.ts';
import { changeLine } from '../../../core/card/edit.ts';
import { pointsFrom } from '../../../core/card/line.ts';
import type { CardEditor } from './card-editor.ts';
import { type Cell, cellText, type Column, COLUMNS, emptied, goTo, isTextColumn, setByKey } from './grid-cells.ts';
import { newLine } from './line-moves.ts';

/** Where the pen writes: the card and a section of it; it is notified of changes. */
interface Paper {
  readonly editor: CardEditor | null;
  readonly section: number;
  /** Draws what changed; the focus stays where it is. */
  requestUpdate(): void;
  /** Draws what changed and puts the focus into the current cell. */
  refocus(): void;
}

/**
 * Writing in the grid: the current cell, what is being written in it, and the changes of
 * the current line. In the last row a change makes a new line.
 */
export class GridPen {
  readonly #paper: Paper;
  #cell: Cell = { row: 0, column: 0 };
  #writing: string | null = null;
  /** The document before the cell was written in, for Escape. */
  #before: CardDocument | null = null;

  constructor(paper: Paper) {
    this.#paper = paper;
  }

  get cell(): Cell {
    return this.#cell;
  }
  /** What is being written in the cell; null when nothing is. */
  get writing(): string | null {
    return this.#writing;
  }
  get column(): Column {
    return COLUMNS[this.#cell.column] ?? 'pattern';
  }
  get lines(): readonly LineDocument[] {
    return this.#paper.editor?.document.sections[this.#paper.section]?.lines ?? [];
  }
  /** The current line; undefined in the row for a new one. */
  get line(): LineDocument | undefined {
    return this.lines[this.#cell.row];
  }
  /** Rows in all, the one for a new line included. */
  get rows(): number {
    return this.lines.length + (this.#paper.editor?.fixed === true ? 0 : 1);
  }

  /** Goes to a cell; the line there is the one that the other views show, too. */
  go(cell: Cell): void {
    this.#cell = { ...cell, row: Math.min(cell.row, this.rows - 1) };
    this.#look();
    this.#paper.refocus();
  }

  /** The focus was moved to a cell. */
  arrive(cell: Cell): void {
    this.#cell = cell;
    this.#look();
    this.#paper.requestUpdate();
  }

  /** Goes to a cell without selecting its line yet. */
  stand(cell: Cell): void {
    this.#cell = cell;
    this.#paper.requestUpdate();
  }

  /** Stays within the rows, should there be fewer now. */
  keepWithin(): void {
    const row = Math.max(0, Math.min(this.#cell.row, this.rows - 1));
    if (row !== this.#cell.row) this.#cell = { ...this.#cell, row };
  }

  /** Begins with what stands in the cell. */
  beginHere(): void {
    const { column, line } = this;
    if (isTextColumn(column)) this.begin(line === undefined ? '' : cellText(column, line));
  }

  begin(text: string): void {
    const { editor } = this.#paper;
    editor?.settle();
    this.#before = editor?.document ?? null;
    this.#writing = text;
    this.#paper.refocus();
  }

  write(text: string): void {
    this.#writing = text;
    const { column } = this;
    if (column === 'points') {
      const points = pointsFrom(text);
      if (points !== null) this.set({ points }, 'points');
    } else this.set({ [column]: text }, column);
    this.#paper.requestUpdate();
  }

  /** Changes the current line; `doing`: what is being written, so that its letters are one step to undo. */
  set(change: LineDocument | null, doing = ''): void {
    const { editor, section } = this.#paper;
    if (editor === null || change === null) return;
    const place = { section, line: this.#cell.row };
    const document = this.line === undefined ? newLine(editor.document, place).document : editor.document;
    const what = doing === '' ? '' : `grid ${place.section}.${place.line} ${doing}`;
    editor.change(changeLine(document, place, change), place, what);
  }

  finish(): void {
    this.#writing = null;
    this.#before = null;
    this.#paper.editor?.settle();
    this.#paper.requestUpdate();
  }

  /** As it was before the cell was written in. */
  giveUp(): void {
    const { editor } = this.#paper;
    if (editor !== null && this.#before !== null && editor.document !== this.#before) editor.undo();
    this.finish();
    this.#paper.refocus();
  }

  #look(): void {
    const { editor, section } = this.#paper;
    const line = this.line === undefined ? null : this.#cell.row;
    const now = editor?.selection;
    if (now?.section !== section || now.line !== line) editor?.select({ section, line });
  }
}

/** A key in a cell that is written in: Escape gives up, Enter and Tab end it and go on. Returns whether the key was used. */
export function keyWhileWriting(event: KeyboardEvent, pen: GridPen): boolean {
  const { row, column } = pen.cell;
  if (event.key === 'Escape') {
    pen.giveUp();
    return true;
  }
  if (event.key !== 'Enter' && event.key !== 'Tab') return false;
  const next = Math.max(0, Math.min(COLUMNS.length - 1, column + (event.shiftKey ? -1 : 1)));
  pen.finish();
  pen.go(event.key === 'Enter' ? { row: row + 1, column: 0 } : { row, column: next });
  return true;
}

/** A key in a cell that is not written in: it moves, empties, sets or begins to write. `fixed`: nothing may be changed. */
export function keyOnCell(event: KeyboardEvent, pen: GridPen, fixed: boolean): boolean {
  const next = event.altKey || event.metaKey ? null : goTo(event, pen.cell, pen.rows);
  if (next !== null) {
    pen.go(next);
    return true;
  }
  if (event.ctrlKey || event.metaKey || event.altKey || event.key === 'Tab' || fixed) return false;
  if (event.key === 'Delete') {
    if (pen.line !== undefined) pen.set(emptied(pen.column));
    return true;
  }
  return isTextColumn(pen.column) ? beginsBy(event.key, pen) : sets(event.key, pen);
}

/** Enter or F2 edits what stands in the cell, a character replaces it. */
function beginsBy(key: string, pen: GridPen): boolean {
  if (key === 'Enter' || key === 'F2') {
    pen.beginHere();
    return true;
  }
  if (key.length !== 1) return false;
  pen.begin('');
  pen.write(key);
  return true;
}

function sets(key: string, pen: GridPen): boolean {
  const set = setByKey(key, pen.column, pen.line ?? {});
  if (set === null) return false;
  pen.set(set);
  return true;
}
