import { html, nothing } from 'lit';
import { type LineDocument, type SectionDocument, sectionName, textField } from '../../../core/card/document.ts';
import { pointsFrom, printedWay, readLine } from '../../../core/card/line.ts';
import { announce } from '../../parts/announcer.ts';
import { data, element, state } from '../../parts/element.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import type { CardEditor } from './card-editor.ts';
import type { CardRoom } from './card-room.ts';
import { cardStyles } from './card-styles.ts';
import { type Cell, isTextColumn } from './grid-cells.ts';
import { GridPen, keyOnCell, keyWhileWriting } from './grid-pen.ts';
import { drawGrid, gridStyles } from './grid-view.ts';
import { shiftLine, type Step } from './line-moves.ts';
import { lineToolbar } from './line-toolbar.ts';
import './wr-grid-sections.ts';
import type { SectionChosen } from './wr-grid-sections.ts';
import { countWords } from './wr-line-form.ts';
import './wr-line-groups.ts';

const words = cardWords.grid;
const lineWords = cardWords.line;

const Base = element({
  room: data<CardRoom>(),
  section: state(0),
});

/**
 * A section as a grid for typing, one row a line, the last row a new one. One tab stop; arrows move
 * by a cell, a letter begins to write in one, Tab ends it and goes on, Enter goes to the next line.
 */
export class WrCardGrid extends Base {
  static override styles = [sharedStyles, cardStyles, gridStyles];

  readonly #pen = new GridPen(this);
  /** Whether the focus belongs in the current cell once it is drawn. */
  #refocus = false;

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    const selection = this.room.editor?.selection;
    this.section = selection?.section ?? 0;
    this.#pen.stand({ row: selection?.line ?? 0, column: 0 });
  }

  get editor(): CardEditor | null {
    return this.room.editor;
  }

  /** Puts the focus into the current cell. */
  refocus(): void {
    this.#refocus = true;
    this.requestUpdate();
  }

  protected override willUpdate(): void {
    const sections = this.editor?.document.sections.length ?? 0;
    this.section = Math.max(0, Math.min(this.section, sections - 1));
    this.#pen.keepWithin();
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
    const { editor } = this;
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
      lines: this.#pen.lines,
      rows: this.#pen.rows,
      section: sectionName(section, this.section),
      cell: this.#pen.cell,
      writing: this.#pen.writing,
      pressed: this.#onKey,
      clicked: (cell) => this.#clicked(cell),
      arrived: (cell) => this.#arrive(cell),
      written: (text) => this.#pen.write(text),
      left: () => this.#pen.finish(),
    });
  }

  /** The current line drawn, and what can be done with it. */
  #below(editor: CardEditor): unknown {
    const { line, cell, column, writing } = this.#pen;
    const place = { section: this.section, line: cell.row };
    const off = line === undefined || editor.fixed;
    return html`<section class="sheet close live" aria-label=${lineWords.example}>
        ${line === undefined ? html`<p>${words.empty}</p>` : liveLine(line, column === 'points' ? writing : null)}
      </section>
      ${lineToolbar({ card: editor.document, place, off, step: (step) => this.#step(step) })}
      <p class="soft" id="keys">${words.moreKeys}</p>`;
  }

  readonly #onKey = (event: KeyboardEvent): void => {
    if (this.#pen.writing !== null ? keyWhileWriting(event, this.#pen) : this.#keyOnCell(event)) event.preventDefault();
  };

  #keyOnCell(event: KeyboardEvent): boolean {
    if (!event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) {
      return keyOnCell(event, this.#pen, this.editor?.fixed !== false);
    }
    this.#shift(event.key === 'ArrowUp' ? -1 : 1);
    return true;
  }

  #arrive(cell: Cell): void {
    if (this.#pen.writing === null) this.#pen.arrive(cell);
  }

  #clicked(cell: Cell): void {
    if (this.#pen.writing !== null) return;
    this.#pen.go(cell);
    if (isTextColumn(this.#pen.column) && this.editor?.fixed === false) this.#pen.beginHere();
  }

  #shift(by: -1 | 1): void {
    const { editor } = this;
    const { line, cell, lines } = this.#pen;
    if (editor === null || line === undefined) return;
    this.#step(shiftLine(editor.document, { section: this.section, line: cell.row }, by));
    announce(lineWords.moved(textField(line, 'pattern'), this.#pen.cell.row + 1, lines.length));
  }

  #step({ document, selection }: Step): void {
    this.editor?.change(document, selection);
    this.section = selection.section;
    this.#pen.go({ ...this.#pen.cell, row: selection.line ?? 0 });
  }

  #choose(section: number): void {
    this.section = section;
    this.#pen.stand({ row: 0, column: 0 });
  }

  /** From the section's name on to its last row. */
  #named(): void {
    this.#pen.go({ row: this.#pen.rows - 1, column: 0 });
  }

  async #focusInner(inner: HTMLElement): Promise<void> {
    if ('updateComplete' in inner) await inner.updateComplete;
    inner.focus();
    if ('caretToEnd' in inner && typeof inner.caretToEnd === 'function') inner.caretToEnd();
    if (inner instanceof HTMLInputElement) inner.setSelectionRange(inner.value.length, inner.value.length);
  }
}

/** A live summary of the line while it is typed; `points` is the text in its points cell, null if that is not being written. */
function liveLine(line: LineDocument, points: string | null): unknown {
  const reading = readLine(line);
  const ways = reading.whole ? ` · ${cardWords.ways(reading.ways.length)}` : '';
  const wrong = points !== null && points !== '' && pointsFrom(points) === null;
  return html`<p>
      <strong>${countWords(reading.forms[0])}</strong>${ways}
      ${wrong ? html`<span class="bad" role="alert">${cardWords.grid.wrongPoints}</span>` : nothing}
    </p>
    <wr-line-groups fixed .reading=${reading.forms[0]} .way=${printedWay(reading.forms[0])}></wr-line-groups>`;
}

customElements.define('wr-card-grid', WrCardGrid);
