import type { CardDocument, LineDocument } from '../../../core/card/document.ts';
import { changeLine, withForms } from '../../../core/card/edit.ts';
import { pointsFrom } from '../../../core/card/line.ts';
import type { CardEditor } from './card-editor.ts';
import { type Cell, type Column, COLUMNS, type Rows, within } from './line-cells.ts';
import { newLine } from './line-moves.ts';

/** Where the pen writes; it is notified of changes. */
interface Paper {
  readonly editor: CardEditor | null;
  /** Draws what changed; the focus stays where it is. */
  requestUpdate(): void;
  /** Draws what changed and puts the focus into the current cell. */
  refocus(): void;
}

/** Writing in the table of lines: the current cell, and the changes of its line. In the last row of a section a change makes a new line. */
export class LinePen {
  readonly #paper: Paper;
  #cell: Cell = { section: 0, line: 0, column: 0 };

  constructor(paper: Paper) {
    this.#paper = paper;
  }

  get cell(): Cell {
    return within(this.rows, this.#cell);
  }
  get column(): Column {
    return COLUMNS[this.cell.column] ?? 'pattern';
  }
  get rows(): Rows {
    const { editor } = this.#paper;
    return { sections: editor?.document.sections ?? [], grows: editor?.fixed === false };
  }
  /** The current line; undefined in the row for a new one. */
  get line(): LineDocument | undefined {
    const { section, line } = this.cell;
    return this.#document?.sections[section]?.lines[line];
  }

  get #document(): CardDocument | undefined {
    return this.#paper.editor?.document;
  }

  /** Goes to a cell with the focus. */
  go(cell: Cell): void {
    this.stand(cell);
    this.#paper.refocus();
  }

  /** Goes to a cell; its line is the one that the other views show, too. */
  stand(cell: Cell): void {
    const { editor } = this.#paper;
    this.#cell = cell;
    editor?.settle();
    const chosen = { section: this.cell.section, line: this.line === undefined ? null : this.cell.line };
    const now = editor?.selection;
    if (now?.section !== chosen.section || now.line !== chosen.line) editor?.select(chosen);
    this.#paper.requestUpdate();
  }

  /** What is typed as a line: its pattern, and what it may be instead. */
  writeForms(at: Cell, forms: readonly string[]): void {
    const { section, line } = this.cell;
    if (at.section !== section || at.line !== line) return this.#writeElsewhere(at, withForms(forms));
    // Each group is a step of its own, so that undo takes back a group and not the whole line.
    const groups = forms.join(' ').split(/\s+/).length;
    this.set(withForms(forms), `pattern ${groups}`);
  }

  /** Changes a line that is there, but is not the current one any more; the current cell stays. */
  #writeElsewhere(at: Cell, change: LineDocument): void {
    const { editor } = this.#paper;
    editor?.change(changeLine(editor.document, at, change));
  }

  /** What is no number of points stays as it was typed: the line is told as faulty, and nothing is cut off. */
  writePoints(text: string): void {
    this.set({ points: pointsFrom(text) ?? text }, 'points');
  }

  /** Changes the current line; `doing`: what is being written, so that its letters are one step to undo. */
  set(change: LineDocument, doing = ''): void {
    const { editor } = this.#paper;
    if (editor === null || editor.fixed) return;
    const { section, line } = this.cell;
    const place = { section, line };
    const document = this.line === undefined ? newLine(editor.document, place).document : editor.document;
    const what = doing === '' ? '' : `${section}.${line} ${doing}`;
    editor.change(changeLine(document, place, change), place, what);
    this.#paper.requestUpdate();
  }
}
