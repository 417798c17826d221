import type { Result } from '../../../core/base/result.ts';
import { isSameCard, linesThatDiffer } from '../../../core/card/compare.ts';
import { type CardDocument, type LinePlace, textField } from '../../../core/card/document.ts';
import { changeCard } from '../../../core/card/edit.ts';
import { writeCardFile } from '../../../core/card/file.ts';
import { readCardDocument } from '../../../core/card/read-document.ts';
import type { BackupEntry, CardEntry, CardProgress, Desk } from '../../../main/desk/desk.ts';
import { type Answer, Ask, question } from '../../session/ask.ts';
import { DEMO_CARD } from '../../session/card-opener.ts';
import { SaveQueue } from '../../session/save-queue.ts';
import type { AppContext } from '../../shell/app-context.ts';
import type { Examination, OpenedCard } from '../../../core/engine/card-questions.ts';
import type { WorkerLine } from '../../worker/client.ts';
import { type Engine, engine } from '../../worker/engine.ts';
import { cardWords as words } from '../../words/card.ts';
import { isAlike } from '../../words/card-names.ts';
import { CardEditor } from './card-editor.ts';
import { Store } from '../../session/store.ts';
import { giveToTable, useCard } from '../../session/use-card.ts';

/** A card that is here and has the title and season of another one. */
export interface LikeCard {
  readonly id: string;
  /** Whether it is the same card to a player. */
  readonly same: boolean;
  /** In how many lines they differ. */
  readonly lines: number;
}

type App = Pick<AppContext, 'desk' | 'preferences' | 'session' | 'cards' | 'saving'>;

/**
 * All that the Card place holds: the cards there are, the one that is open, and how far a person
 * has come with it. It outlives the place, so that undo and the view are there when one comes back.
 */
export class CardRoom extends Store {
  readonly #app: App;
  readonly #worker: Engine;
  readonly #examination: Ask<{ readonly document: unknown }, never, Examination>;
  readonly #progressQueue = new SaveQueue(({ status }) => {
    if (status === 'failed') this.#fail(words.progressNotKept);
  });
  #entries: readonly CardEntry[] | null = null;
  #editor: CardEditor | null = null;
  #progress: CardProgress = { confirmed: [], answers: [] };
  #trouble = '';
  /** The line that was left to be changed while proof-reading; there proof-reading goes on. */
  proofPlace: LinePlace | null = null;

  constructor(app: App, startWorker?: () => WorkerLine) {
    super();
    this.#app = app;
    this.#worker = engine(startWorker);
    this.#examination = new Ask(question(this.#worker, 'examine'), { keeps: true });
    this.#examination.subscribe(() => this.notify());
    app.saving.whenItSaves(() => {
      this.#editor?.retrySaving();
      this.#progressQueue.retry();
    });
  }

  /** Null until the list has come. */
  get entries(): readonly CardEntry[] | null {
    return this.#entries;
  }
  /** The card that is open; null until one is. */
  get editor(): CardEditor | null {
    return this.#editor;
  }
  get entry(): CardEntry | undefined {
    return this.#entries?.find(({ id }) => id === this.#editor?.id);
  }
  get progress(): CardProgress {
    return this.#progress;
  }
  /** What went wrong last, in words; empty when nothing did. */
  get trouble(): string {
    return this.#trouble;
  }

  /** Lists the cards, and opens the one in use unless one is open. */
  async enter(): Promise<void> {
    await this.list();
    if (this.#editor !== null) return;
    const wanted = this.#app.preferences.values.cardId;
    await this.open(this.#entries?.some(({ id }) => id === wanted) === true ? wanted : DEMO_CARD);
  }

  async list(): Promise<void> {
    const cards = await this.#app.desk.listCards();
    if (cards.ok) this.#entries = cards.value;
    else this.#trouble = cards.problem.message;
    this.notify();
  }

  /** Opens a card in place of the one that is open. */
  async open(id: string): Promise<boolean> {
    const kept = await this.#app.desk.openCard(id);
    if (!kept.ok) return this.#fail(kept.problem.message);
    const read = await this.read(kept.value.text);
    if (!read.ok) return this.#fail(read.problem.message);
    const progress = await this.#app.desk.readCardProgress(id);
    if (!progress.ok) this.#fail(progress.problem.message);
    this.#progress = progress.ok ? progress.value : { confirmed: [], answers: [] };
    this.proofPlace = null;
    this.#editor = new CardEditor(this.#app.desk, kept.value.entry, read.value.document);
    this.#editor.subscribe(() => this.notify());
    this.notify();
    return true;
  }

  /** Keeps a document as a new card, and opens it. */
  async keep(document: CardDocument): Promise<boolean> {
    const saved = await this.#app.desk.saveCard(null, writeCardFile(document));
    return await this.#openAfter(saved);
  }

  /** Keeps a copy of a card as a new one, and opens that. */
  async keepCopy(id: string): Promise<boolean> {
    const text = await this.textOf(id);
    const read = text === null ? null : await this.read(text);
    if (read === null || !read.ok) return false;
    const { document } = read.value;
    const title = words.shelf.copyTitle(textField(document, 'title') || words.untitled);
    return await this.keep(changeCard(document, { title }));
  }

  /** The text of a card: of the open one as it now is, else as kept. */
  async textOf(id: string): Promise<string | null> {
    if (this.#editor?.id === id) return writeCardFile(this.#editor.document);
    const kept = await this.#app.desk.openCard(id);
    if (kept.ok) return kept.value.text;
    this.#fail(kept.problem.message);
    return null;
  }

  /** The card that is most like a document of its title and season; null if there is none of them. */
  async likeOf(document: CardDocument): Promise<LikeCard | null> {
    const names = { title: textField(document, 'title'), season: textField(document, 'season') };
    const alike: LikeCard[] = [];
    for (const { id } of this.#entries?.filter((entry) => isAlike(entry, names)) ?? []) {
      const text = await this.textOf(id);
      const own = text === null ? null : readCardDocument(text);
      if (own?.ok !== true) continue;
      alike.push({ id, same: isSameCard(own.value, document), lines: linesThatDiffer(own.value, document) });
    }
    return alike.find(({ same }) => same) ?? alike.toSorted((one, other) => one.lines - other.lines)[0] ?? null;
  }

  /** Reads a card file's text in the background; nothing is kept. */
  read(text: string): Promise<Result<OpenedCard>> {
    return this.#worker.ask('open', { text });
  }

  /** What looking at every way of the open card found; asked for by `examine`. */
  get examination(): Answer<Examination> {
    return this.#examination.answer;
  }

  /** Looks at every way of the open card, in the background. */
  async examine(): Promise<void> {
    if (this.#editor !== null) await this.#examination.ask({ document: this.#editor.document });
  }

  async remove(id: string): Promise<boolean> {
    const removed = await this.#app.desk.removeCard(id);
    if (!removed.ok) return this.#fail(removed.problem.message);
    if (this.#app.preferences.values.cardId === id) await this.use(DEMO_CARD);
    if (this.#editor?.id === id) await this.open(DEMO_CARD);
    await this.list();
    return true;
  }

  async backups(id: string): Promise<readonly BackupEntry[]> {
    const backups = await this.#app.desk.listBackups(id);
    if (!backups.ok) this.#fail(backups.problem.message);
    return backups.ok ? backups.value : [];
  }

  /** Puts a dated copy, or the newest one, in a card's place. */
  async restore(id: string, backup?: string): Promise<boolean> {
    const name = backup ?? (await this.backups(id))[0]?.name ?? '';
    return await this.#openAfter(await this.#app.desk.restoreCard(id, name));
  }

  /** Brings a removed card back, into use if it was in use. */
  async bringBack(id: string, wasUsed: boolean): Promise<boolean> {
    const back = await this.restore(id);
    if (back && wasUsed) await this.use(id);
    return back;
  }

  /** Makes a card the one for new games; an empty game at the Table takes it at once. */
  async use(id: string): Promise<void> {
    await useCard(this.#app, id);
    this.notify();
  }

  /** Gives the card in use, as it now is, to a Table where nothing is entered yet. */
  async refreshTable(): Promise<void> {
    await giveToTable(this.#app, this.#app.preferences.values.cardId);
  }

  changeProgress(change: Partial<CardProgress>): void {
    const id = this.#editor?.id;
    if (id === undefined) return;
    const progress = { ...this.#progress, ...change };
    this.#progress = progress;
    this.#progressQueue.add({ of: id, name: id, run: () => this.#app.desk.saveCardProgress(id, progress) });
    this.notify();
  }

  forgetTrouble(): void {
    this.#trouble = '';
    this.notify();
  }

  async #openAfter(saved: Awaited<ReturnType<Desk['saveCard']>>): Promise<boolean> {
    if (!saved.ok) return this.#fail(saved.problem.message);
    const opened = await this.open(saved.value.id);
    // After it: a list that grows would move the buttons below it just before they go.
    await this.list();
    return opened;
  }

  #fail(message: string): false {
    this.#trouble = message;
    this.notify();
    return false;
  }
}

const rooms = new WeakMap<AppContext, CardRoom>();

/** The one room of an app, made at the first visit. */
export function roomOf(app: AppContext): CardRoom {
  const room = rooms.get(app) ?? new CardRoom(app);
  rooms.set(app, room);
  return room;
}
