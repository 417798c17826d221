import { css, html, nothing } from 'lit';
import { sectionName, textField } from '../../../core/card/document.ts';
import { addSection, renameSection } from '../../../core/card/edit.ts';
import { data, element, numeric } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import type { CardEditor } from './card-editor.ts';
import { cardStyles } from './card-styles.ts';

const words = cardWords.grid;

/** What `section-chosen` carries. */
export interface SectionChosen {
  readonly section: number;
}

const Base = element({
  editor: data<CardEditor>(),
  section: numeric(0),
});

/**
 * Which section is typed: chosen, renamed, or added. Sends `section-chosen`, and
 * `section-named` when Enter ends its name.
 */
export class WrGridSections extends Base {
  static override styles = [
    sharedStyles,
    cardStyles,
    css`
      .row {
        align-items: flex-start;
      }

      wr-field {
        flex: 1 1 12rem;
      }

      .beside {
        margin-top: 1.75rem;
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.editor]);
  }

  protected override render(): unknown {
    const { fixed, document } = this.editor;
    const some = document.sections.length > 0;
    return html`<div class="row">
      ${some ? this.#which() : nothing} ${some && !fixed ? this.#name() : nothing}
      ${
        fixed
          ? nothing
          : html`<wr-button class=${some ? 'beside' : ''} @click=${this.#add}>${words.newSection}</wr-button>`
      }
    </div>`;
  }

  #which(): unknown {
    return html`<div class="labelled">
      <label for="which">${words.section}</label>
      <select id="which" @change=${this.#chosen}>
        ${this.editor.document.sections.map(
          (each, at) => html`<option .selected=${at === this.section}>${sectionName(each, at)}</option>`,
        )}
      </select>
    </div>`;
  }

  #name(): unknown {
    return html`<wr-field
      label=${words.sectionName}
      .value=${textField(this.editor.document.sections[this.section] ?? {}, 'name')}
      @field-typed=${this.#typed}
      @keydown=${this.#onKey}
    ></wr-field>`;
  }

  #chosen({ target }: Event): void {
    if (target instanceof HTMLSelectElement) this.#choose(target.selectedIndex);
  }

  #typed({ detail }: CustomEvent<FieldText>): void {
    const { editor, section } = this;
    editor.change(renameSection(editor.document, section, detail.value), editor.selection, `section ${section}`);
  }

  #add(): void {
    const { editor } = this;
    const section = editor.document.sections.length;
    editor.change(addSection(editor.document, ''), { section, line: null });
    this.#choose(section);
    void this.updateComplete.then(() => this.renderRoot.querySelector('wr-field')?.focus());
  }

  #onKey(event: KeyboardEvent): void {
    if (event.key === 'Enter') emit(this, 'section-named', null);
  }

  #choose(section: number): void {
    emit<SectionChosen>(this, 'section-chosen', { section });
  }
}

customElements.define('wr-grid-sections', WrGridSections);
