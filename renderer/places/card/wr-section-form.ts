import { html } from 'lit';
import { textField } from '../../../core/card/document.ts';
import { moveSection, removeSection, renameSection } from '../../../core/card/edit.ts';
import { announce } from '../../parts/announcer.ts';
import { data, element, numeric } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import '../../parts/wr-toolbar.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import type { CardEditor } from './card-editor.ts';
import { cardStyles } from './card-styles.ts';

const words = cardWords.section;

/** What `section-placed` carries: where the section stands now, null when it is removed. */
export interface SectionPlaced {
  readonly at: number | null;
}

const Base = element({
  editor: data<CardEditor>(),
  section: numeric(0),
});

/** A section as a whole: renamed, moved, removed. Sends `section-placed`. */
export class WrSectionForm extends Base {
  static override styles = [sharedStyles, cardStyles];

  constructor() {
    super();
    new StoreController(this, () => [this.editor]);
  }

  /** Puts the focus on the name. */
  override focus(): void {
    this.renderRoot.querySelector('wr-field')?.focus();
  }

  protected override render(): unknown {
    const { document } = this.editor;
    const last = document.sections.length - 1;
    return html`<div class="stack">
      <wr-field
        label=${words.name}
        .value=${textField(document.sections[this.section] ?? {}, 'name')}
        @field-typed=${this.#named}
      ></wr-field>
      <wr-toolbar label=${words.actions}>
        <wr-button ?disabled=${this.section === 0} @click=${() => this.#move(-1)}>${words.up}</wr-button>
        <wr-button ?disabled=${this.section === last} @click=${() => this.#move(1)}>${words.down}</wr-button>
        <wr-button look="danger" @click=${this.#remove}>${words.remove}</wr-button>
      </wr-toolbar>
    </div>`;
  }

  #named({ detail }: CustomEvent<FieldText>): void {
    const { editor, section } = this;
    const here = { section, line: null };
    editor.change(renameSection(editor.document, section, detail.value), here, `section ${section}`);
  }

  #move(by: 1 | -1): void {
    const to = this.section + by;
    this.editor.change(moveSection(this.editor.document, this.section, to), { section: to, line: null });
    emit<SectionPlaced>(this, 'section-placed', { at: to });
  }

  #remove(): void {
    const document = removeSection(this.editor.document, this.section);
    const left = document.sections.length;
    announce(words.removed);
    this.editor.change(document, left === 0 ? null : { section: Math.min(this.section, left - 1), line: null });
    emit<SectionPlaced>(this, 'section-placed', { at: null });
  }
}

customElements.define('wr-section-form', WrSectionForm);
