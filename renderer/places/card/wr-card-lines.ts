import { html, nothing } from 'lit';
import { type LineDocument, type SectionDocument, sectionName, textField } from '../../../core/card/document.ts';
import { addSection, withForms } from '../../../core/card/edit.ts';
import { readLine } from '../../../core/card/line.ts';
import { isConfirmed } from '../../../core/card/proof.ts';
import { announce } from '../../parts/announcer.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import type { CardEditor, Selection } from './card-editor.ts';
import type { CardRoom } from './card-room.ts';
import { cardStyles } from './card-styles.ts';
import { cellBeside, rowBeside, setByKey } from './line-cells.ts';
import { LinePen } from './line-pen.ts';
import { pasteLines, shiftLine, type Step } from './line-moves.ts';
import { drawLines } from './lines-view.ts';
import { linesStyles } from './lines-styles.ts';
import type { LineEdited } from './wr-line-choices.ts';
import './wr-line-more.ts';
import './wr-line-panel.ts';
import './wr-line-view.ts';
import './wr-section-form.ts';
import type { SectionPlaced } from './wr-section-form.ts';

const words = cardWords.rows;
const outlineWords = cardWords.outline;

const Base = element({
  room: data<CardRoom>(),
  /** The name for a new section, as typed. */
  name: state(''),
  /** The section whose form is open. */
  opened: state<number | null>(null),
  /** Whether the builder under a line is open. */
  building: state(false),
});

/**
 * The lines of a card, one row a line, section by section; the chosen one opens under itself. One tab stop: Tab goes
 * to the next cell, Enter to the next line, Escape to what stands under the line.
 */
export class WrCardLines extends Base {
  static override styles = [sharedStyles, cardStyles, linesStyles];

  readonly #pen = new LinePen(this);
  #seen: Selection | null = null;
  #refocus = false;
  /** Whether the focus was in the current cell before it was drawn anew. */
  #wasInCell = false;

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  get editor(): CardEditor | null {
    return this.room.editor;
  }

  /** Puts the focus into the current cell. */
  override focus(): void {
    this.refocus();
  }

  refocus(): void {
    this.#refocus = true;
    this.requestUpdate();
  }

  /** What was chosen elsewhere, or by undo, is chosen here. */
  protected override willUpdate(): void {
    this.#wasInCell = (this.shadowRoot?.activeElement?.closest('[data-here]') ?? null) !== null;
    const now = this.editor?.selection ?? null;
    const isNew = now?.section !== this.#seen?.section || now?.line !== this.#seen?.line;
    this.#seen = now;
    if (now === null || !isNew) return;
    const { cell, line } = this.#pen;
    const isHere = cell.section === now.section && (now.line === null ? line === undefined : cell.line === now.line);
    if (isHere) return;
    const lines = this.editor?.document.sections[now.section]?.lines.length ?? 0;
    this.#pen.stand({ section: now.section, line: now.line ?? lines, column: 0 });
  }

  protected override updated(): void {
    const isLost = this.#wasInCell && (this.shadowRoot?.activeElement ?? null) === null;
    if (!this.#refocus && !isLost) return;
    this.#refocus = false;
    void this.#focusCell();
  }

  protected override render(): unknown {
    const { editor } = this;
    if (editor === null) return nothing;
    const { sections } = editor.document;
    if (sections.length === 0) {
      return html`<section class="sheet" aria-labelledby="none">
        <h2 id="none">${outlineWords.empty}</h2>
        <p>${outlineWords.emptyLead}</p>
        ${editor.fixed ? nothing : this.#newSection(editor)}
      </section>`;
    }
    return html`<div class="stack">
      <p class="unseen" id="how">${cardWords.line.keys}</p>
      ${drawLines({
        sections,
        cell: this.#pen.cell,
        fixed: editor.fixed,
        isConfirmed: (line) => isConfirmed({ confirmed: this.room.progress.confirmed }, line),
        head: (section, at) => this.#head(editor, section, at),
        panel: (line) => this.#panel(editor, line),
        pressed: this.#onKey,
        chosen: (cell) => this.#pen.go(cell),
        typed: (cell, forms) => this.#pen.writeForms(cell, forms),
        pasted: (text) => this.#paste(editor, text),
        points: (text) => this.#pen.writePoints(text),
      })}
      ${editor.fixed ? nothing : this.#newSection(editor)}
    </div>`;
  }

  #head(editor: CardEditor, section: SectionDocument, at: number): unknown {
    const name = sectionName(section, at);
    const isOpen = this.opened === at && !editor.fixed;
    return html`<div class="row spread">
        <h2>${name} <span class="soft">${cardWords.lines(section.lines.length)}</span></h2>
        ${
          editor.fixed
            ? nothing
            : html`<wr-button
                look="quiet"
                label=${words.changeSection(name)}
                .pressed=${isOpen}
                @click=${() => (this.opened = isOpen ? null : at)}
                >${words.section}</wr-button
              >`
        }
      </div>
      ${
        isOpen
          ? html`<wr-section-form
              .editor=${editor}
              .section=${at}
              @section-placed=${({ detail }: CustomEvent<SectionPlaced>) => this.#sectionPlaced(detail)}
            ></wr-section-form>`
          : nothing
      }`;
  }

  /** The form follows its section; when that is removed, the focus goes to the cell that is left. */
  #sectionPlaced({ at }: SectionPlaced): void {
    this.opened = at;
    if (at === null) this.refocus();
  }

  #panel(editor: CardEditor, line: LineDocument): unknown {
    if (editor.fixed) return html`<wr-line-view .line=${line}></wr-line-view>`;
    const { section, line: at } = this.#pen.cell;
    return html`<wr-line-panel
        .line=${line}
        name=${`${editor.id} ${section} ${at}`}
        ?building=${this.building}
        @line-edited=${({ detail }: CustomEvent<LineEdited>) => this.#pen.set(detail.change, detail.doing)}
        @line-answered=${({ detail }: CustomEvent<LineEdited>) => this.#answered(detail)}
        @or-wanted=${this.#addForm}
        @building-changed=${({ detail }: CustomEvent<boolean>) => (this.building = detail)}
      ></wr-line-panel>
      ${
        this.#pen.line === undefined
          ? nothing
          : html`<wr-line-more
              .line=${line}
              .card=${editor.document}
              .place=${{ section, line: at }}
              @line-edited=${({ detail }: CustomEvent<LineEdited>) => this.#pen.set(detail.change, detail.doing)}
              @line-stepped=${({ detail }: CustomEvent<Step>) => this.#step(detail)}
            ></wr-line-more>`
      }`;
  }

  /** The question is gone with its buttons: the focus goes back to the line. */
  #answered({ change }: LineEdited): void {
    this.#pen.set(change);
    this.#pen.go({ ...this.#pen.cell, column: 0 });
  }

  #newSection(editor: CardEditor): unknown {
    return html`<div class="row add" @keydown=${this.#onNameKey}>
      <wr-field
        label=${outlineWords.sectionName}
        .value=${this.name}
        @field-typed=${({ detail }: CustomEvent<FieldText>) => (this.name = detail.value)}
      ></wr-field>
      <wr-button @click=${() => this.#addSection(editor)}>${outlineWords.addSection}</wr-button>
    </div>`;
  }

  #onNameKey(event: KeyboardEvent): void {
    const { editor } = this;
    const inField = event.target instanceof HTMLElement && event.target.localName === 'wr-field';
    if (event.key === 'Enter' && inField && editor !== null) this.#addSection(editor);
  }

  #addSection(editor: CardEditor): void {
    const section = editor.document.sections.length;
    editor.change(addSection(editor.document, this.name.trim()), { section, line: null });
    this.name = '';
    this.#pen.go({ section, line: 0, column: 0 });
  }

  /** A further form begins as the last one: forms of a line mostly differ in little. */
  readonly #addForm = (): void => {
    const { line } = this.#pen;
    if (line === undefined) return;
    const texts = readLine(line).forms.map(({ text }) => text);
    this.#pen.set(withForms([...texts, texts.at(-1) ?? '']));
    this.#pen.go({ ...this.#pen.cell, column: 0 });
  };

  #paste(editor: CardEditor, text: string): void {
    const { section, line } = this.#pen.cell;
    const { step, lines } = pasteLines(editor.document, { section, line }, text);
    this.#step(step);
    announce(words.pasted(lines));
  }

  #step({ document, selection }: Step): void {
    this.editor?.change(document, selection);
    const lines = document.sections[selection.section]?.lines.length ?? 0;
    this.#pen.go({ section: selection.section, line: selection.line ?? lines, column: 0 });
  }

  readonly #onKey = (event: KeyboardEvent): void => {
    const inGrid = event
      .composedPath()
      .some((part) => part instanceof HTMLElement && part.dataset['here'] !== undefined);
    if (inGrid && this.#does(event)) event.preventDefault();
  };

  /** Does what a key means in the current cell; returns whether it means anything. */
  #does(event: KeyboardEvent): boolean {
    const { key } = event;
    if (event.ctrlKey || event.metaKey) return false;
    if (event.altKey) return this.#shift({ ArrowUp: -1, ArrowDown: 1 }[key]);
    switch (key) {
      case 'Enter':
        this.#nextLine(event.shiftKey ? -1 : 1);
        return true;
      case 'Tab':
        return this.#nextCell(event.shiftKey ? -1 : 1);
      case 'Escape':
        return this.#leave();
      case 'ArrowUp':
      case 'ArrowDown':
        this.#toRow(key === 'ArrowUp' ? -1 : 1);
        return true;
      default:
        return this.#inCell(event);
    }
  }

  /** Keys of a cell that is not typed in. */
  #inCell({ key }: KeyboardEvent): boolean {
    const { column } = this.#pen;
    if (this.editor?.fixed !== true && (column === 'pattern' || column === 'points')) return false;
    if (key === 'ArrowLeft' || key === 'ArrowRight') return this.#beside(key === 'ArrowLeft' ? -1 : 1);
    const set = this.editor?.fixed === true ? null : setByKey(key, column);
    if (set !== null) this.#pen.set(set);
    return set !== null || key === ' ';
  }

  #nextLine(by: 1 | -1): void {
    const { rows, cell, line } = this.#pen;
    const next = rowBeside(rows, cell, by);
    if (next !== null) this.#pen.go({ ...next, column: 0 });
    else if (line === undefined) this.renderRoot.querySelector<HTMLElement>('.add wr-field')?.focus();
  }

  #nextCell(by: 1 | -1): boolean {
    // Where nothing is filled in, Tab has no cells to go through.
    if (this.editor?.fixed === true) return false;
    const next = cellBeside(this.#pen.rows, this.#pen.cell, by);
    if (next !== null) this.#pen.go(next);
    return next !== null;
  }

  #beside(by: 1 | -1): boolean {
    const next = cellBeside(this.#pen.rows, this.#pen.cell, by);
    if (next !== null) this.#pen.go(next);
    return true;
  }

  #toRow(by: 1 | -1): void {
    const { rows, cell } = this.#pen;
    const next = rowBeside(rows, cell, by);
    if (next !== null) this.#pen.go({ ...next, column: cell.column });
  }

  /** Out of the table, to what stands under the line. */
  #leave(): boolean {
    const under = this.renderRoot.querySelector<HTMLElement>('wr-line-panel, wr-line-view');
    under?.focus();
    return under !== null;
  }

  #shift(by: number | undefined): boolean {
    const { editor } = this;
    const { line, cell } = this.#pen;
    if (editor === null || editor.fixed || line === undefined || (by !== 1 && by !== -1)) return false;
    this.#step(shiftLine(editor.document, cell, by));
    const { section, line: at } = this.#pen.cell;
    announce(
      cardWords.line.moved(textField(line, 'pattern'), at + 1, editor.document.sections[section]?.lines.length ?? 0),
    );
    return true;
  }

  async #focusCell(): Promise<void> {
    await this.updateComplete;
    const cell = this.renderRoot.querySelector<HTMLElement>('[data-here]');
    const inner = cell?.querySelector<HTMLElement & { updateComplete?: Promise<unknown> }>('wr-pattern-field, input');
    await inner?.updateComplete;
    const target = inner ?? cell;
    target?.focus({ preventScroll: true });
    if (inner instanceof HTMLInputElement) inner.select();
    else if (inner !== null && inner !== undefined && 'caretToEnd' in inner && typeof inner.caretToEnd === 'function')
      inner.caretToEnd();
    this.renderRoot.querySelector('wr-line-panel')?.bandInView();
    cell?.parentElement?.scrollIntoView({ block: 'nearest' });
  }
}

customElements.define('wr-card-lines', WrCardLines);
