import { legalEvents } from '../../core/game/legal.ts';
import { unseenTiles } from '../../core/game/seen.ts';
import { formatTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import type {
  Answered,
  Knowledge,
  PlanRequest,
  PlanView,
  ReadingView,
  ThinkingCalls,
  TilesView,
} from '../worker/calls.ts';
import { type Outcome, type StoppableLine, WorkerClient } from '../worker/client.ts';
import type { GameSession } from './game-session.ts';

/** Something computed in the background. While `pending`, `value` is what held before, if anything did. */
export interface Thought<Value> {
  readonly status: 'none' | 'pending' | 'done' | 'failed';
  readonly value: Value | null;
  /** Why it failed, in words. */
  readonly message: string;
}

/** How long an answer may take, in ms, before the window says that it is being worked on. */
const PATIENCE = 300;
const BLIND = [0, 1, 2, 3] as const;
const NO_THOUGHT = { status: 'none', value: null, message: '' } as const;

/**
 * What the session's rack means: asked of two workers anew whenever the rack changes, older
 * questions being dropped. One worker reads, the other plans, so that a reading never waits.
 */
export class Analysis {
  readonly #session: GameSession;
  readonly #reader: WorkerClient<ThinkingCalls>;
  readonly #planner: WorkerClient<ThinkingCalls>;
  readonly #listeners = new Set<() => void>();
  #reading: Thought<ReadingView> = NO_THOUGHT;
  #tiles: Thought<TilesView> = NO_THOUGHT;
  #plan: Thought<PlanView> = NO_THOUGHT;
  #blind: PlanRequest['blind'] = 0;
  #readFor = '';
  #plannedFor = '';
  #cardText: { readonly card: unknown; readonly text: string } = { card: null, text: '' };

  constructor(session: GameSession, startWorker: () => StoppableLine) {
    this.#session = session;
    this.#reader = new WorkerClient(startWorker);
    this.#planner = new WorkerClient(startWorker);
    session.subscribe(() => this.#refresh());
    this.#refresh();
  }

  get reading(): Thought<ReadingView> {
    return this.#reading;
  }

  /** What each tile of the rack is worth, and which tiles would change most. */
  get tiles(): Thought<TilesView> {
    return this.#tiles;
  }

  /** The plan of the pass that is due; none when no pass is. */
  get plan(): Thought<PlanView> {
    return this.#plan;
  }

  /** Plans for so many tiles handed on unseen, until the next pass. */
  passBlind(blind: number): void {
    this.#blind = BLIND.find((count) => count === blind) ?? 0;
    this.#refresh();
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  #refresh(): void {
    const known = this.#knowledge();
    const moment = known === null ? '' : `${this.#session.id} ${known.rack} / ${known.gone}`;
    if (moment !== this.#readFor) {
      this.#readFor = moment;
      void this.#read(known);
    }
    const step = legalEvents(this.#session.state).give?.step ?? null;
    if (step === null) this.#blind = 0;
    const pass = known === null || step === null ? '' : `${moment} ${step} ${this.#blind}`;
    if (pass === this.#plannedFor) return;
    this.#plannedFor = pass;
    void this.#planPass(known === null || step === null ? null : { ...known, step, blind: this.#blind });
  }

  async #read(known: Knowledge | null): Promise<void> {
    if (known === null) {
      this.#reader.cancelNewest('read');
      this.#reading = NO_THOUGHT;
      this.#tiles = NO_THOUGHT;
      return this.#tell();
    }
    this.#reading = pending(this.#reading);
    this.#tiles = pending(this.#tiles);
    // What is shown stays for a moment, so that a quick answer is drawn once, not twice.
    if (this.#reading.value === null) this.#tell();
    const waiting = setTimeout(() => this.#tell(), PATIENCE);
    const outcome = await this.#reader.askNewest('read', known, { onProgress: (hands) => this.#showHands(hands) });
    clearTimeout(waiting);
    if (outcome.status === 'cancelled') return;
    this.#tiles = thoughtOf(outcome);
    if (this.#tiles.status === 'failed')
      this.#reading = { status: 'failed', value: null, message: this.#tiles.message };
    this.#tell();
  }

  #showHands(hands: ReadingView): void {
    this.#reading = { status: 'done', value: hands, message: '' };
    this.#tell();
  }

  async #planPass(request: PlanRequest | null): Promise<void> {
    if (request === null) {
      this.#planner.cancelNewest('plan');
      this.#plan = NO_THOUGHT;
      return this.#tell();
    }
    this.#plan = { status: 'pending', value: null, message: '' };
    this.#tell();
    const outcome = await this.#planner.askNewest('plan', request);
    if (outcome.status === 'cancelled') return;
    this.#plan = thoughtOf(outcome);
    this.#tell();
  }

  /** What the player knows; null before the deal. */
  #knowledge(): Knowledge | null {
    const { state, card } = this.#session;
    if (state.seat === null || state.rack.size === 0) return null;
    if (this.#cardText.card !== card) this.#cardText = { card, text: JSON.stringify(card) };
    const gone = Tiles.fullSet.minus(state.rack.plus(unseenTiles(state)));
    return { card: this.#cardText.text, rack: formatTiles(state.rack), gone: formatTiles(gone) };
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

function pending<Value>({ value }: Thought<Value>): Thought<Value> {
  return { status: 'pending', value, message: '' };
}

function thoughtOf<Value>(outcome: Outcome<Answered<Value>>): Thought<Value> {
  if (outcome.status === 'done' && outcome.value.ok) return { status: 'done', value: outcome.value.value, message: '' };
  if (outcome.status === 'done' && !outcome.value.ok) {
    return { status: 'failed', value: null, message: outcome.value.message };
  }
  return { status: 'failed', value: null, message: outcome.status === 'failed' ? outcome.message : '' };
}
