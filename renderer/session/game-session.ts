import { type Result, success } from '../../core/base/result.ts';
import type { GameEvent, TimedEvent } from '../../core/game/events.ts';
import { DEFAULT_POINT_RULES, type PointRules } from '../../core/game/point-rules.ts';
import type { GameState } from '../../core/game/game-state.ts';
import type { Players } from '../../core/game/players.ts';
import { GAME_FILE_KIND, GAME_SCHEMA_VERSION, type GameRecord } from '../../core/game/record.ts';
import { applyEvent } from '../../core/game/state.ts';
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
import { emptyLayout, fit, type Layout } from './layout.ts';
import { formatLayout, parseLayout } from './layout-text.ts';
import { SaveQueue, type SaveStatus } from './save-queue.ts';

/** The part of the desk that keeps a game as it grows; what it answers beyond "kept" is not looked at. */
export type GameKeeper = {
  readonly [Call in 'startGame' | 'appendEvent' | 'dropEvent' | 'changeGame']: (
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
}

/** What is known of a game beside its tiles. */
export type GameDetails = Pick<GameChange, 'place' | 'evening' | 'players' | 'payment'>;

type Base = Omit<GameRecord, 'events' | 'arrangement'>;

/**
 * The game at hand: its events in memory are the truth, every change is saved at once and in
 * order, and everything can be undone. The first change of a new game makes its file.
 */
export class GameSession {
  readonly #world: SessionWorld;
  readonly #listeners = new Set<() => void>();
  readonly #queue = new SaveQueue(() => this.#tell());
  #base: Base;
  #history: History = newHistory;
  #kept = false;

  /** Begins with an empty game on a card document. */
  constructor(world: SessionWorld, card: unknown) {
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
    return this.#base.payment ?? (this.#kept ? undefined : this.#world.payment?.()) ?? DEFAULT_POINT_RULES;
  }
  get demo(): boolean {
    return this.#base.demo;
  }
  get state(): GameState {
    return this.#frame.state;
  }
  get layout(): Layout {
    return this.#frame.layout;
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
    return !this.#kept && !this.canUndo && !this.canRedo;
  }

  /** Calls back after every change; returns the way to stop that. */
  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Puts an empty game here; what was here stays in the journal. */
  begin(card: unknown, demo = false, details: GameDetails = {}): void {
    this.#base = { ...this.#newBase(card, demo), ...details };
    this.#history = newHistory;
    this.#kept = false;
    this.#tell();
  }

  /** Goes on with a saved game where it was. */
  open({ events, arrangement, ...base }: GameRecord): void {
    const layout = parseLayout(arrangement ?? '');
    this.#base = base;
    this.#history = historyOf(events, layout.ok ? layout.value : emptyLayout);
    this.#kept = true;
    this.#tell();
  }

  /** Adds an event, or says why it can't be. `layout` is how the rack lay when it happened, if not as now. */
  apply(event: GameEvent, layout: Layout = this.layout): Result<null> {
    const next = applyEvent(this.state, event);
    if (!next.ok) return next;
    const timed: TimedEvent = { ...event, at: this.#world.now() };
    this.#do({ event: timed, state: next.value, layout: fit(layout, next.value.rack) });
    return success(null);
  }

  /** Lays the rack out anew; before the deal, this is also how tiles are entered. */
  lay(layout: Layout): void {
    if (formatLayout(layout) === formatLayout(this.layout)) return;
    this.#do({ event: null, state: this.state, layout });
  }

  /** Changes what is known of the game beside its tiles; kept at once, and not part of undo. */
  describe(details: GameDetails): void {
    this.#base = { ...this.#base, ...details };
    if (this.#kept) {
      const { id } = this.#base;
      this.#queue.add({ run: () => this.#world.desk.changeGame(id, details) });
    }
    this.#tell();
  }

  /** Drops the players' names from memory, once they are gone from all files. */
  forgetNames(): void {
    const { players: _, ...nameless } = this.#base;
    this.#base = nameless;
    this.#tell();
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
    // First told, so that its reading is asked for, which is worked on elsewhere while the save is sent.
    this.#tell();
    this.#keep(before, this.events);
  }

  #keep(before: readonly TimedEvent[], after: readonly TimedEvent[]): void {
    const { desk } = this.#world;
    const { id } = this.#base;
    if (!this.#kept) {
      this.#base = { ...this.#base, payment: this.payment };
      this.#kept = true;
      const record = { ...this.#base, events: after, arrangement: formatLayout(this.layout) };
      this.#queue.add({ run: () => desk.startGame(record) });
      return;
    }
    const added = after[before.length];
    if (added !== undefined) this.#queue.add({ run: () => desk.appendEvent(id, before.length, added) });
    if (after.length < before.length) this.#queue.add({ run: () => desk.dropEvent(id, after.length) });
    const arrangement = formatLayout(this.layout);
    this.#queue.add({ name: `layout of ${id}`, run: () => desk.changeGame(id, { arrangement }) });
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

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}
