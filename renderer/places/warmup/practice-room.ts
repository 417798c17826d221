import type { Problem, Result } from '../../../core/base/result.ts';
import { randomFromSeed } from '../../../core/base/random.ts';
import type { Card } from '../../../core/card/card.ts';
import { type CardFile, readCard } from '../../../core/card/file.ts';
import { type MarkedCard, markedCard } from '../../../core/card/mark.ts';
import type { PassStep } from '../../../core/exchange/steps.ts';
import type { DealKind } from '../../../core/warmup/deal-kinds.ts';
import type { AnswerEntry, PracticeEntry } from '../../../core/warmup/history-file.ts';
import { makeItem, type WarmUpItem } from '../../../core/warmup/item.ts';
import type { TableKind } from '../../../core/table/kinds.ts';
import { planSession } from '../../../core/warmup/session.ts';
import { beginSitting, nextInSitting, type Sitting } from '../../../core/warmup/sitting.ts';
import { type Answer, type Ask, question } from '../../session/ask.ts';
import type { AppContext } from '../../shell/app-context.ts';
import type { WorkerLine } from '../../worker/client.ts';
import { type Engine, engine } from '../../worker/engine.ts';
import type { Pool } from '../../worker/pool.ts';
import type { FindRequest, FoundDocument, RedealRequest } from '../../../core/engine/practice-questions.ts';
import { PracticeLog } from './practice-log.ts';
import { countsOf, type DealOptions, freshSeed, inTheRoom, type RoomHost, today, valueOf } from './room-parts.ts';
import { SheetBook } from './sheet-book.ts';
import { type About, WarmUpRun } from './warm-up-run.ts';
import { Store } from '../../session/store.ts';

type App = Pick<AppContext, 'desk' | 'preferences' | 'cards' | 'about' | 'saving'> &
  Pick<RoomHost, 'pool' | 'incoming' | 'fits'>;

/**
 * All that the Warm-up place holds: the card, the practice history, the problem at hand and the
 * sheets. It outlives the place, so that everything is still there on return.
 */
export class PracticeRoom extends Store implements RoomHost {
  readonly #log: PracticeLog;
  readonly #app: App;
  readonly worker: Engine;
  readonly pool: Pool;
  readonly incoming: RoomHost['incoming'];
  readonly fits: RoomHost['fits'];
  readonly sheets: SheetBook;
  readonly #found: Ask<FindRequest, never, FoundDocument>;
  readonly #redealt: Ask<RedealRequest, never, WarmUpItem>;
  #cardFile: CardFile | null = null;
  #dealt = 0;
  /** The problems since the start or the last leave, oldest first, and the place of the one at hand. */
  #runs: readonly WarmUpRun[] = [];
  #place = 0;
  #sitting: (Sitting & { readonly id: string }) | null = null;
  /** The sitting that has ended and is looked at. */
  #ended: { readonly id: string; readonly skipped: number } | null = null;
  #options: DealOptions = { kind: 'any', tiles: 'turns', clock: false };
  #trouble = '';

  constructor(app: App, startWorker?: () => WorkerLine) {
    super();
    this.#log = new PracticeLog(app.desk, () => this.notify());
    this.#app = app;
    this.worker = engine(startWorker);
    this.pool = app.pool;
    this.incoming = app.incoming;
    this.fits = app.fits;
    this.#found = inTheRoom(this, question(this.worker, 'find'));
    this.#redealt = inTheRoom(this, question(this.worker, 'redeal'));
    this.sheets = new SheetBook(app, this, () => this.notify());
    app.saving.whenItSaves(() => this.retrySaving());
  }

  /** The card that is practised with. */
  get card(): MarkedCard {
    return markedCard(this.#cardFile?.document);
  }
  get table(): TableKind {
    return this.#app.preferences.values.table;
  }
  get cardTitle(): string {
    return this.#cardFile?.card.title ?? '';
  }
  get history(): readonly PracticeEntry[] {
    return this.#log.entries;
  }
  get sections(): Card['sections'] {
    return this.#cardFile?.card.sections ?? [];
  }
  /** The problem at hand; null when none is. */
  get run(): WarmUpRun | null {
    return this.#runs[this.#place] ?? null;
  }
  get sitting(): Sitting | null {
    return this.#sitting;
  }
  /** The number of the problem at hand, from 1. */
  get number(): number {
    return this.#place + 1;
  }
  /** Whether a problem before this one can be looked at again. */
  get canGoBack(): boolean {
    return this.#place > 0;
  }
  /** What was answered in the sitting that has just ended; null when none has. */
  get ended(): readonly AnswerEntry[] | null {
    const ended = this.#ended;
    if (ended === null) return null;
    return this.history.filter((entry): entry is AnswerEntry => entry.type === 'answer' && entry.sitting === ended.id);
  }
  /** How many problems of that sitting were passed over. */
  get skipped(): number {
    return this.#ended?.skipped ?? 0;
  }
  get options(): DealOptions {
    return this.#options;
  }
  /** Deals tried so far by the search that runs. */
  get tried(): number {
    return this.#found.answer.progress ?? 0;
  }
  get finding(): boolean {
    return [this.#found, this.#redealt].some(({ answer }) => answer.status === 'pending');
  }
  /** What went wrong last, in words; empty when nothing did. */
  get trouble(): string {
    return this.#trouble;
  }
  /** Why something of the practice is not saved; null when nothing waits for a second try. */
  get unsaved(): Problem | null {
    const failed = [this.#log.saved, this.sheets.saved].find((saved) => saved.status === 'failed');
    return failed?.problem ?? null;
  }

  retrySaving(): void {
    this.#log.retrySaving();
    this.sheets.retrySaving();
  }

  /** Loads the card in use, the history and the sheets. */
  async enter(): Promise<void> {
    const card = await this.#app.cards.open(this.#app.preferences.values.cardId, true);
    const read = card.ok ? readCard(card.value) : card;
    if (read.ok) this.#cardFile = read.value;
    else this.fail(read.problem.message);
    const history = await this.#log.read();
    if (!history.ok) this.fail(history.problem.message);
    await this.sheets.list();
    this.notify();
    if (history.ok)
      await this.#log.addMisses(async (rack) =>
        valueOf(await this.worker.ask('kind', { card: this.card, rack: countsOf(rack) })),
      );
    this.notify();
  }

  choose(change: Partial<DealOptions>): void {
    this.#options = { ...this.#options, ...change };
    this.notify();
  }

  /** Finds a deal with the chosen options and starts it. */
  async deal(): Promise<void> {
    const { kind } = this.#options;
    const found = await this.find(kind, this.#nextSize());
    if (found === null) return;
    this.start(found.item, { kind, found });
  }

  /** As chosen; in turn where both are. */
  #nextSize(): 13 | 14 {
    const { tiles } = this.#options;
    this.#dealt += 1;
    if (tiles !== 'turns') return tiles;
    return this.#dealt % 2 === 1 ? 13 : 14;
  }

  /** A deal of a kind; null if there is none, or if a newer question replaced this one. */
  async find(kind: DealKind, tiles: 13 | 14): Promise<FoundDocument | null> {
    const found = await this.#found.ask({ card: this.card, kind, tiles, seed: freshSeed() });
    this.#failWith(this.#found.answer);
    return found;
  }

  /** A problem of a kind before a pass; null if there is none. Before a later pass the table has played up to it. */
  async problemAt(kind: DealKind, tiles: 13 | 14, step: PassStep): Promise<WarmUpItem | null> {
    if (step === 'right') return (await this.find(kind, tiles))?.item ?? null;
    return await this.#redeal(kind, tiles, step);
  }

  /** A problem of a kind dealt anew, without a code; null if there is none. */
  async #redeal(kind: DealKind, tiles: 13 | 14, step: PassStep): Promise<WarmUpItem | null> {
    const dealt = await this.#redealt.ask({ card: this.card, kind, step, tiles, seed: freshSeed() });
    this.#failWith(this.#redealt.answer);
    return dealt;
  }

  stopFinding(): void {
    this.#found.clear();
    this.#redealt.clear();
  }

  /** Starts a problem after those at hand. */
  start(item: WarmUpItem, about: About = {}): void {
    this.#begin(WarmUpRun.start(this, item, about));
  }

  /** Opens the answer to a problem of the history again. */
  reopen({ step, asked }: AnswerEntry): void {
    if (asked === undefined) return;
    const { rack, gone, seat, code, give, blind, stops, keeps, aims, why } = asked;
    const item = makeItem({ rack, gone, seat, step, ...(code === undefined ? {} : { code }) });
    const attempt = { give, blind, stops, keeps, aims, why };
    this.#begin(item.ok ? WarmUpRun.reopen(this, item.value, attempt) : item);
  }

  #begin(run: Result<WarmUpRun>): void {
    if (!run.ok) {
      this.fail(run.problem.message);
      return;
    }
    this.run?.rest();
    this.#runs = [...this.#runs, run.value];
    this.#place = this.#runs.length - 1;
    this.#trouble = '';
    this.notify();
  }

  /** Leaves the problems at hand; a sitting in which something was done ends with what it came to. */
  leave(): void {
    // The last problem may be left before it was thought about; those before it were passed over.
    const skipped = this.#runs.filter(({ isAnswered }, place) => !isAnswered && place < this.#runs.length - 1).length;
    const isEnded = skipped > 0 || this.#runs.some(({ isAnswered }) => isAnswered);
    this.run?.rest();
    if (this.#sitting !== null) this.#ended = isEnded ? { id: this.#sitting.id, skipped } : null;
    this.#runs = [];
    this.#place = 0;
    this.#sitting = null;
    this.notify();
  }

  /** Closes what the last sitting came to. */
  forgetEnded(): void {
    this.#ended = null;
    this.notify();
  }

  /** Begins the practice of the day: own misses that are due, dealt anew, with others between. */
  async practise(): Promise<void> {
    const random = randomFromSeed(freshSeed());
    const items = planSession({ history: this.history, today: today(), random });
    this.#ended = null;
    this.#runs = [];
    this.#place = 0;
    this.#sitting = { ...beginSitting(items, Date.now()), id: crypto.randomUUID() };
    await this.next();
  }

  /** Shows the problem before this one. */
  back(): void {
    this.#place = Math.max(0, this.#place - 1);
    this.notify();
  }

  /** The next problem: one that was looked back from, or a new one; a sitting ends after ten minutes or when none is left. */
  async next(): Promise<void> {
    if (this.#place < this.#runs.length - 1) {
      this.#place += 1;
      this.notify();
      return;
    }
    if (this.#sitting === null) return await this.deal();
    const { id } = this.#sitting;
    const { item, sitting } = nextInSitting(this.#sitting, Date.now());
    if (item === null) return this.leave();
    const { kind, step, miss } = item;
    const tiles = sitting.done % 2 === 1 ? 13 : 14;
    const dealt = await this.#redeal(kind, tiles, step);
    if (dealt === null || this.#sitting?.id !== id) return;
    this.#sitting = { ...sitting, id };
    this.start(dealt, { kind, miss, sitting: id });
  }

  /** Deals a whole exchange, to be played pass after pass. */
  async exchange(): Promise<void> {
    const found = await this.find('any', this.#nextSize());
    if (found !== null) this.start(found.item, { kind: 'any', isExchange: true });
  }

  /** Adds to the practice history; it is kept in the background. */
  note(...entries: readonly PracticeEntry[]): void {
    this.#log.note(...entries);
    this.notify();
  }

  fail(message: string): void {
    this.#trouble = message;
    this.notify();
  }

  #failWith({ status, message }: Pick<Answer<unknown>, 'status' | 'message'>): void {
    if (status === 'failed') this.fail(message);
  }

  forgetTrouble(): void {
    this.#trouble = '';
    this.notify();
  }

  /** Called by the parts of the room after a change. */
  changed(): void {
    this.notify();
  }
}

const rooms = new WeakMap<AppContext, PracticeRoom>();

/** The one practice room of an app, made at the first visit. */
export function roomOf(app: AppContext): PracticeRoom {
  const room = rooms.get(app) ?? new PracticeRoom(app);
  rooms.set(app, room);
  return room;
}
