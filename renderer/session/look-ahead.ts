import { legalEvents } from '../../core/game/legal.ts';
import type { PassStep } from '../../core/exchange/steps.ts';
import type { PassSize } from '../../core/plan/passes.ts';
import { type BlockSums, GAMES_RULE, type RaceRule, USUAL_RULE } from '../../core/plan/race.ts';
import { type DueBlocks, Race, type RaceResult } from '../../core/plan/race-run.ts';
import { exchangeChoices } from '../../core/table/future-choices.ts';
import { EXCHANGE_FIGURES, GAME_FIGURES } from '../../core/table/future-figures.ts';
import type { Choice } from '../../core/table/future-seats.ts';
import type { IncomingRates } from '../../core/table/incoming-rates.ts';
import type { Kind } from '../../core/tiles/kinds.ts';
import type { Answered } from '../worker/calls.ts';
import { type Outcome, type StoppableLine, WorkerClient } from '../worker/client.ts';
import type { Depth, LookCalls, LookMoment } from '../worker/look-calls.ts';
import type { Analysis } from './analysis.ts';
import type { GameSession } from './game-session.ts';
import { type IncomingChoice, ratesKey } from './incoming.ts';

/** What a look ahead has found so far. */
export interface Look {
  readonly status: 'none' | 'pending' | 'done' | 'failed';
  readonly choices: readonly Choice[];
  /** Where the race stood at its last look; null before the first one. */
  readonly result: RaceResult | null;
  /** What comes in, if not all tiles alike. */
  readonly rates: IncomingRates | null;
  /** Why it failed, in words. */
  readonly message: string;
}

/** What whole games say of the choices that the look ahead could not tell apart; null until asked for. */
export interface Played {
  readonly status: 'pending' | 'done' | 'stopped' | 'failed';
  readonly choices: readonly Choice[];
  /** Where the race stood at its last look, by these choices; null before the first one. */
  readonly result: RaceResult | null;
}

/** What the player says besides the rack and the tray. */
export interface LookWishes {
  /** In the courtesy, how many tiles the player across asks for; null until said. */
  readonly offered: number | null;
}

/** What a look ahead is made from. */
export interface LookParts {
  readonly session: GameSession;
  /** Who plans the pass that is due. */
  readonly plans: Pick<Analysis, 'plan' | 'terms' | 'subscribe'>;
  readonly incoming: Pick<IncomingChoice, 'rates' | 'subscribe'>;
  readonly startWorker: () => StoppableLine;
  readonly rule?: RaceRule;
  readonly gamesRule?: RaceRule;
}

/** Choices that are compared, by what futures. */
interface Tried {
  readonly choices: readonly Choice[];
  readonly depth: Depth;
  readonly rates: IncomingRates | null;
}

const NO_LOOK: Look = { status: 'none', choices: [], result: null, rates: null, message: '' };
const SIZES: readonly PassSize[] = [3, 2, 1, 0];
/** Workers that share the blocks; what they find does not depend on their number. */
const WORKERS = 2;

/**
 * Looks ahead to the end of the exchange as soon as the plan of a pass is there, and anew whenever
 * the rack, the tray's pass or the wishes change; an older look is dropped.
 */
export class LookAhead {
  readonly #session: GameSession;
  readonly #plans: LookParts['plans'];
  readonly #incoming: LookParts['incoming'];
  readonly #rule: RaceRule;
  readonly #gamesRule: RaceRule;
  readonly #workers: readonly WorkerClient<LookCalls>[];
  readonly #listeners = new Set<() => void>();
  #look: Look = NO_LOOK;
  #wishes: LookWishes = { offered: null };
  #lookedFor = '';
  #running = new AbortController();
  #moment: LookMoment | null = null;
  #played: Played | null = null;
  /** The moment of the game that the whole games belong to. */
  #playedFor = '';
  #playing = new AbortController();

  constructor({ session, plans, incoming, startWorker, rule = USUAL_RULE, gamesRule = GAMES_RULE }: LookParts) {
    this.#session = session;
    this.#plans = plans;
    this.#incoming = incoming;
    this.#rule = rule;
    this.#gamesRule = gamesRule;
    this.#workers = Array.from({ length: WORKERS }, () => new WorkerClient<LookCalls>(startWorker));
    session.subscribe(() => this.#refresh());
    plans.subscribe(() => this.#refresh());
    incoming.subscribe(() => this.#refresh());
    this.#refresh();
  }

  get look(): Look {
    return this.#look;
  }

  get played(): Played | null {
    return this.#played;
  }

  get wishes(): LookWishes {
    return this.#wishes;
  }

  wish(wishes: Partial<LookWishes>): void {
    this.#wishes = { ...this.#wishes, ...wishes };
    this.#refresh();
    this.#tell();
  }

  /** Looks through everything anew, after something failed. */
  again(): void {
    this.#forget();
    this.#refresh();
  }

  /** Plays whole games with the choices that are as good so far; each look at them is told. */
  async playOut(): Promise<void> {
    const choices = this.open;
    if (this.#look.status !== 'done' || this.#moment === null || choices.length < 2) return;
    const playing = new AbortController();
    this.#playing = playing;
    this.#showPlayed({ status: 'pending', choices, result: null });
    try {
      await this.#race(this.#moment, { choices, depth: 'game', rates: null }, playing.signal, (result) =>
        this.#showPlayed({ status: result.ended === null ? 'pending' : 'done', choices, result }),
      );
    } catch {
      if (!playing.signal.aborted && this.#played !== null) this.#showPlayed({ ...this.#played, status: 'failed' });
    }
  }

  /** Ends the games; what they said so far stays. */
  stopPlaying(): void {
    this.#playing.abort();
    if (this.#played?.status === 'pending') this.#showPlayed({ ...this.#played, status: 'stopped' });
  }

  /** The choices that the look ahead did not find worse. */
  get open(): readonly Choice[] {
    const { choices, result } = this.#look;
    return choices.filter((_, place) => (result?.standings[place]?.verdict ?? 'costs') !== 'costs');
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  #refresh(): void {
    const { events, id, state } = this.#session;
    const plan = this.#plans.plan;
    const due = legalEvents(state).give;
    const now = `${id} ${events.length} ${events.at(-1)?.at ?? ''}`;
    this.#leaveGames(now);
    if (due === null || plan.status !== 'done' || plan.value === null) return this.#forget();
    if (due.step !== 'courtesy') this.#wishes = { ...this.#wishes, offered: null };
    const passes = plan.value.options.map(({ give }) => give);
    const choices = exchangeChoices(due.step, passes, this.#chosen(passes));
    const named = choices.map((choice) => (choice.type === 'stop' ? 'stop' : choice.tiles.join('-'))).join();
    const { offered } = this.#wishes;
    const rates = ratesKey(this.#incoming.rates);
    const wanted = `${now} ${due.step} ${named} ${rates} ${offered} ${this.#plans.terms?.ends.join(' ') ?? ''}`;
    if (wanted === this.#lookedFor) return;
    this.#lookedFor = wanted;
    void this.#begin(due.step, choices);
  }

  /** The tray's tiles if they are a whole pass of the plan. */
  #chosen(passes: readonly (readonly Kind[])[]): readonly Kind[] | undefined {
    const tray = this.#session.layout.aside.map(({ kind }) => kind).sort((one, other) => one - other);
    return tray.length === 0 ? undefined : passes.find((pass) => pass.join() === tray.join());
  }

  #forget(): void {
    if (this.#lookedFor === '') return;
    this.#lookedFor = '';
    this.#running.abort();
    this.#show(NO_LOOK);
  }

  async #begin(step: PassStep, choices: readonly Choice[]): Promise<void> {
    this.#running.abort();
    const running = new AbortController();
    this.#running = running;
    this.#show({ ...NO_LOOK, status: 'pending', choices });
    const { terms } = this.#plans;
    const { card, events } = this.#session;
    const moment = { card: JSON.stringify(card), events, ...(terms === undefined ? {} : { terms }) };
    this.#moment = moment;
    try {
      await this.#run(moment, step, choices, running.signal);
    } catch (error) {
      if (running.signal.aborted) return;
      const message = error instanceof Error ? error.message : String(error);
      this.#show({ ...this.#look, status: 'failed', message });
    }
  }

  async #run(moment: LookMoment, step: PassStep, passes: readonly Choice[], signal: AbortSignal): Promise<void> {
    const { rates } = this.#incoming;
    const choices = [...passes, ...(await this.#otherSizes(moment, step, passes, signal))];
    this.#show({ ...NO_LOOK, status: 'pending', choices, rates });
    await this.#race(moment, { choices, depth: 'exchange', rates }, signal, (result) =>
      this.#show({ ...this.#look, status: result.ended === null ? 'pending' : 'done', result }),
    );
  }

  async #race(moment: LookMoment, tried: Tried, signal: AbortSignal, tell: (r: RaceResult) => void): Promise<void> {
    const [figures, rule] = tried.depth === 'game' ? [GAME_FIGURES, this.#gamesRule] : [EXCHANGE_FIGURES, this.#rule];
    const race = new Race({ candidates: tried.choices.length, figures }, rule);
    for (let due = race.due; due !== null; due = race.due) {
      race.take(await this.#count(moment, tried, due, rule, signal));
      tell(race.result());
    }
  }

  /** Where tiles may be handed on unseen, the best passes with another number of own tiles. */
  async #otherSizes(
    moment: LookMoment,
    step: PassStep,
    passes: readonly Choice[],
    signal: AbortSignal,
  ): Promise<Choice[]> {
    if (step !== 'left' && step !== 'right2') return [];
    const own = passes.map((choice) => (choice.type === 'give' ? choice.tiles.length : -1));
    const sizes = SIZES.filter((size) => !own.includes(size));
    const found = valueOf(await this.#worker(0).ask('sizes', { ...moment, sizes }, { signal }));
    return found.map((tiles) => ({ type: 'give', tiles }));
  }

  async #count(
    moment: LookMoment,
    { choices, depth, rates }: Tried,
    { blocks, alive }: DueBlocks,
    { seed, blockSize }: RaceRule,
    signal: AbortSignal,
  ): Promise<readonly BlockSums[]> {
    const weights = rates?.weights ?? null;
    const { offered } = this.#wishes;
    const shares = this.#workers.map((worker, share) => {
      const own = blocks.filter((_, place) => place % WORKERS === share);
      const request = { ...moment, depth, choices, seed, blockSize, blocks: own, alive, weights, offered };
      return worker.ask('futures', request, { signal });
    });
    return (await Promise.all(shares)).flatMap(valueOf);
  }

  #worker(place: number): WorkerClient<LookCalls> {
    return this.#workers[place] as WorkerClient<LookCalls>;
  }

  /** Drops the games of another moment. Those of this one stay, whatever new rates and terms say of the look. */
  #leaveGames(now: string): void {
    if (now === this.#playedFor) return;
    this.#playedFor = now;
    this.#playing.abort();
    this.#played = null;
  }

  #showPlayed(played: Played): void {
    this.#played = played;
    this.#tell();
  }

  #show(look: Look): void {
    this.#look = look;
    this.#tell();
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

/** What a worker answered; a cancelled or failed question is thrown, so that the look ends. */
function valueOf<Value>(outcome: Outcome<Answered<Value>>): Value {
  if (outcome.status === 'done' && outcome.value.ok) return outcome.value.value;
  if (outcome.status === 'done' && !outcome.value.ok) throw new Error(outcome.value.message);
  throw new Error(outcome.status === 'failed' ? outcome.message : 'cancelled');
}
