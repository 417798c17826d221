import { css, html, nothing } from 'lit';
import { type LineDocument, type LinePlace, sectionName } from '../../../core/card/document.ts';
import { addSection, changeLine } from '../../../core/card/edit.ts';
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
import type { Step } from './line-moves.ts';
import { lineToolbar, sectionChoice } from './line-toolbar.ts';
import './wr-card-outline.ts';
import './wr-line-form.ts';
import type { LineEdited } from './wr-line-settings.ts';
import './wr-line-view.ts';
import './wr-section-form.ts';

const words = cardWords.line;
const sectionWords = cardWords.section;
const outlineWords = cardWords.outline;

const Base = element({
  room: data<CardRoom>(),
  /** The name for a new section, as typed. */
  name: state(''),
});

/** The card line by line: its outline, and beside it the section or line that is chosen. */
export class WrCardLines extends Base {
  static override styles = [
    sharedStyles,
    cardStyles,
    css`
      :host {
        container-type: inline-size;
      }

      .plan {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-5);
        align-items: start;
      }

      @container (min-width: 56rem) {
        .plan {
          grid-template-columns: minmax(15rem, 22rem) minmax(0, 1fr);
        }

        .outline {
          order: -1;
        }
      }

      .add {
        align-items: flex-end;
      }

      .add wr-field {
        flex: 1 1 10rem;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  protected override render(): unknown {
    const { editor } = this.room;
    if (editor === null) return nothing;
    return html`<div class="plan">
      <section class="sheet" aria-labelledby="chosen">${this.#chosen(editor)}</section>
      <div class="outline stack">
        <wr-card-outline .room=${this.room} @outline-chosen=${this.#select}></wr-card-outline>
        ${editor.fixed || editor.document.sections.length === 0 ? nothing : this.#newSection(editor)}
      </div>
    </div>`;
  }

  #chosen(editor: CardEditor): unknown {
    const { document, selection } = editor;
    const section = selection === null ? undefined : document.sections[selection.section];
    if (selection === null || section === undefined) {
      return html`<h2 id="chosen">${outlineWords.empty}</h2>
        <p>${outlineWords.emptyLead}</p>
        ${editor.fixed ? nothing : this.#newSection(editor)}`;
    }
    const name = sectionName(section, selection.section);
    const line = selection.line === null ? undefined : section.lines[selection.line];
    if (line === undefined || selection.line === null) return this.#section(editor, selection.section, name);
    return this.#line(editor, { section: selection.section, line: selection.line }, line, name);
  }

  #line(editor: CardEditor, place: LinePlace, line: LineDocument, name: string): unknown {
    const heading = html`<h2 id="chosen" tabindex="-1">${words.title(place.line + 1, name)}</h2>`;
    if (editor.fixed) return html`${heading}<wr-line-view .line=${line}></wr-line-view>`;
    const toolbar = lineToolbar({
      card: editor.document,
      place,
      off: false,
      step: (step) => this.#step(step),
      begin: (step) => this.#step(step, true),
    });
    return html`<div class="row spread">${heading} ${toolbar}</div>
      <wr-line-form
        .line=${line}
        name=${`${editor.id} ${place.section} ${place.line}`}
        @line-edited=${({ detail }: CustomEvent<LineEdited>) => this.#edit(editor, place, detail)}
        @focusout=${() => editor.settle()}
      ></wr-line-form>
      ${sectionChoice(editor.document, place, (step) => this.#step(step))}`;
  }

  #section(editor: CardEditor, at: number, name: string): unknown {
    if (editor.fixed) {
      return html`<h2 id="chosen" tabindex="-1">${sectionWords.title(name)}</h2>
        <p>${cardWords.lines(editor.document.sections[at]?.lines.length ?? 0)}</p>`;
    }
    return html`<h2 id="chosen" tabindex="-1">${sectionWords.title(name)}</h2>
      <wr-section-form
        .editor=${editor}
        .section=${at}
        @line-begun=${({ detail }: CustomEvent<Step>) => this.#step(detail, true)}
      ></wr-section-form>`;
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
    const { editor } = this.room;
    const inField = event.target instanceof HTMLElement && event.target.localName === 'wr-field';
    if (event.key === 'Enter' && inField && editor !== null) this.#addSection(editor);
  }

  #addSection(editor: CardEditor): void {
    const section = editor.document.sections.length;
    const added = addSection(editor.document, this.name.trim());
    this.name = '';
    this.#step({ document: added, selection: { section, line: null } }, true);
  }

  #edit(editor: CardEditor, place: LinePlace, { change, doing }: LineEdited): void {
    const what = doing === '' ? '' : `${place.section}.${place.line} ${doing}`;
    editor.change(changeLine(editor.document, place, change), place, what);
  }

  #select({ detail }: CustomEvent<Selection>): void {
    this.room.editor?.select(detail);
    void this.#focusChosen('#chosen');
  }

  /** Does a step; `fresh` when something new is to be filled in, which then has the focus. */
  #step({ document, selection }: Step, fresh = false): void {
    this.room.editor?.change(document, selection);
    if (fresh) void this.#focusChosen(selection.line === null ? 'wr-section-form, .add wr-field' : 'wr-line-form');
  }

  async #focusChosen(what: string): Promise<void> {
    await this.updateComplete;
    const target = this.renderRoot.querySelector<HTMLElement & { updateComplete?: Promise<unknown> }>(what);
    await target?.updateComplete;
    target?.focus();
    target?.scrollIntoView({ block: 'nearest' });
  }
}

customElements.define('wr-card-lines', WrCardLines);
