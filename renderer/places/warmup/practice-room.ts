import { randomFromSeed } from '../../../core/base/random.ts';
import { type DecisionKind, EQUAL_WITHIN } from '../../../core/review/decision.ts';
import type { PracticeEntry } from '../../../core/warmup/history.ts';
import { ownMisses } from '../../../core/warmup/own-misses.ts';
import type { WarmUpItem } from '../../../core/warmup/item.ts';
import { MOST_SECONDS, planSession, type SessionItem } from '../../../core/warmup/session.ts';
import type { DealKind } from '../../../core/warmup/deal-kinds.ts';
import { type StoppableLine, WorkerClient } from '../../worker/client.ts';
import { SaveQueue, type SaveStatus } from '../../session/save-queue.ts';
import type { AppContext } from '../../shell/app-context.ts';
import type { FoundView, SectionView, WarmUpCalls } from '../../worker/warm-up-calls.ts';
import { answerOf, freshSeed, today } from './answers.ts';
import type { DealWishes, RoomHost } from './room-parts.ts';
import { SheetBook } from './sheet-book.ts';
import { WarmUpRun } from './warm-up-run.ts';

type App = Pick<AppContext, 'desk' | 'preferences' | 'cards' | 'about'>;

/** A sitting of practice: what is still to come, and when it began. */
export interface Sitting {
  readonly left: readonly SessionItem[];
  readonly done: number;
  readonly of: number;
  /** Milliseconds since 1970. */
  readonly startedAt: number;
}

/**
 * All that the Warm-up place holds: the card, the practice history, the problem at hand and the
 * sheets. It outlives the place, so that everything is there when one comes back.
 */
export class PracticeRoom implements RoomHost {
  readonly #app: App;
  readonly #listeners = new Set<() => void>();
  readonly #queue = new SaveQueue(() => this.#tell());
  readonly worker: WorkerClient<WarmUpCalls>;
  readonly sheets: SheetBook;
  #card = '';
  #cardTitle = '';
  #history: readonly PracticeEntry[] = [];
  #sections: readonly SectionView[] = [];
  #run: WarmUpRun | null = null;
  #sitting: Sitting | null = null;
  #wishes: DealWishes = { kind: 'any', tiles: 'turns', clock: false };
  #dealt = 0;
  #tried = 0;
  #finding = false;
  #trouble = '';

  constructor(app: App, startWorker: () => StoppableLine) {
    this.#app = app;
    this.worker = new WorkerClient(startWorker);
    this.sheets = new SheetBook(app, this, () => this.#tell());
  }

  /** The card file's text. */
  get card(): string {
    return this.#card;
  }
  get cardTitle(): string {
    return this.#cardTitle;
  }
  get history(): readonly PracticeEntry[] {
    return this.#history;
  }
  get sections(): readonly SectionView[] {
    return this.#sections;
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
    return this.#tried;
  }
  get finding(): boolean {
    return this.#finding;
  }
  /** What went wrong last, in words; empty when nothing did. */
  get trouble(): string {
    return this.#trouble;
  }
  get saved(): SaveStatus {
    return this.#queue.status;
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Brings the card in use, the history and the sheets. */
  async enter(): Promise<void> {
    await this.#takeCard();
    const history = await this.#app.desk.practice({ do: 'history' });
    if (history.ok) this.#history = history.value.entries;
    else this.fail(history.problem.message);
    await this.sheets.list();
    this.#tell();
    if (history.ok) await this.#takeMisses();
  }

  wish(change: Partial<DealWishes>): void {
    this.#wishes = { ...this.#wishes, ...change };
    this.#tell();
  }

  /** Finds a deal as wished and starts with it. */
  async deal(): Promise<void> {
    const { kind, tiles } = this.#wishes;
    const size = tiles === 'turns' ? (this.#dealt % 2 === 0 ? 13 : 14) : tiles;
    this.#dealt += 1;
    const found = await this.find(kind, size);
    if (found === null) return;
    this.#sitting = null;
    this.start(found.item, { kind, found });
  }

  /** A deal of a kind; null when there is none, or a newer question took its place. */
  async find(kind: DealKind, tiles: 13 | 14): Promise<FoundView | null> {
    return await this.#ask(() =>
      this.worker.askNewest(
        'find',
        { card: this.#card, kind, tiles, seed: freshSeed() },
        {
          onProgress: (tried) => {
            this.#tried = tried;
            this.#tell();
          },
        },
      ),
    );
  }

  stopFinding(): void {
    this.worker.cancelNewest('find');
    this.worker.cancelNewest('redeal');
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
    const items = planSession({ history: this.#history, today: today(), random: randomFromSeed(freshSeed()) });
    this.#sitting = { left: items, done: 0, of: items.length, startedAt: Date.now() };
    await this.next();
  }

  /** The next problem of the sitting; ends it when ten minutes are over or none is left. */
  async next(): Promise<void> {
    const sitting = this.#sitting;
    if (sitting === null) return await this.deal();
    const [item, ...left] = sitting.left;
    const over = Date.now() - sitting.startedAt > MOST_SECONDS * 1000;
    if (item === undefined || over) {
      this.#sitting = { ...sitting, left: [] };
      this.#run = null;
      this.#tell();
      return;
    }
    this.#sitting = { ...sitting, left, done: sitting.done + 1 };
    const { kind, step, miss } = item;
    const dealt = await this.#ask(() =>
      this.worker.askNewest('redeal', { card: this.#card, kind, step, seed: freshSeed() }),
    );
    if (dealt === null) return;
    this.start(dealt, { kind, miss });
  }

  /** Adds to the practice history; it is kept in the background. */
  note(...entries: readonly PracticeEntry[]): void {
    this.#history = [...this.#history, ...entries];
    this.#queue.add({ run: () => this.#app.desk.practice({ do: 'note', entries }) });
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

  /** Takes in the costly passes of games that were looked back at, of each game once; those of the demonstration are nobody's. */
  async #takeMisses(): Promise<void> {
    const [games, findings] = await Promise.all([this.#app.desk.listGames(), this.#app.desk.readFindings(null)]);
    if (!games.ok || !findings.ok) return;
    const played = new Set(games.value.filter(({ demo }) => !demo).map(({ id }) => id));
    const known = new Set(this.#history.map((entry) => (entry.type === 'miss' ? entry.source : '')));
    for (const { id, choices } of findings.value) {
      const costly = choices?.some(({ kind, cost, forced }) => isPass(kind) && !forced && cost > EQUAL_WITHIN);
      if (played.has(id) && !known.has(id) && costly === true) await this.#takeMissesOf(id);
    }
  }

  async #takeMissesOf(source: string): Promise<void> {
    const found = await this.#app.desk.readFindings(source);
    const review = found.ok ? found.value[0]?.review : undefined;
    for (const { id, rack, step, cost } of ownMisses(source, review?.decisions ?? [])) {
      const kind = answerOf(await this.worker.ask('kind', { card: this.#card, rack }));
      if (kind?.ok === true) this.note({ type: 'miss', id, day: today(), kind: kind.value, step, cost, source });
    }
  }

  async #takeCard(): Promise<void> {
    const card = await this.#app.cards.open(this.#app.preferences.values.cardId, true);
    if (!card.ok) {
      this.fail(card.problem.message);
      return;
    }
    const text = JSON.stringify(card.value.document);
    if (text === this.#card) return;
    this.#card = text;
    this.#cardTitle = card.value.card.title;
    const sections = answerOf(await this.worker.askNewest('sections', { card: text }));
    if (sections?.ok === true) this.#sections = sections.value;
  }

  async #ask<Value>(ask: () => Promise<Parameters<typeof answerOf<Value>>[0]>): Promise<Value | null> {
    this.#finding = true;
    this.#tried = 0;
    this.#tell();
    const answer = answerOf(await ask());
    this.#finding = false;
    if (answer?.ok === false) this.fail(answer.message);
    this.#tell();
    return answer?.ok === true ? answer.value : null;
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

function isPass(kind: DecisionKind): boolean {
  return kind === 'pass' || kind === 'courtesy';
}
