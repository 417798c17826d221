import { css, html, nothing } from 'lit';
import type { Sheet } from '../../../core/warmup/sheet.ts';
import { data, element, state } from '../../parts/element.ts';
import { takeStep, undoKey } from '../../parts/undo-keys.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import '../../parts/wr-notice.ts';
import '../../parts/wr-toolbar.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { sheetWords } from '../../words/sheets.ts';
import { shellWords } from '../../words/shell.ts';
import { saveFile } from '../../backup/save-file.ts';
import { paperOf } from '../../print/paper.ts';
import type { PracticeRoom } from './practice-room.ts';
import { warmUpStyles } from './warm-up-styles.ts';
import './wr-sheet-add.ts';
import './wr-sheet-problem.ts';

const words = sheetWords;
/** Larger files are not read: a sheet of thirty problems has some 60 kB. */
const LARGEST_FILE = 900_000;
const PARTS = ['questions', 'answers', 'both'] as const;

const Base = element({
  room: data<PracticeRoom>(),
  refusal: state(''),
  /** Whether the panel to add problems is open. */
  adding: state(false),
});

/** The sheets: the list, or the one that is open with all that can be done with it. */
export class WrSheets extends Base {
  static override styles = [
    sharedStyles,
    warmUpStyles,
    css`
      li.row {
        padding-block: var(--space-2);
        border-top: 1px solid var(--hairline);
      }

      .answering {
        min-height: var(--target-main);
      }

      .title {
        flex: 1 1 14rem;
      }

      /* A choice with its label above, the button beside its bar. */
      .actions {
        align-items: end;
      }

      .problems {
        display: flex;
        flex-direction: column;
        gap: var(--space-3);
      }
    `,
  ];

  readonly #onKey = (event: KeyboardEvent): void => this.#shortcut(event);

  constructor() {
    super();
    new StoreController(this, () => [this.room]);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('keydown', this.#onKey);
  }

  override disconnectedCallback(): void {
    window.removeEventListener('keydown', this.#onKey);
    super.disconnectedCallback();
  }

  /** A sheet without problems asks for some, until one says that there are enough. */
  protected override willUpdate(): void {
    const { sheet } = this.room.sheets;
    if (sheet === null) this.adding = false;
    else if (sheet.problems.length === 0) this.adding = true;
  }

  protected override render(): unknown {
    const { sheet } = this.room.sheets;
    return html`<div class="stack">
      ${sheet === null ? this.#list() : this.#open(sheet)}
      <input
        class="unseen"
        type="file"
        accept=".json,application/json"
        tabindex="-1"
        aria-hidden="true"
        @change=${this.#chosen}
      />
    </div>`;
  }

  #list(): unknown {
    const { entries, removed } = this.room.sheets;
    return html`<p>${words.lead}</p>
      ${
        removed === null
          ? nothing
          : html`<wr-notice
              action=${words.bringBack}
              .closable=${false}
              @notice-action=${() => this.#then('wr-button[look=main]', this.room.sheets.bringBack())}
              >${words.removed(removed.title)}</wr-notice
            >`
      }
      <div class="row">
        <wr-button look="main" @click=${this.#create}>${words.create}</wr-button>
        <wr-button @click=${() => this.renderRoot.querySelector('input')?.click()}>${words.bring}</wr-button>
      </div>
      <p class="bad" role="alert">${this.refusal}</p>
      ${entries.length === 0 ? html`<p class="soft">${words.none}</p>` : nothing}
      <ul>
        ${entries.map(
          ({ id, title, madeAt, problems }) =>
            html`<li class="row spread">
              <wr-button
                look="quiet"
                label=${words.open(title)}
                @click=${() => this.#then('.title', this.room.sheets.open(id))}
                >${title}</wr-button
              >
              <span class="soft">${words.count(problems)} · ${new Date(madeAt).toLocaleDateString()}</span>
              <wr-button
                look="quiet"
                label=${words.remove(title)}
                @click=${() => this.#then('wr-notice', this.room.sheets.remove(id))}
                >${words.removeShort}</wr-button
              >
            </li>`,
        )}
      </ul>`;
  }

  #open(sheet: Sheet): unknown {
    const { sheets } = this.room;
    const { status } = sheets.saved;
    const empty = sheet.problems.length === 0;
    const said = { nothing: '', saving: shellWords.saving, saved: shellWords.saved, failed: shellWords.notSaved };
    return html`<div class="row spread">
        <wr-button look="quiet" @click=${() => this.#then('wr-button[look=main]', sheets.close())}
          >← ${words.back}</wr-button
        >
        <div class="row">
          <span class="soft" data-sheet-saved=${status}>${said[status]}</span>
          <wr-toolbar label=${words.actions}>
            <wr-button
              look="quiet"
              keys="Control+Z"
              ?disabled=${!sheets.canUndo}
              @click=${() => takeStep(sheets, 'undo')}
              >${words.undo}</wr-button
            >
            <wr-button
              look="quiet"
              keys="Control+Shift+Z"
              ?disabled=${!sheets.canRedo}
              @click=${() => takeStep(sheets, 'redo')}
              >${words.redo}</wr-button
            >
          </wr-toolbar>
        </div>
      </div>
      <div class="row fields">
        <wr-field
          class="title"
          label=${words.heading}
          .value=${sheet.title}
          @field-changed=${({ detail }: CustomEvent<FieldText>) => this.#titled(sheet, detail.value)}
        ></wr-field>
        <wr-choice
          label=${words.paper}
          .options=${[
            { value: 'letter', label: words.papers.letter },
            { value: 'a4', label: words.papers.a4 },
          ]}
          .value=${sheet.paper}
          @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) =>
            sheets.change({ ...sheet, paper: paperOf(detail.value) })}
        ></wr-choice>
      </div>
      <div class="row actions">
        <wr-button .pressed=${this.adding} @click=${this.#toggleAdding} ?disabled=${empty}>${words.add}</wr-button>
        <wr-button ?disabled=${empty} @click=${this.#project}>${words.project}</wr-button>
        <wr-button @click=${() => saveFile(`${sheet.id}.sheet.json`, 'application/json', sheets.fileText)}
          >${words.save}</wr-button
        >
      </div>
      <div class="row actions">
        <wr-choice
          label=${words.printed}
          .options=${PARTS.map((value) => ({ value, label: words.parts[value] }))}
          .value=${sheets.parts}
          @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) =>
            sheets.chooseParts(PARTS.find((each) => each === detail.value) ?? 'both')}
        ></wr-choice>
        <wr-button look="main" ?disabled=${empty} @click=${this.#print}>${words.print}</wr-button>
      </div>
      ${this.#answering()} ${empty ? html`<p>${words.empty}</p>` : nothing}
      ${
        this.adding
          ? html`<wr-sheet-add
              .room=${this.room}
              .closable=${!empty}
              @adding-done=${() => void this.#then('.actions wr-button', this.#added())}
            ></wr-sheet-add>`
          : nothing
      }
      <ol class="problems">
        ${sheet.problems.map(
          (problem, place) =>
            html`<li>
              <wr-sheet-problem .room=${this.room} .problem=${problem} .place=${place}></wr-sheet-problem>
            </li>`,
        )}
      </ol>`;
  }

  #toggleAdding(): void {
    this.adding = !this.adding;
  }

  async #added(): Promise<void> {
    this.adding = false;
    await this.updateComplete;
  }

  /** The answers that are being worked out; room is kept for it, so that nothing moves. */
  #answering(): unknown {
    const { answering } = this.room.sheets;
    return html`<div class="row answering" role="status">
      ${
        answering === null
          ? nothing
          : html`<span>${words.answering}</span>
              <progress aria-label=${words.answering} max="1" .value=${answering}></progress>
              <wr-button look="quiet" @click=${() => this.room.sheets.stopAnswering()}
                >${words.stopAnswering}</wr-button
              >`
      }
    </div>`;
  }

  #create(): void {
    this.room.sheets.create(words.untitled);
    void this.#then('.title');
  }

  /** What was pressed is gone once this is done: the focus goes to what comes next. */
  async #then(next: string, done?: Promise<void>): Promise<void> {
    await done;
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>(next)?.focus();
  }

  #titled(sheet: Sheet, title: string): void {
    if (title !== sheet.title) this.room.sheets.change({ ...sheet, title: title.slice(0, 200) });
  }

  async #print(): Promise<void> {
    const ready = await this.room.sheets.answerAll();
    const { sheet } = this.room.sheets;
    if (!ready || sheet === null) return;
    const { printSheet } = await import('../../print/print-sheet.ts');
    await printSheet(sheet, (problem) => this.room.sheets.answerTo(problem), this.room.sheets.parts);
  }

  async #project(): Promise<void> {
    const ready = await this.room.sheets.answerAll();
    const { sheet } = this.room.sheets;
    if (!ready || sheet === null) return;
    const { projectSheet } = await import('../../print/print-sheet.ts');
    await projectSheet(sheet, (problem) => this.room.sheets.answerTo(problem));
  }

  #chosen({ target }: Event): void {
    if (!(target instanceof HTMLInputElement)) return;
    const file = target.files?.[0];
    target.value = '';
    if (file !== undefined) void this.#bring(file);
  }

  async #bring(file: File): Promise<void> {
    if (file.size > LARGEST_FILE) {
      this.refusal = words.tooLarge;
      return;
    }
    try {
      const read = await this.room.sheets.bring(await file.text());
      this.refusal = read.ok ? '' : read.problem.message;
    } catch {
      this.refusal = words.unreadable;
    }
  }

  #shortcut(event: KeyboardEvent): void {
    const step = undoKey(event);
    if (step === null || this.room.sheets.sheet === null) return;
    event.preventDefault();
    takeStep(this.room.sheets, step);
  }
}

customElements.define('wr-sheets', WrSheets);
