import type { EndedEvent } from '../../core/game/events.ts';
import { likelyDrawn } from '../../core/game/drawn.ts';
import type { GameState } from '../../core/game/game-state.ts';
import { handView } from '../../core/game/hand-view.ts';
import { legalEvents } from '../../core/game/legal.ts';
import type { Payments } from '../../core/game/points.ts';
import { handSize } from '../../core/game/seen.ts';
import { areFirstTerms, type ReachTerms } from '../../core/reading/reach-model.ts';
import { type StageTerms, termsAt } from '../../core/reading/stage-terms.ts';
import { formatTiles } from '../../core/tiles/text.ts';
import type {
  AdviceView,
  Answered,
  Knowledge,
  LineView,
  PlanRequest,
  PlayRequest,
  PlanView,
  ReadingView,
  ThinkingCalls,
  TilesView,
} from '../worker/calls.ts';
import { type Outcome, type StoppableLine, WorkerClient } from '../worker/client.ts';
import type { GameSession } from './game-session.ts';
import { type IncomingChoice, ratesKey } from './incoming.ts';

/** Something computed in the background. While `pending`, `value` is what held before, if anything did. */
export interface Thought<Value> {
  readonly status: 'none' | 'pending' | 'done' | 'failed';
  readonly value: Value | null;
  /** Why it failed, in words. */
  readonly message: string;
}

type IncomingRatesSource = Pick<IncomingChoice, 'rates' | 'subscribe'>;

/** How long an answer may take, in ms, before the window says how far the work on it has come. */
export const PATIENCE = 300;
/** How long, in ms, a new card is in use before games with it are simulated. */
const SETTLING = 3000;
const BLIND = [0, 1, 2, 3] as const;
const NO_THOUGHT = { status: 'none', value: null, message: '' } as const;

/**
 * What the session's rack means: asked of two workers anew whenever the rack changes, older
 * questions being dropped. One worker reads, the other plans, so that a reading never waits.
 */
export class Analysis {
  readonly #session: GameSession;
  readonly #incoming: IncomingRatesSource;
  readonly #reader: WorkerClient<ThinkingCalls>;
  readonly #planner: WorkerClient<ThinkingCalls>;
  readonly #listeners = new Set<() => void>();
  readonly #startWorker: () => StoppableLine;
  #reading: Thought<ReadingView> = NO_THOUGHT;
  #readsLong = false;
  #tiles: Thought<TilesView> = NO_THOUGHT;
  #plan: Thought<PlanView> = NO_THOUGHT;
  #planShare: number | null = null;
  #blind: PlanRequest['blind'] = 0;
  #blindFor = '';
  #advice: Thought<AdviceView> = NO_THOUGHT;
  #readFor = '';
  #advisedFor = '';
  #plannedFor = '';
  #stages: StageTerms | null = null;
  #stagesFor = '';
  /** Settled once the reading is there. A person waits for it, so that all else is asked after it. */
  #readFirst: Promise<void> = Promise.resolve();
  #cardText: { readonly card: unknown; readonly text: string } = { card: null, text: '' };

  constructor(session: GameSession, startWorker: () => StoppableLine, incoming: IncomingRatesSource) {
    this.#session = session;
    this.#incoming = incoming;
    this.#startWorker = startWorker;
    this.#reader = new WorkerClient(startWorker);
    this.#planner = new WorkerClient(startWorker);
    session.subscribe(() => this.#refresh());
    incoming.subscribe(() => this.#refresh());
    this.#refresh();
  }

  get reading(): Thought<ReadingView> {
    return this.#reading;
  }

  /** Whether the reading is so long in coming that the one before must be told apart from it. */
  get readsLong(): boolean {
    return this.#readsLong;
  }

  /** What each tile of the rack is worth, and which tiles would change most. */
  get tiles(): Thought<TilesView> {
    return this.#tiles;
  }

  /** The plan of the pass that is due; none when no pass is. */
  get plan(): Thought<PlanView> {
    return this.#plan;
  }

  /** How much of a plan that is long in coming is done, 0 to 1; else null. */
  get planShare(): number | null {
    return this.#planShare;
  }

  /** What discards and calls are worth; none when neither is due, or play has not begun. */
  get advice(): Thought<AdviceView> {
    return this.#advice;
  }

  /** How many tiles of the pass that is due go on unseen. */
  get blind(): number {
    return this.#blind;
  }

  /** Plans for so many tiles handed on unseen, until the next pass. */
  passBlind(blind: number): void {
    this.#blind = BLIND.find((count) => count === blind) ?? 0;
    this.#refresh();
  }

  /** Asks anew for all that is shown, after something failed. */
  again(): void {
    this.#readFor = '';
    this.#plannedFor = '';
    this.#advisedFor = '';
    this.#refresh();
  }

  /** The lines of the game's card. */
  async lines(): Promise<Answered<readonly LineView[]>> {
    return answerOf(await this.#planner.ask('lines', { card: this.#card() }));
  }

  /** Who pays what for a result. */
  async settle(result: EndedEvent): Promise<Answered<Payments>> {
    const rules = this.#session.payment;
    return answerOf(await this.#planner.ask('settle', { card: this.#card(), result, rules }));
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  #refresh(): void {
    this.#learnRate();
    const known = this.#knowledge();
    const moment = known === null ? '' : momentOf(this.#session.id, known);
    if (moment !== this.#readFor) {
      this.#readFor = moment;
      void this.#read(known);
    }
    this.#refreshAdvice();
    const step = legalEvents(this.#session.state).give?.step ?? null;
    this.#forgetBlind(step);
    const { rates } = this.#incoming;
    const pass = known === null || step === null ? '' : `${moment} ${step} ${this.#blind} ${ratesKey(rates)}`;
    if (pass === this.#plannedFor) return;
    this.#plannedFor = pass;
    void this.#planPass(known === null || step === null ? null : { ...known, step, blind: this.#blind, rates });
  }

  /** Tiles that go on unseen are said of one pass alone. */
  #forgetBlind(step: string | null): void {
    const due = step === null ? '' : `${this.#session.id} ${step}`;
    if (due !== this.#blindFor) this.#blind = 0;
    this.#blindFor = due;
  }

  /** Learns how soon others win with a card new to this session; until then the first model answers. */
  #learnRate(): void {
    const card = this.#card();
    if (card === this.#stagesFor) return;
    this.#stagesFor = card;
    this.#stages = null;
    setTimeout(() => void this.#simulate(card), SETTLING);
  }

  /** In a worker of its own, so that no reading and no plan waits for it. */
  async #simulate(card: string): Promise<void> {
    if (card !== this.#stagesFor) return;
    const line = this.#startWorker();
    const outcome = await new WorkerClient<ThinkingCalls>(() => line).ask('fit', { card });
    line.terminate();
    const answer = answerOf(outcome);
    if (!answer.ok || card !== this.#stagesFor) return;
    this.#stages = answer.value;
    this.#refresh();
  }

  /** How soon others win with this card, as far as games have told; the usual model counts until then. */
  get terms(): ReachTerms | undefined {
    return this.#terms().terms;
  }

  /** None while the first model holds: before the card's own games, and after them for a card like the demo card. */
  #terms(): { readonly terms?: ReachTerms } {
    if (this.#stages === null) return {};
    const terms = termsAt(this.#stages, likelyDrawn(this.#session.state));
    return areFirstTerms(terms) ? {} : { terms };
  }

  async #read(known: Knowledge | null): Promise<void> {
    this.#readsLong = false;
    if (known === null) {
      this.#reader.cancelNewest('read');
      this.#reading = NO_THOUGHT;
      this.#tiles = NO_THOUGHT;
      return this.#tell();
    }
    this.#reading = pending(this.#reading);
    this.#tiles = pending(this.#tiles);
    // What is shown stays until it is clear that the answer is not a quick one.
    if (this.#reading.value === null) this.#tell();
    const waiting = setTimeout(() => {
      this.#readsLong = true;
      this.#tell();
    }, PATIENCE);
    let shown = (): void => undefined;
    this.#readFirst = new Promise((resolve) => (shown = resolve));
    const onProgress = (hands: ReadingView): void => {
      clearTimeout(waiting);
      this.#readsLong = false;
      this.#showHands(hands);
      shown();
    };
    const outcome = await this.#reader.askNewest('read', known, { onProgress });
    shown();
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

  #refreshAdvice(): void {
    const { state, events, id } = this.#session;
    const rate = this.terms?.ends.join(' ') ?? '';
    const due = hasChoice(state) ? `${id} ${events.length} ${events.at(-1)?.at ?? ''} ${rate}` : '';
    if (due === this.#advisedFor) return;
    this.#advisedFor = due;
    void this.#advise(due === '' ? null : { card: this.#card(), events, ...this.#terms() });
  }

  async #advise(request: PlayRequest | null): Promise<void> {
    if (request === null) {
      this.#planner.cancelNewest('advise');
      this.#advice = NO_THOUGHT;
      return this.#tell();
    }
    this.#advice = { status: 'pending', value: null, message: '' };
    this.#tell();
    const due = this.#advisedFor;
    await this.#readFirst;
    if (due !== this.#advisedFor) return;
    const outcome = await this.#planner.askNewest('advise', request);
    if (outcome.status === 'cancelled') return;
    this.#advice = thoughtOf(outcome);
    this.#tell();
  }

  async #planPass(request: PlanRequest | null): Promise<void> {
    if (request === null) {
      this.#planner.cancelNewest('plan');
      this.#plan = NO_THOUGHT;
      this.#planShare = null;
      return this.#tell();
    }
    this.#plan = { status: 'pending', value: null, message: '' };
    this.#planShare = null;
    this.#tell();
    const due = this.#plannedFor;
    let long = false;
    const waiting = setTimeout(() => (long = true), PATIENCE);
    await this.#readFirst;
    if (due !== this.#plannedFor) return clearTimeout(waiting);
    const onProgress = (share: number): void => {
      if (long) this.#showShare(share);
    };
    const outcome = await this.#planner.askNewest('plan', request, { onProgress });
    clearTimeout(waiting);
    if (outcome.status === 'cancelled') return;
    this.#plan = thoughtOf(outcome);
    this.#planShare = null;
    this.#tell();
  }

  /** In whole hundredths: a picture of it can show no more. */
  #showShare(share: number): void {
    const rounded = Math.floor(100 * share) / 100;
    if (rounded === this.#planShare) return;
    this.#planShare = rounded;
    this.#tell();
  }

  /** What the player knows; null before the deal. */
  #knowledge(): Knowledge | null {
    const { state } = this.#session;
    if (state.seat === null || state.rack.size === 0) return null;
    const { hand, gone, fixed } = handView(state);
    return { card: this.#card(), rack: formatTiles(hand), gone: formatTiles(gone), fixed, ...this.#terms() };
  }

  #card(): string {
    const { card } = this.#session;
    if (this.#cardText.card !== card) this.#cardText = { card, text: JSON.stringify(card) };
    return this.#cardText.text;
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

/** Whether a discard is due, or another's discard lies there to be called. */
function hasChoice(state: GameState): boolean {
  const { seat, result, lastDiscard, exchange } = state;
  if (seat === null || result !== null || (exchange?.phase !== 'over' && !state.playing)) return false;
  return handSize(state) === 14 || (lastDiscard !== null && lastDiscard.seat !== seat);
}

function momentOf(id: string, { rack, gone, fixed = [], terms }: Knowledge): string {
  const groups = fixed.map(({ kind, size }) => `${kind} ${size}`).join();
  return `${id} ${rack} / ${gone} / ${groups} / ${terms?.ends.join(' ') ?? ''}`;
}

function pending<Value>({ value }: Thought<Value>): Thought<Value> {
  return { status: 'pending', value, message: '' };
}

function thoughtOf<Value>(outcome: Outcome<Answered<Value>>): Thought<Value> {
  const answer = answerOf(outcome);
  return answer.ok
    ? { status: 'done', value: answer.value, message: '' }
    : { status: 'failed', value: null, message: answer.message };
}

function answerOf<Value>(outcome: Outcome<Answered<Value>>): Answered<Value> {
  if (outcome.status === 'done') return outcome.value;
  return { ok: false, message: outcome.status === 'failed' ? outcome.message : '' };
}
