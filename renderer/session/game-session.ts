import { type Result, success } from '../../core/base/result.ts';
import { type AdviceTime, moreAdvice, USUAL_ADVICE } from '../../core/game/advice.ts';
import { type Correction, correctTile } from '../../core/game/correct.ts';
import type { GameEvent, TimedEvent } from '../../core/game/events.ts';
import { houseAllows, USUAL_SWAP_AFTER_CALL } from '../../core/game/house-rules.ts';
import { DEFAULT_POINT_RULES, type PointRules } from '../../core/game/point-rules.ts';
import type { GameState } from '../../core/game/game-state.ts';
import { GAME_FILE_KIND, GAME_SCHEMA_VERSION, type GameRecord, type Players } from '../../core/game/record.ts';
import { type GiveDue, legalEvents } from '../../core/game/legal.ts';
import { applyEvent } from '../../core/game/state.ts';
import { type TableKind, USUAL_KIND } from '../../core/table/kinds.ts';
import type { Desk, GameChange } from '../../main/desk/desk.ts';
import {
  canRedo,
  canUndo,
  currentFrame,
  did,
  eventsOf,
  type Frame,
  type History,
  historyOf,
  newHistory,
  redone,
  undone,
} from './history.ts';
import { emptyLayout, fillTray, fit, type Layout, formatLayout, parseLayout } from './layout.ts';
import { type SaveJob, SaveQueue, type SaveStatus } from './save-queue.ts';
import { Store } from './store.ts';

/** The part of the desk that keeps a game as it grows; what it answers beyond "kept" is not looked at. */
type GameKeeper = {
  readonly [Call in 'keepDraft' | 'startGame' | 'appendEvent' | 'dropEvent' | 'changeGame']: (
    ...given: Parameters<Desk[Call]>
  ) => Promise<Result<unknown>>;
};

/** What the session needs of the world. */
export interface SessionWorld {
  readonly desk: GameKeeper;
  readonly appVersion: string;
  /** The IANA time zone. */
  readonly zone: string;
  /** Now, UTC, ISO 8601 with Z. */
  readonly now: () => string;
  /** A new game's id for the time at which it begins. */
  readonly newId: (startedAt: string) => string;
  /** How the table pays in a game that is begun now; the usual rules when left out. */
  readonly payment?: () => PointRules;
  /** The kind of table at which a game is played that is begun now; the usual one when left out. */
  readonly table?: () => TableKind;
  /** Whether the house allows swaps right after a call in a game that is begun now; as usual when left out. */
  readonly swapAfterCall?: () => boolean;
  /** When advice is shown in a game that is begun now; at once when left out. */
  readonly advice?: () => AdviceTime;
}

/** What is known of a game beside its tiles. */
export type GameDetails = Pick<
  GameChange,
  'place' | 'evening' | 'players' | 'payment' | 'table' | 'swapAfterCall' | 'advice'
>;

type Base = Omit<GameRecord, 'events' | 'arrangement'>;

/** What the draft's saves are of. */
const DRAFT = 'draft';
/** Answers of the desk to a step that it will never take. */
const FOR_GOOD: ReadonlySet<string> = new Set(['out-of-step', 'taken', 'too-large', 'not-found']);

/** Where a game is kept so far. */
type Kept = 'nowhere' | 'draft' | 'game';

/**
 * The game at hand: its events in memory are the truth, every change is saved at once and in
 * order, and everything can be undone. The first event of a new game makes its file; tiles typed
 * before it are kept as the desk's draft.
 */
export class GameSession extends Store {
  readonly #world: SessionWorld;
  readonly #queue = new SaveQueue(() => this.#saveChanged());
  /** Games that were left before all of them was saved. */
  readonly #left = new Map<string, GameRecord>();
  #base: Base;
  #history: History = newHistory;
  #kept: Kept = 'nowhere';
  /** The game whose passes were left unlogged. */
  #pastPasses = '';
  /** The last layout whose tray was emptied because none is shown, and what it then was. */
  #emptied: { readonly from: Layout; readonly to: Layout } = { from: emptyLayout, to: emptyLayout };

  /** Begins with an empty game on a card document. */
  constructor(world: SessionWorld, card: unknown) {
    super();
    this.#world = world;
    this.#base = this.#newBase(card, false);
  }

  get id(): string {
    return this.#base.id;
  }
  /** The card document that this game is played with. */
  get card(): unknown {
    return this.#base.card;
  }
  get startedAt(): string {
    return this.#base.startedAt;
  }
  get place(): string {
    return this.#base.place;
  }
  /** The evening that this game belongs to; undefined for a game by itself. */
  get evening(): string | undefined {
    return this.#base.evening;
  }
  /** Names of players by seat, as far as somebody wrote them. */
  get players(): Players {
    return this.#base.players ?? {};
  }
  /** How the table pays in this game: as it was when the game was first kept. */
  get payment(): PointRules {
    return (
      this.#base.payment ?? (this.#kept === 'nowhere' ? this.#world.payment?.() : undefined) ?? DEFAULT_POINT_RULES
    );
  }
  /** The kind of table that this game is played at: as it was when the game was first kept, unless it was changed since. */
  get table(): TableKind {
    return this.#base.table ?? (this.#kept === 'nowhere' ? this.#world.table?.() : undefined) ?? USUAL_KIND;
  }
  /** Whether a joker may be swapped for between a call and the discard after it: as it was when the game was first kept, unless it was changed since. */
  get swapAfterCall(): boolean {
    const begun = this.#kept === 'nowhere' ? this.#world.swapAfterCall?.() : undefined;
    return this.#base.swapAfterCall ?? begun ?? USUAL_SWAP_AFTER_CALL;
  }
  /** When advice is shown in this game: as it was when the game was first kept, unless it was changed since. */
  get advice(): AdviceTime {
    return this.#base.adviceNow ?? this.#base.advice ?? this.#world.advice?.() ?? USUAL_ADVICE;
  }
  get demo(): boolean {
    return this.#base.demo;
  }
  get state(): GameState {
    return this.#frame.state;
  }
  /** True where passes are left that the player does not log, and play has no event yet. */
  get pastPasses(): boolean {
    const { exchange, playing } = this.state;
    return this.#pastPasses === this.id && !playing && exchange?.phase === 'giving';
  }
  /** The pass that is due; null once the passes that are left go unlogged. */
  get giveDue(): GiveDue | null {
    return this.pastPasses ? null : legalEvents(this.state).give;
  }
  /** How the rack lies. While no pass is due there is no tray, and its tiles lie in the rack. */
  get layout(): Layout {
    const { layout } = this.#frame;
    if (layout.tray.length === 0 || this.giveDue !== null) return layout;
    if (this.#emptied.from !== layout) this.#emptied = { from: layout, to: fillTray(layout, []) };
    return this.#emptied.to;
  }
  get events(): readonly TimedEvent[] {
    return eventsOf(this.#history);
  }
  get canUndo(): boolean {
    return canUndo(this.#history);
  }
  get canRedo(): boolean {
    return canRedo(this.#history);
  }
  get saved(): SaveStatus {
    return this.#queue.status;
  }
  /** True until something is entered. */
  get untouched(): boolean {
    return this.#kept === 'nowhere' && !this.canUndo && !this.canRedo;
  }

  /** Leaves the passes that are left unlogged and goes on to play, or comes back to them. */
  leavePasses(left: boolean): void {
    this.#pastPasses = left ? this.id : '';
    this.notify();
  }

  /** Puts an empty game here; what was here stays in the journal. */
  begin(card: unknown, demo = false, details: GameDetails = {}): void {
    this.#leave();
    this.#base = { ...this.#newBase(card, demo), ...details };
    this.#history = newHistory;
    this.#kept = 'nowhere';
    this.notify();
  }

  /** Goes on with a saved game, or with the tiles typed for one, where it was. */
  open({ events, arrangement, ...base }: GameRecord, kept: 'draft' | 'game' = 'game'): void {
    this.#leave();
    const layout = parseLayout(arrangement ?? '');
    this.#base = base;
    this.#history = historyOf(events, layout.ok ? layout.value : emptyLayout);
    this.#kept = kept;
    this.notify();
  }

  /** Adds an event, or says why it can't be. `layout` is how the rack lay when it happened, if not as now. */
  apply(event: GameEvent, layout: Layout = this.layout): Result<null> {
    const allowed = houseAllows(this.state, event, this.swapAfterCall);
    if (!allowed.ok) return allowed;
    const next = applyEvent(this.state, event);
    if (!next.ok) return next;
    const timed: TimedEvent = { ...event, at: this.#world.now() };
    this.#do({ events: [...this.events, timed], state: next.value, layout: fit(layout, next.value.rack) });
    return success(null);
  }

  /**
   * Corrects a tile of an earlier step, or says why it can't be: all events after it stay. The corrected event is of
   * now, so that what was computed before does not count any more.
   */
  correct(correction: Correction): Result<null> {
    const corrected = correctTile(this.events, correction);
    if (!corrected.ok) return corrected;
    const { events, place, state } = corrected.value;
    const dated = events.map((event, at) => (at === place ? { ...event, at: this.#world.now() } : event));
    this.#do({ events: dated, state, layout: fit(this.layout, state.rack) });
    return success(null);
  }

  /** Lays the rack out anew; before the deal, this is also how tiles are entered. */
  lay(layout: Layout): void {
    if (formatLayout(layout) === formatLayout(this.layout)) return;
    this.#do({ events: this.events, state: this.state, layout });
  }

  /**
   * Changes what is known of the game beside its tiles; kept at once, and not part of undo. `advice` is when advice is
   * shown from now on; the most aid that the game had stays in its record.
   */
  describe({ advice, ...rest }: GameDetails): void {
    const change = advice === undefined ? rest : { ...rest, ...this.#advised(advice) };
    if (Object.keys(change).length === 0) return;
    this.#base = { ...this.#base, ...change };
    if (this.#kept === 'game') {
      const { id } = this.#base;
      this.#queue.add({ of: id, stays: true, run: () => this.#world.desk.changeGame(id, change) });
    } else if (this.#kept === 'draft') this.#keepNew([]);
    this.notify();
  }

  /** Before the deal nothing was shown yet, and after the result nothing is. */
  #advised(adviceNow: AdviceTime): Pick<GameRecord, 'advice' | 'adviceNow'> {
    if (this.state.result !== null) return {};
    const isDealt = this.#history.frames.some(({ state }) => state.seat !== null);
    const before = this.#base.advice ?? this.advice;
    return { advice: isDealt ? moreAdvice(before, adviceNow) : adviceNow, adviceNow };
  }

  /** Drops the players' names from memory, once they are gone from all files. */
  forgetNames(): void {
    const { players: _, ...nameless } = this.#base;
    this.#base = nameless;
    this.notify();
  }

  undo(): void {
    this.#move(undone(this.#history));
  }

  redo(): void {
    this.#move(redone(this.#history));
  }

  retrySaving(): void {
    this.#queue.retry();
  }

  #saveChanged(): void {
    if (this.saved.status === 'saved') this.#left.clear();
    this.notify();
  }

  /** Whether the desk refuses this game's steps for good: it has to be opened anew. */
  get isRefused(): boolean {
    return FOR_GOOD.has(this.#queue.problemOf(this.id)?.code ?? '');
  }

  /** A game of which not all is saved, as it was here last; null where there is none that has begun. */
  get unsaved(): GameRecord | null {
    const { saved } = this;
    const of = saved.status === 'failed' ? saved.of : this.id;
    return of === this.id && this.#kept === 'game' ? this.#recordOf(this.events) : (this.#left.get(of) ?? null);
  }

  /** A game that was left before all of it was saved: what the desk has of it is older. Null for any other. */
  waiting(id: string): GameRecord | null {
    return this.#left.get(id) ?? null;
  }

  /** What the desk will never take is not asked for again once the person goes on; all else waits until it is saved. */
  #leave(): void {
    if (this.#kept !== 'game') return;
    if (this.isRefused) this.#queue.letGo(this.id);
    else if (this.#queue.waitsFor(this.id)) this.#left.set(this.id, this.#recordOf(this.events));
  }

  get #frame(): Frame {
    return currentFrame(this.#history);
  }

  #do(frame: Frame): void {
    this.#move(did(this.#history, frame));
  }

  #move(history: History): void {
    if (history === this.#history) return;
    const before = this.events;
    this.#history = history;
    // Notified first, so that its reading is asked for and worked on in a worker while the save is sent.
    this.notify();
    this.#keep(before, this.events);
  }

  #keep(before: readonly TimedEvent[], after: readonly TimedEvent[]): void {
    const { desk } = this.#world;
    const { id } = this.#base;
    if (this.#kept !== 'game') return this.#keepNew(after);
    const added = after[before.length];
    const arrangement = formatLayout(this.layout);
    const place = after.findIndex((event, at) => at < before.length && event !== before[at]);
    const corrected = after[place];
    const eventName = (at: number): string => `event ${at}`;
    const add = (job: Omit<SaveJob, 'of'>): void => this.#queue.add({ of: id, ...job });
    if (corrected !== undefined) {
      const change = { corrected: { place, event: corrected }, arrangement };
      // One that corrects back makes one that was refused needless.
      const name = `correction ${place}`;
      add({ name, undoes: name, run: () => desk.changeGame(id, change) });
    } else if (added !== undefined) {
      const at = before.length;
      add({ name: eventName(at), run: () => desk.appendEvent(id, at, added, arrangement) });
    } else if (after.length < before.length) {
      // Also of a step that was refused: one whose answer was lost may be there.
      add({ undoes: eventName(after.length), run: () => desk.dropEvent(id, after.length, arrangement) });
    } else add({ name: 'layout', run: () => desk.changeGame(id, { arrangement }) });
  }

  /** Keeps a game that has no file yet: with its first event in one of its own, before that as the draft. */
  #keepNew(events: readonly TimedEvent[]): void {
    const { desk } = this.#world;
    const { payment, table, swapAfterCall } = this;
    // Only what differs from the usual is written down.
    const house = swapAfterCall === USUAL_SWAP_AFTER_CALL ? {} : { swapAfterCall };
    this.#base = { ...this.#base, payment, table, ...house, advice: this.#base.advice ?? this.advice };
    const record = this.#recordOf(events);
    this.#kept = events.length === 0 ? 'draft' : 'game';
    if (this.#kept === 'draft') {
      // There is one draft, of the game that is typed last.
      this.#queue.add({ of: DRAFT, name: DRAFT, undoes: DRAFT, run: () => desk.keepDraft(record) });
      return;
    }
    this.#queue.letGo(DRAFT);
    this.#queue.add({ of: record.id, run: () => desk.startGame(record) });
  }

  #recordOf(events: readonly TimedEvent[]): GameRecord {
    return { ...this.#base, events, arrangement: formatLayout(this.layout) };
  }

  #newBase(card: unknown, demo: boolean): Base {
    const startedAt = this.#world.now();
    return {
      kind: GAME_FILE_KIND,
      schemaVersion: GAME_SCHEMA_VERSION,
      appVersion: this.#world.appVersion,
      id: this.#world.newId(startedAt),
      startedAt,
      zone: this.#world.zone,
      place: '',
      tags: [],
      demo,
      card,
    };
  }
}
