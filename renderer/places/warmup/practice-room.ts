import { randomFromSeed } from '../../../core/base/random.ts';
import type { DealKind } from '../../../core/warmup/deal-kinds.ts';
import type { PracticeEntry } from '../../../core/warmup/history.ts';
import type { WarmUpItem } from '../../../core/warmup/item.ts';
import { planSession } from '../../../core/warmup/session.ts';
import { beginSitting, nextInSitting, type Sitting } from '../../../core/warmup/sitting.ts';
import type { SaveStatus } from '../../session/save-queue.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { type StoppableLine, WorkerClient } from '../../worker/client.ts';
import type { FoundView, SectionView, WarmUpCalls } from '../../worker/warm-up-calls.ts';
import { freshSeed, today, valueOf } from './answers.ts';
import { DealFinder } from './deal-finder.ts';
import { PracticeLog } from './practice-log.ts';
import { RoomCard } from './room-card.ts';
import type { DealWishes, RoomHost } from './room-parts.ts';
import { SheetBook } from './sheet-book.ts';
import { WarmUpRun } from './warm-up-run.ts';

type App = Pick<AppContext, 'desk' | 'preferences' | 'cards' | 'about'>;

/**
 * All that the Warm-up place holds: the card, the practice history, the problem at hand and the
 * sheets. It outlives the place, so that everything is there when one comes back.
 */
export class PracticeRoom implements RoomHost {
  readonly #listeners = new Set<() => void>();
  readonly #log: PracticeLog;
  readonly #cardInUse: RoomCard;
  readonly worker: WorkerClient<WarmUpCalls>;
  readonly sheets: SheetBook;
  readonly #finder = new DealFinder(this);
  #run: WarmUpRun | null = null;
  #sitting: Sitting | null = null;
  #wishes: DealWishes = { kind: 'any', tiles: 'turns', clock: false };
  #trouble = '';

  constructor(app: App, startWorker: () => StoppableLine) {
    this.#log = new PracticeLog(app.desk, () => this.#tell());
    this.#cardInUse = new RoomCard(app);
    this.worker = new WorkerClient(startWorker);
    this.sheets = new SheetBook(app, this, () => this.#tell());
  }

  /** The card file's text. */
  get card(): string {
    return this.#cardInUse.text;
  }
  get cardTitle(): string {
    return this.#cardInUse.title;
  }
  get history(): readonly PracticeEntry[] {
    return this.#log.entries;
  }
  get sections(): readonly SectionView[] {
    return this.#cardInUse.sections;
  }
  /** The problem at hand; null when none is. */
  get run(): WarmUpRun | null {
    return this.#run;
  }
  get sitting(): Sitting | null {
    return this.#sitting;
  }
  get wishes(): DealWishes {
    return this.#wishes;
  }
  /** Deals tried so far by the search that runs. */
  get tried(): number {
    return this.#finder.tried;
  }
  get finding(): boolean {
    return this.#finder.finding;
  }
  /** What went wrong last, in words; empty when nothing did. */
  get trouble(): string {
    return this.#trouble;
  }
  get saved(): SaveStatus {
    return this.#log.saved;
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Brings the card in use, the history and the sheets. */
  async enter(): Promise<void> {
    const card = await this.#cardInUse.take(async (text) => valueOf(await this.worker.ask('sections', { card: text })));
    if (!card.ok) this.fail(card.problem.message);
    const history = await this.#log.read();
    if (!history.ok) this.fail(history.problem.message);
    await this.sheets.list();
    this.#tell();
    if (history.ok)
      await this.#log.takeMisses(async (rack) => valueOf(await this.worker.ask('kind', { card: this.card, rack })));
    this.#tell();
  }

  wish(change: Partial<DealWishes>): void {
    this.#wishes = { ...this.#wishes, ...change };
    this.#tell();
  }

  /** Finds a deal as wished and starts with it. */
  async deal(): Promise<void> {
    const { kind } = this.#wishes;
    const found = await this.#finder.asWished(this.#wishes);
    if (found === null) return;
    this.#sitting = null;
    this.start(found.item, { kind, found });
  }

  /** A deal of a kind; null when there is none, or a newer question took its place. */
  async find(kind: DealKind, tiles: 13 | 14): Promise<FoundView | null> {
    return await this.#finder.find(kind, tiles);
  }

  stopFinding(): void {
    this.#finder.stop();
  }

  /** Starts a problem in place of the one at hand. */
  start(
    item: WarmUpItem,
    about: { readonly kind?: DealKind; readonly found?: FoundView; readonly miss?: string | null } = {},
  ): void {
    const run = WarmUpRun.start(this, item, about);
    if (!run.ok) {
      this.fail(run.problem.message);
      return;
    }
    this.#run = run.value;
    this.#trouble = '';
    this.#tell();
  }

  /** Leaves the problem at hand. */
  leave(): void {
    this.#run = null;
    this.#sitting = null;
    this.#tell();
  }

  /** Begins the practice of the day: own misses that are due, dealt anew, with others between. */
  async practise(): Promise<void> {
    const random = randomFromSeed(freshSeed());
    const items = planSession({ history: this.history, today: today(), random });
    this.#sitting = beginSitting(items, Date.now());
    await this.next();
  }

  /** The next problem of the sitting; ends it when ten minutes are over or none is left. */
  async next(): Promise<void> {
    if (this.#sitting === null) return await this.deal();
    const { item, sitting } = nextInSitting(this.#sitting, Date.now());
    this.#sitting = sitting;
    if (item === null) {
      this.#run = null;
      this.#tell();
      return;
    }
    const { kind, miss } = item;
    const dealt = await this.#finder.again(item);
    if (dealt === null) return;
    this.start(dealt, { kind, miss });
  }

  /** Adds to the practice history; it is kept in the background. */
  note(...entries: readonly PracticeEntry[]): void {
    this.#log.note(...entries);
    this.#tell();
  }

  fail(message: string): void {
    this.#trouble = message;
    this.#tell();
  }

  forgetTrouble(): void {
    this.#trouble = '';
    this.#tell();
  }

  /** Called by the parts of the room after a change. */
  changed(): void {
    this.#tell();
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}
