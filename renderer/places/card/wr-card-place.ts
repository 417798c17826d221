import { html, nothing } from 'lit';
import { textField } from '../../../core/card/document.ts';
import { writeCardFile } from '../../../core/card/file.ts';
import type { CardCaution } from '../../../main/desk/desk.ts';
import { saveCardFile } from '../../backup/save-file.ts';
import { announce } from '../../parts/announcer.ts';
import { data, element, state } from '../../parts/element.ts';
import { takeStep, undoKey } from '../../parts/undo-keys.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-notice.ts';
import '../../parts/wr-tabs.ts';
import type { TabChosen } from '../../parts/wr-tabs.ts';
import { DEMO_CARD } from '../../session/card-opener.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { BroughtInController } from '../../shell/brought-in-controller.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords as words } from '../../words/card.ts';
import { shellWords } from '../../words/shell.ts';
import type { CardEditor, Selection } from './card-editor.ts';
import { CardArrival, FileDrop } from './card-arrival.ts';
import { CardActions } from './card-actions.ts';
import { type CardRoom, roomOf } from './card-room.ts';
import { placeHead, placeHeadStyles } from './place-head.ts';
import './wr-card-arrived.ts';
import './wr-card-check.ts';
import './wr-card-lines.ts';
import './wr-card-proof.ts';
import './wr-card-list.ts';
import './wr-card-study.ts';
import './wr-card-whole.ts';
import type { ArrivalAnswer } from './wr-card-arrived.ts';
import './wr-card-caution.ts';
import type { WrCardCaution } from './wr-card-caution.ts';
import type { CardAction, SavedFile } from './wr-card-list.ts';
import './wr-card-start.ts';
import type { CardNamed } from './wr-card-start.ts';

/** The views of the Card place, in the order of their tabs. */
const VIEWS = ['cards', 'lines', 'whole', 'check', 'proof', 'study'] as const;
type View = (typeof VIEWS)[number];

function isView(name: string): name is View {
  return VIEWS.some((view) => view === name);
}

const Base = element({
  app: data<AppContext>(),
  view: state<View>('cards'),
  /** Whether the title of a new card is asked for. */
  starting: state(false),
  /** The view from which one came to change a line. */
  cameFrom: state<'check' | 'proof' | 'whole' | null>(null),
  /** The card that was saved as a file last. */
  savedFile: state<SavedFile | null>(null),
});

/** The Card: every card there is, and all work on the one that is open. */
export class WrCardPlace extends Base {
  static override styles = [sharedStyles, placeStyles, placeHeadStyles];

  readonly #onKey = (event: KeyboardEvent): void => this.#shortcut(event);
  readonly #arrival = new CardArrival(this);
  readonly #actions = new CardActions(this);
  readonly #drop = new FileDrop(this, (file) => this.withCaution('import', () => void this.#arrival.take(file)));

  constructor() {
    super();
    new StoreController(this, () => [this.room, this.app.preferences, this.app.saving]);
    new BroughtInController(this, () => void this.room.list());
  }

  get room(): CardRoom {
    return roomOf(this.app);
  }

  get #caution(): WrCardCaution | null {
    return this.renderRoot.querySelector('wr-card-caution');
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('keydown', this.#onKey);
    void this.#enter();
  }

  override disconnectedCallback(): void {
    window.removeEventListener('keydown', this.#onKey);
    void this.room.refreshTable();
    super.disconnectedCallback();
  }

  protected override render(): unknown {
    const { editor, trouble } = this.room;
    return html`<div class="page">
      ${placeHead({
        editor,
        used: this.app.preferences.values.cardId === editor?.id,
        use: () => void this.#actions.use(editor?.id ?? DEMO_CARD),
        back: this.cameFrom === null ? null : { label: words.back[this.cameFrom], go: () => this.#goBack() },
      })}
      ${
        trouble === ''
          ? nothing
          : html`<wr-notice tone="bad" @notice-closed=${() => this.room.forgetTrouble()}>${trouble}</wr-notice>`
      }
      ${editor === null ? html`<p>${words.opening}</p>` : this.#body(editor)}
      <div class="drop ${this.#drop.over ? 'shown' : ''}" aria-hidden="true"><span>${words.shelf.drop}</span></div>
      <input
        class="unseen"
        type="file"
        tabindex="-1"
        aria-hidden="true"
        @change=${(event: Event) => this.#arrival.chosen(event)}
      />
      <wr-card-start
        ?open=${this.starting}
        .entries=${this.room.entries ?? []}
        @card-named=${({ detail }: CustomEvent<CardNamed>) => this.#start(detail)}
        @start-left=${this.#leaveStart}
      ></wr-card-start>
      <wr-card-caution .preferences=${this.app.preferences}></wr-card-caution>
    </div>`;
  }

  #body(editor: CardEditor): unknown {
    if (this.#arrival.file !== null) {
      return html`<wr-card-arrived .file=${this.#arrival.file} @arrival-answered=${this.#answered}></wr-card-arrived>`;
    }
    return html`${this.#notices(editor)}
      <wr-tabs
        label=${words.viewsLabel}
        .tabs=${VIEWS.map((id) => ({ id, label: words.views[id] }))}
        current=${this.view}
        @tab-chosen=${({ detail }: CustomEvent<TabChosen>) => this.#show(detail.id)}
        @card-action=${({ detail }: CustomEvent<CardAction>) => this.#actions.start(detail)}
        @line-shown=${({ detail }: CustomEvent<Selection>) => this.#showLine(detail)}
        @view-requested=${({ detail }: CustomEvent<TabChosen>) => this.#show(detail.id)}
        @use-requested=${() => this.#actions.use(editor.id)}
      >
        <div slot=${this.view}>${this.#content()}</div>
      </wr-tabs>`;
  }

  /** What the view shows of the room. */
  #content(): unknown {
    const { room, app, savedFile } = this;
    switch (this.view) {
      case 'cards':
        return html`<wr-card-list
          .room=${room}
          .preferences=${app.preferences}
          .savedFile=${savedFile}
          @saved-read=${this.#savedRead}
        ></wr-card-list>`;
      case 'lines':
        return html`<wr-card-lines .room=${room}></wr-card-lines>`;
      case 'whole':
        return html`<wr-card-whole .room=${room}></wr-card-whole>`;
      case 'check':
        return html`<wr-card-check .room=${room}></wr-card-check>`;
      case 'proof':
        return html`<wr-card-proof .room=${room}></wr-card-proof>`;
      case 'study':
        return html`<wr-card-study .room=${room}></wr-card-study>`;
    }
  }

  /** Back to where one came from to change a line; the button goes, so the focus goes to the views. */
  #goBack(): void {
    this.#show(this.cameFrom ?? this.view);
    this.#focusTabs();
  }

  #savedRead(): void {
    this.savedFile = null;
  }

  #notices(editor: CardEditor): unknown {
    const { saved } = editor;
    if (editor.fixed && this.view !== 'cards') {
      return html`<div class="demo">
        <p>${words.demo.notice}</p>
        <wr-button look="main" @click=${() => this.#actions.copy(editor.id)}>${words.demo.copy}</wr-button>
        <wr-button @click=${() => this.#actions.begin()}>${words.demo.start}</wr-button>
      </div>`;
    }
    const problem = saved.status === 'failed' ? this.app.saving.unsaid(saved.problem) : null;
    if (problem === null) return nothing;
    const { document } = editor;
    const saveElsewhere = (): void => {
      const name = saveCardFile(textField(document, 'title'), textField(document, 'season'), writeCardFile(document));
      this.tellSaved(editor.id, name);
    };
    const { savedFile } = this;
    return html`<wr-notice
      tone="bad"
      action=${shellWords.retry}
      .closable=${false}
      @notice-action=${() => editor.retrySaving()}
      >${problem.message} ${savedFile?.id === editor.id ? savedFile.words : nothing}
      <wr-button slot="more" @click=${saveElsewhere}>${shellWords.saveCardElsewhere}</wr-button></wr-notice
    >`;
  }

  tellSaved(id: string, name: string): void {
    const said = words.shelf.savedTo[this.app.about.host](name);
    this.savedFile = { id, words: said };
    announce(said);
  }

  async #enter(): Promise<void> {
    await this.room.enter();
    if (this.room.editor?.fixed === false) this.view = 'lines';
  }

  #show(view: string): void {
    if (isView(view)) this.view = view;
    this.cameFrom = null;
    this.savedFile = null;
    if (view === 'cards') void this.room.list();
    this.room.editor?.settle();
  }

  /** Shows the lines of a card just opened; what was pressed may be gone, so the focus goes to the views. */
  showFresh(): void {
    this.view = 'lines';
    this.#leaveArrival();
  }

  #focusTabs(): void {
    void this.updateComplete.then(() => this.renderRoot.querySelector('wr-tabs')?.focus());
  }

  #showLine(selection: Selection): void {
    const { view } = this;
    this.room.editor?.select(selection);
    this.cameFrom = view === 'check' || view === 'proof' || view === 'whole' ? view : null;
    this.view = 'lines';
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('wr-card-lines')?.focus());
  }

  askForTitle(): void {
    this.starting = true;
  }

  pickFile(): void {
    this.renderRoot.querySelector('input')?.click();
  }

  #start({ title, season }: CardNamed): void {
    this.starting = false;
    void this.#actions.keepNew(title, season);
  }

  #leaveStart(): void {
    this.starting = false;
  }

  withCaution(about: CardCaution, follow: () => void): void {
    this.#caution?.warn(about, follow);
  }

  #answered({ detail }: CustomEvent<ArrivalAnswer>): void {
    const { read, like } = this.#arrival.file ?? {};
    if (detail.answer === 'keep' && read?.ok === true)
      void this.#actions.keep(read.value.document).then(() => this.#arrival.leave());
    else if (detail.answer === 'open') void this.#actions.open(like?.id ?? DEMO_CARD);
    else this.#leaveArrival();
  }

  #leaveArrival(): void {
    this.#arrival.leave();
    this.#focusTabs();
  }

  #shortcut(event: KeyboardEvent): void {
    const { editor } = this.room;
    const step = isInWords(event) ? null : undoKey(event);
    if (step === null || editor === null || editor.fixed || this.#caution?.open === true || this.starting) return;
    event.preventDefault();
    takeStep(editor, step);
  }
}

/** Whether a key is pressed in a field of words, where undo means the words; a line that is typed is undone as the card is. */
function isInWords(event: KeyboardEvent): boolean {
  const [at] = event.composedPath();
  const inLines = event
    .composedPath()
    .some((part) => part instanceof HTMLElement && part.dataset['here'] !== undefined);
  return at instanceof HTMLInputElement && /^(?:text|search)$/.test(at.type) && !inLines;
}

customElements.define('wr-card-place', WrCardPlace);
