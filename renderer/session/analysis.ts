import type { Result } from '../../core/base/result.ts';
import { markedCard } from '../../core/card/mark.ts';
import type { ChanceDocument, GameMoment } from '../../core/engine/chance-questions.ts';
import type { AdviceDocument, PlanDocument, ReadingDocument, TilesDocument } from '../../core/engine/documents.ts';
import type { Knowledge, Moment, Said } from '../../core/engine/moment.ts';
import type { LineDocument } from '../../core/engine/reading-questions.ts';
import type { OthersDocument } from '../../core/engine/others-document.ts';
import type { OthersRequest } from '../../core/engine/play-questions.ts';
import type { EndedEvent } from '../../core/game/events.ts';
import type { GameState } from '../../core/game/game-state.ts';
import { lastEnteredAt } from '../../core/game/record.ts';
import { handSize, handView } from '../../core/game/hand-view.ts';
import { legalEvents } from '../../core/game/legal.ts';
import type { Payments } from '../../core/game/points.ts';
import { likelyDrawn } from '../../core/game/stage.ts';
import { STAGE } from '../../core/reading/reach-model.ts';
import { openChoices } from '../../core/review/play-costs.ts';
import type { WorkerLine } from '../worker/client.ts';
import { type Engine, engine } from '../worker/engine.ts';
import type { Pool } from '../worker/pool.ts';
import { type Answer, Ask, PATIENCE, question } from './ask.ts';
import type { CardGames } from './card-games.ts';
import type { GameSession } from './game-session.ts';
import { DeadHands } from './dead-hands.ts';
import { Demand, momentKey, type Weighing } from './demand.ts';
import { type IncomingChoice, ratesKey } from './incoming.ts';
import { adviceBy, allOpen, type LastDiscard, lastDiscard, nextAndDiscard, nextOpen } from './play-advice.ts';
import { Store } from './store.ts';

export interface AnalysisParts {
  readonly session: GameSession;
  readonly incoming: Pick<IncomingChoice, 'rates' | 'subscribe'>;
  readonly cardGames: Pick<CardGames, 'said' | 'key' | 'gamesKey' | 'subscribe'>;
  /** Who plays games from a moment of play. */
  readonly pool: Pick<Pool, 'playGames'>;
  readonly preferences?: Weighing;
  readonly startWorker?: (() => WorkerLine) | undefined;
}

/**
 * What the session's rack means: asked of two workers anew whenever the rack changes. One worker
 * reads, the other plans, so that a reading never waits. A person waits for the reading, so that all
 * else is asked after it.
 */
export class Analysis extends Store {
  readonly #session: GameSession;
  readonly #incoming: AnalysisParts['incoming'];
  readonly #cardGames: AnalysisParts['cardGames'];
  readonly #demand: Demand;
  readonly #planner: Engine;
  readonly #read: Ask<Moment, ReadingDocument, TilesDocument>;
  readonly #chance: Ask<GameMoment, never, ChanceDocument>;
  readonly #advise: Ask<GameMoment, never, AdviceDocument>;
  /** The same with what all choices cost, for who wants to see them all. */
  readonly #adviseAll: Ask<GameMoment, never, AdviceDocument>;
  /** The same for the moment before the player's last discard, with what that one cost. */
  readonly #judge: Ask<Pick<LastDiscard, 'discard'> & { readonly moment: GameMoment }, never, AdviceDocument>;
  readonly #plan: Ask<Moment, never, PlanDocument>;
  readonly #others: Ask<OthersRequest, never, OthersDocument>;
  /** Whose hands are dead. */
  readonly dead: DeadHands;
  /** The moment that advice was asked for last. */
  #advisedFor = '';

  constructor({ session, incoming, cardGames, pool, preferences, startWorker }: AnalysisParts) {
    super();
    this.#session = session;
    this.#incoming = incoming;
    this.#cardGames = cardGames;
    this.#demand = new Demand(session, preferences);
    this.#planner = engine(startWorker);
    this.#read = new Ask(question(engine(startWorker), 'read'), { keeps: true });
    this.#chance = new Ask(question(this.#planner, 'gameChance'), {
      after: this.#read,
      keeps: true,
      // It begins only after the reading.
      patience: 2 * PATIENCE,
    });
    this.#advise = new Ask(
      // Games are played for what is shown before the choice.
      adviceBy(this.#planner, pool, (choices) =>
        this.#demand.isThere && session.advice === 'at-once' ? nextOpen(choices) : [],
      ),
      { after: this.#read },
    );
    this.#adviseAll = new Ask(adviceBy(this.#planner, pool, allOpen));
    this.#judge = new Ask(({ moment, discard }, report) =>
      adviceBy(this.#planner, pool, nextAndDiscard(discard))(moment, report),
    );
    this.#plan = new Ask(question(this.#planner, 'plan'), { after: this.#read });
    this.#others = new Ask(question(this.#planner, 'others'), { after: this.#read, keeps: true });
    this.dead = new DeadHands(session, this.#planner);
    for (const ask of this.#asks) ask.subscribe(() => this.notify());
    for (const store of [session, incoming, cardGames, preferences]) store?.subscribe(() => this.#refresh());
    this.#refresh();
  }

  /** In the order in which they are asked. */
  get #asks(): readonly Pick<Ask<never, unknown, unknown>, 'subscribe' | 'again'>[] {
    return [
      this.#read,
      this.#chance,
      this.#advise,
      this.#adviseAll,
      this.#judge,
      this.#plan,
      this.#others,
      this.dead.ask,
    ];
  }

  /** The hands that the rack can still become; the ones before stay until there are new ones. */
  get reading(): Answer<ReadingDocument> {
    return this.#read.early;
  }

  /** What each tile of the rack is worth, and which tiles would change most. */
  get tiles(): Answer<TilesDocument> {
    return this.#read.answer;
  }

  /** The chance to win as the game stands; the one before stays until there is a new one. None before the deal. */
  get chance(): Answer<ChanceDocument> {
    return this.#chance.answer;
  }

  /** What the others can hold, and what each tile of the rack risks; the one before stays until there is a new one. None before play. */
  get others(): Answer<OthersDocument> {
    return this.#others.answer;
  }

  /** The plan of the pass that is due, all its tiles from the rack; none when no pass is. */
  get plan(): Answer<PlanDocument> {
    return this.#plan.answer;
  }

  /**
   * What can be done in play, best first; what the choices next to the first cost follows while it is pending. None when
   * neither a discard nor a call is due, or play has not begun.
   */
  get advice(): Answer<AdviceDocument> {
    const all = this.#adviseAll.answer;
    return all.status === 'done' ? all : this.#advise.answer;
  }

  /**
   * Where advice is welcome after the choice: the same for the moment before the player's last discard, with what that
   * discard cost, until her next one is due.
   */
  get judged(): Answer<AdviceDocument> {
    return this.#judge.answer;
  }

  /** Whether what can be done in play is weighed by games only when `weigh` is called. */
  get waits(): boolean {
    const { status, value } = this.advice;
    return !this.#demand.isThere && status === 'done' && value !== null && nextOpen(value.choices).length > 0;
  }

  /** Weighs what can be done now, where that does not begin by itself. */
  weigh(): void {
    this.#demand.ask();
    this.#refresh();
  }

  /** Asks what the choices below the first few cost, too, once these are known. */
  adviseAll(): void {
    const { status, value } = this.#advise.answer;
    if (status !== 'done' || value === null || openChoices(value.choices).length === 0) return;
    void this.#adviseAll.ask(momentOf(this.#session, this.#said), this.#advisedFor);
  }

  /** Asks once more what failed. */
  again(): void {
    for (const ask of this.#asks) void ask.again();
  }

  /** The lines of the game's card. */
  lines(): Promise<Result<readonly LineDocument[]>> {
    return this.#planner.ask('lines', { card: markedCard(this.#session.card) });
  }

  /** Who pays what for a result. */
  settle(result: EndedEvent): Promise<Result<Payments>> {
    const { card, payment } = this.#session;
    return this.#planner.ask('settle', { card: markedCard(card), result, rules: payment });
  }

  /** What every question is asked with. */
  get #said(): Said {
    const { pastPasses, swapAfterCall } = this.#session;
    const said = { ...this.#cardGames.said, swapAfterCall };
    return pastPasses ? { ...said, playBegins: true } : said;
  }

  #refresh(): void {
    this.dead.refresh();
    const { state, id, pastPasses, swapAfterCall } = this.#session;
    const { key: learned } = this.#cardGames;
    const said = this.#said;
    const dealt = state.seat !== null && state.rack.size > 0;
    const known = dealt ? knowledgeOf(state) : null;
    const key = known === null ? '' : `${id} ${knownKey(known)} / ${learned}`;
    if (known === null) this.#read.clear();
    else void this.#read.ask(momentOf(this.#session, said, known), key);
    const now = `${momentKey(this.#session)} ${pastPasses} ${swapAfterCall} ${learned}`;
    if (known === null || state.result !== null) this.#chance.clear();
    else void this.#chance.ask(momentOf(this.#session, said), now);
    this.#refreshAdvice(now);
    if (known === null || state.result !== null || !(state.playing || pastPasses)) this.#others.clear();
    else void this.#others.ask({ ...momentOf(this.#session, said), rules: this.#session.payment }, now);
    this.#refreshJudgement();
    const step = pastPasses ? null : (legalEvents(state).give?.step ?? null);
    if (known === null || step === null) return this.#plan.clear();
    const { rates } = this.#incoming;
    const moment = momentOf(this.#session, { ...said, rates }, { ...known, step });
    void this.#plan.ask(moment, `${key} ${step} ${ratesKey(rates)}`);
  }

  /** @param now distinct for all that advice depends on, but for when it is welcome */
  #refreshAdvice(now: string): void {
    const { state, pastPasses, advice } = this.#session;
    const isDue = hasChoice(state, pastPasses);
    if (!isDue || now !== this.#advisedFor) this.#adviseAll.clear();
    this.#advisedFor = now;
    if (isDue) void this.#advise.ask(momentOf(this.#session, this.#said), `${now} ${advice} ${this.#demand.isThere}`);
    else this.#advise.clear();
  }

  /** What others do meanwhile does not count: it is judged by what she knew. */
  #refreshJudgement(): void {
    const { card, events, id, advice } = this.#session;
    const last = advice === 'after-choice' ? lastDiscard(this.#session) : null;
    if (last === null) return this.#judge.clear();
    const known = lastEnteredAt(events.slice(0, last.at + 1));
    const moment = momentOf({ card, events: events.slice(0, last.at) }, this.#said);
    void this.#judge.ask(
      { moment, discard: last.discard },
      `${id} ${last.at} ${known} ${this.#session.swapAfterCall} ${this.#cardGames.gamesKey}`,
    );
  }
}

/** The moment at which a session is, with what the player says besides; `at` where the tiles alone are enough. */
export function momentOf(session: Pick<GameSession, 'card' | 'events'>, said: Said): GameMoment;
export function momentOf(session: Pick<GameSession, 'card' | 'events'>, said: Said, at: Knowledge): Moment;
export function momentOf({ card, events }: Pick<GameSession, 'card' | 'events'>, said: Said, at?: Knowledge): Moment {
  return { card: markedCard(card), at: at ?? { events }, said };
}

/** What the player knows, in counts. */
function knowledgeOf(state: GameState): Knowledge {
  const { rack, gone, exposed } = handView(state);
  return { rack: rack.toCounts(), gone: gone.toCounts(), exposed, drawn: likelyDrawn(state) };
}

/** Distinct for all that a reading depends on. */
function knownKey({ rack, gone, exposed = [], drawn = 0 }: Knowledge): string {
  const groups = exposed.map(({ kind, size, jokers }) => `${kind} ${size} ${jokers}`);
  return [Array.from(rack).join(' '), Array.from(gone).join(' '), groups.join(), Math.floor(drawn / STAGE)].join(' / ');
}

/** Whether a discard is due, or another's discard lies there to be called. */
function hasChoice(state: GameState, pastPasses: boolean): boolean {
  const { seat, result, lastDiscard, exchange } = state;
  if (seat === null || result !== null) return false;
  if (exchange?.phase !== 'over' && !state.playing && !pastPasses) return false;
  return handSize(state) === 14 || (lastDiscard !== null && lastDiscard.seat !== seat);
}
