import { css, html, LitElement, nothing } from 'lit';
import { type CardDocument, emptyCard } from '../../../core/card/document.ts';
import type { CardCaution } from '../../../main/desk/desk.ts';
import { announce } from '../../parts/announcer.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-notice.ts';
import '../../parts/wr-tabs.ts';
import type { TabChosen } from '../../parts/wr-tabs.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { placeStyles } from '../../shell/place-styles.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords as words } from '../../words/card.ts';
import type { CardEditor, Selection } from './card-editor.ts';
import { fileNameOf, handOut, readCardFile } from './card-files.ts';
import { type CardRoom, DEMO_CARD } from './card-room.ts';
import { FileDrop } from './file-drop.ts';
import { placeHead } from './place-head.ts';
import { placeHeadStyles } from './place-head-styles.ts';
import { roomOf } from './room-of.ts';
import { isView, VIEWS, type View, viewContent } from './views.ts';
import './wr-card-arrived.ts';
import type { ArrivalAnswer, ArrivedFile } from './wr-card-arrived.ts';
import './wr-card-caution.ts';
import type { WrCardCaution } from './wr-card-caution.ts';
import type { CardWish } from './wr-card-shelf.ts';
import './wr-card-start.ts';
import type { CardNamed } from './wr-card-start.ts';

/** The Card: every card there is, and all work on the one that is open. */
export class WrCardPlace extends LitElement {
  static override properties = {
    app: { attribute: false },
    view: { state: true },
    arrived: { state: true },
    starting: { state: true },
  };

  declare app: AppContext;
  declare protected view: View;
  /** A file that came in and awaits an answer. */
  declare protected arrived: ArrivedFile | null;
  /** Whether the title of a new card is asked for. */
  declare protected starting: boolean;

  static override styles = [sharedStyles, placeStyles, placeHeadStyles, css``];

  readonly #onKey = (event: KeyboardEvent): void => this.#shortcut(event);
  readonly #drop = new FileDrop(this, (file) => this.#withCaution('import', () => void this.#arrive(file)));

  constructor() {
    super();
    this.view = 'cards';
    this.arrived = null;
    this.starting = false;
    new StoreController(this, () => [this.#room, this.app.preferences]);
  }

  get #room(): CardRoom {
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
    void this.#room.refreshTable();
    super.disconnectedCallback();
  }

  protected override render(): unknown {
    const { editor, trouble } = this.#room;
    return html`<div class="page">
      ${placeHead({
        editor,
        used: this.app.preferences.values.cardId === editor?.id,
        use: () => void this.#use(editor?.id ?? DEMO_CARD),
      })}
      ${
        trouble === ''
          ? nothing
          : html`<wr-notice tone="bad" @notice-closed=${() => this.#room.forgetTrouble()}>${trouble}</wr-notice>`
      }
      ${editor === null ? html`<p>${words.opening}</p>` : this.#body(editor)}
      <div class="drop ${this.#drop.over ? 'shown' : ''}" aria-hidden="true"><span>${words.shelf.drop}</span></div>
      <input
        class="unseen"
        type="file"
        accept=".json,application/json"
        tabindex="-1"
        aria-hidden="true"
        @change=${this.#chosen}
      />
      <wr-card-start
        ?open=${this.starting}
        @card-named=${({ detail }: CustomEvent<CardNamed>) => this.#start(detail)}
        @start-left=${this.#leaveStart}
      ></wr-card-start>
      <wr-card-caution .preferences=${this.app.preferences}></wr-card-caution>
    </div>`;
  }

  #body(editor: CardEditor): unknown {
    if (this.arrived !== null) {
      return html`<wr-card-arrived .file=${this.arrived} @arrival-answered=${this.#answered}></wr-card-arrived>`;
    }
    return html`${this.#notices(editor)}
      <wr-tabs
        label=${words.viewsLabel}
        .tabs=${VIEWS.map((id) => ({ id, label: words.views[id] }))}
        current=${this.view}
        @tab-chosen=${({ detail }: CustomEvent<TabChosen>) => this.#show(detail.id)}
        @card-wished=${this.#wished}
        @line-shown=${({ detail }: CustomEvent<Selection>) => this.#showLine(detail)}
        @view-wished=${({ detail }: CustomEvent<TabChosen>) => this.#show(detail.id)}
        @use-wished=${() => this.#use(editor.id)}
      >
        <div slot=${this.view}>${viewContent(this.view, this.#room, this.app.preferences)}</div>
      </wr-tabs>`;
  }

  #notices(editor: CardEditor): unknown {
    const { saved } = editor;
    if (editor.fixed && this.view !== 'cards') {
      return html`<div class="demo">
        <p>${words.demo.notice}</p>
        <wr-button look="main" @click=${() => this.#copy(editor.id)}>${words.demo.copy}</wr-button>
        <wr-button @click=${() => this.#askForTitle()}>${words.demo.start}</wr-button>
      </div>`;
    }
    if (saved.status !== 'failed') return nothing;
    return html`<wr-notice tone="bad" action=${words.undoLast} .closable=${false} @notice-action=${() => editor.undo()}
      >${saved.problem.message}</wr-notice
    >`;
  }

  async #enter(): Promise<void> {
    await this.#room.enter();
    if (this.#room.editor?.fixed === false) this.view = 'lines';
  }

  #show(view: string): void {
    if (isView(view)) this.view = view;
    if (view === 'cards') void this.#room.list();
    this.#room.editor?.settle();
  }

  /** Shows the lines of a card just opened; what was pressed may be gone, so the focus goes to the views. */
  #showFresh(): void {
    this.view = 'lines';
    this.#focusTabs();
  }

  #focusTabs(): void {
    void this.updateComplete.then(() => this.renderRoot.querySelector('wr-tabs')?.focus());
  }

  #showLine(selection: Selection): void {
    this.#room.editor?.select(selection);
    this.view = 'lines';
  }

  #wished({ detail: { wish, id } }: CustomEvent<CardWish>): void {
    const done = {
      open: () => void this.#open(id),
      use: () => void this.#use(id),
      copy: () => void this.#copy(id),
      export: () => this.#withCaution('export', () => void this.#export(id)),
      start: () => this.#askForTitle(),
      bring: () => this.#withCaution('import', () => this.renderRoot.querySelector('input')?.click()),
    };
    done[wish]();
  }

  async #open(id: string): Promise<void> {
    if (id === this.#room.editor?.id || (await this.#room.open(id))) this.#showFresh();
  }

  async #use(id: string): Promise<void> {
    await this.#room.use(id);
    const title = this.#room.entries?.find((entry) => entry.id === id)?.title ?? '';
    announce(words.used(title));
  }

  async #copy(id: string): Promise<void> {
    if (await this.#room.keepCopy(id)) this.#showFresh();
  }

  async #export(id: string): Promise<void> {
    const text = await this.#room.textOf(id);
    const entry = this.#room.entries?.find((each) => each.id === id);
    if (text !== null) handOut(fileNameOf(entry?.title ?? '', entry?.season ?? ''), text);
  }

  #askForTitle(): void {
    this.#withCaution('entry', () => (this.starting = true));
  }

  async #start({ title, season }: CardNamed): Promise<void> {
    this.starting = false;
    if (await this.#room.keep(emptyCard(title, season))) this.#showFresh();
  }

  #leaveStart(): void {
    this.starting = false;
  }

  #withCaution(about: CardCaution, follow: () => void): void {
    this.#caution?.warn(about, follow);
  }

  #chosen({ target }: Event): void {
    if (!(target instanceof HTMLInputElement)) return;
    const file = target.files?.[0];
    target.value = '';
    if (file !== undefined) void this.#arrive(file);
  }

  async #arrive(file: File): Promise<void> {
    this.arrived = { name: file.name, read: null };
    this.arrived = { name: file.name, read: await readCardFile(file, this.#room) };
    await this.updateComplete;
    this.renderRoot.querySelector('wr-card-arrived')?.focus();
  }

  #answered({ detail }: CustomEvent<ArrivalAnswer>): void {
    const read = this.arrived?.read;
    if (detail.keep && read?.ok === true) void this.#keep(read.value.document);
    else {
      this.arrived = null;
      this.#focusTabs();
    }
  }

  async #keep(document: CardDocument): Promise<void> {
    const kept = await this.#room.keep(document);
    this.arrived = null;
    if (kept) this.#showFresh();
  }

  #shortcut(event: KeyboardEvent): void {
    const { editor } = this.#room;
    const wanted = (event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'z';
    if (!wanted || editor === null || editor.fixed || this.#caution?.open === true || this.starting) return;
    event.preventDefault();
    if (event.shiftKey) editor.redo();
    else editor.undo();
  }
}

customElements.define('wr-card-place', WrCardPlace);

declare global {
  interface HTMLElementTagNameMap {
    'wr-card-place': WrCardPlace;
  }
}
