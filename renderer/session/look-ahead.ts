import type { Result } from '../../core/base/result.ts';
import type { Moment } from '../../core/engine/moment.ts';
import { mayBePassed, type PassSize } from '../../core/exchange/steps.ts';
import { type GiveChoice, isSameChoice, type PassChoice } from '../../core/future/rivals.ts';
import { legalEvents } from '../../core/game/legal.ts';
import { GAMES_RULE, type RaceRule, USUAL_RULE } from '../../core/plan/race.ts';
import type { Pool } from '../worker/pool.ts';
import { type Analysis, momentOf } from './analysis.ts';
import { type Answer, Ask, type Report } from './ask.ts';
import type { CardGames } from './card-games.ts';
import {
  type Compared,
  comparePasses,
  type CompareRequest,
  type Judged,
  judgedAt,
  rankedOf,
  raceOf,
} from './compare-passes.ts';
import { Demand, momentKey, type Weighing } from './demand.ts';
import type { GameSession } from './game-session.ts';
import { type IncomingChoice, ratesKey } from './incoming.ts';
import type { PassDraft } from './pass-draft.ts';
import { Store } from './store.ts';

/** What a look ahead is made from. */
export interface LookParts {
  readonly session: GameSession;
  /** Who plans the pass that is due. */
  readonly plans: Pick<Analysis, 'plan' | 'subscribe'>;
  /** How many tiles go on blind, and how many a courtesy takes. */
  readonly draft: Pick<PassDraft, 'blind' | 'wanted' | 'subscribe'>;
  readonly cardGames: Pick<CardGames, 'said' | 'key' | 'subscribe'>;
  readonly incoming: Pick<IncomingChoice, 'rates' | 'subscribe'>;
  readonly pool: Pool;
  readonly preferences?: Weighing;
  readonly rule?: RaceRule;
  readonly gamesRule?: RaceRule;
}

/** Choices that whole games are played with. */
interface GamesRequest {
  readonly moment: Moment;
  readonly choices: readonly PassChoice[];
}

/**
 * Looks ahead to the end of the exchange as soon as the plan of a pass is there, or once that is asked for, and anew
 * whenever the rack, the tray's pass or what the player said changes; an older look is dropped.
 */
export class LookAhead extends Store {
  readonly #session: GameSession;
  readonly #plans: LookParts['plans'];
  readonly #draft: LookParts['draft'];
  readonly #cardGames: LookParts['cardGames'];
  readonly #incoming: LookParts['incoming'];
  readonly #pool: Pool;
  readonly #demand: Demand;
  readonly #rule: RaceRule;
  readonly #gamesRule: RaceRule;
  readonly #look = new Ask((request: CompareRequest, report: Report<never, Compared>) =>
    comparePasses(this.#pool, this.#rule, request, report),
  );
  readonly #played = new Ask((request: GamesRequest, report: Report<never, Compared>) => this.#play(request, report));
  #moment: Moment | null = null;
  /** The pass that is due and all that is known of it, whatever lies in the tray: what a look belongs to. */
  #lookFor = '';
  #ranked: readonly Judged[] | null = null;
  /** Choices of the tray's that were compared later, each with the others on the same futures. */
  #added: readonly Judged[] = [];
  /** The moment of the game that the whole games belong to. */
  #playedFor = '';

  constructor({
    session,
    plans,
    draft,
    cardGames,
    incoming,
    pool,
    preferences,
    rule = USUAL_RULE,
    gamesRule = GAMES_RULE,
  }: LookParts) {
    super();
    this.#session = session;
    this.#plans = plans;
    this.#draft = draft;
    this.#cardGames = cardGames;
    this.#incoming = incoming;
    this.#pool = pool;
    this.#demand = new Demand(session, preferences);
    this.#rule = rule;
    this.#gamesRule = gamesRule;
    this.#look.subscribe(() => this.#lookedOn());
    this.#played.subscribe(() => this.notify());
    for (const store of [session, plans, draft, cardGames, incoming, preferences])
      store?.subscribe(() => this.#refresh());
    this.#refresh();
  }

  /** What has been found so far of the choices for the pass that is due. */
  get look(): Answer<Compared> {
    return this.#look.answer;
  }

  /**
   * The compared choices in one list, the recommended one first, from the end of the first look on. Neither their order
   * nor what is said of them changes afterwards, whatever is laid in the tray.
   */
  get ranked(): readonly Judged[] | null {
    return this.#ranked;
  }

  /** Whether a pass is due that is looked at only when `weigh` is called. */
  get waits(): boolean {
    return !this.#demand.isThere && this.#lookFor !== '' && this.#ranked === null;
  }

  /** Looks ahead now, where that does not begin by itself. */
  weigh(): void {
    this.#demand.ask();
    this.#refresh();
  }

  /** What lies in the tray, once it is a whole pass. */
  get chosen(): GiveChoice | null {
    const { rack, tray } = this.#session.layout;
    const { wanted } = this.#draft;
    if (wanted === null || tray.length !== wanted || (wanted === 0 && rack.length === 0)) return null;
    return { type: 'give', tiles: tray.map(({ kind }) => kind) };
  }

  /** What was found of a choice, if it was compared. */
  judged(choice: PassChoice): Judged | null {
    return [...(this.#ranked ?? []), ...this.#added].find((each) => isSameChoice(each.choice, choice)) ?? null;
  }

  /** What whole games show of the choices that the look ahead could not tell apart; none until asked for. */
  get played(): Answer<Compared> {
    return this.#played.answer;
  }

  /** Looks through everything once more, after something failed. */
  again(): void {
    void this.#look.again();
  }

  /** Plays whole games with the choices that are as good so far; each look at them is shown. */
  async playOut(): Promise<void> {
    const choices = this.open;
    if (this.look.status !== 'done' || this.#moment === null || choices.length < 2) return;
    await this.#played.ask({ moment: this.#moment, choices });
  }

  /** Ends the games; what they showed so far stays. */
  stopPlaying(): void {
    this.#played.stop();
  }

  /** The choices that the look ahead did not find worse. */
  get open(): readonly PassChoice[] {
    const { choices = [], result } = this.look.value ?? {};
    return choices.filter((_, place) => (result?.standings[place]?.verdict ?? 'costs') !== 'costs');
  }

  #refresh(): void {
    const { state } = this.#session;
    const plan = this.#plans.plan.status === 'done' ? this.#plans.plan.value : null;
    const step = legalEvents(state).give?.step ?? null;
    const now = momentKey(this.#session);
    this.#leaveGames(now);
    if (step === null || plan === null) return this.#leaveLook();
    const passes = plan.options.map(({ kinds }) => kinds);
    const chosen = legalTiles(this.chosen);
    const named = passes.map((tiles) => tiles.join('-')).join();
    const { said, key: learned } = this.#cardGames;
    const { rates } = this.#incoming;
    const lookFor = `${now} ${named} ${ratesKey(rates)} ${learned}`;
    if (lookFor !== this.#lookFor) this.#forget();
    else if (this.#hasCompared(chosen)) return;
    this.#lookFor = lookFor;
    this.#moment = momentOf(this.#session, { ...said, rates });
    if (this.waits) {
      this.#look.clear();
      return this.notify();
    }
    const due = { step, passes, chosen, size: (passes[0]?.length ?? 0) as PassSize };
    void this.#look.ask({ moment: this.#moment, due, rates }, `${lookFor} ${chosen?.tiles.join('-') ?? ''}`);
  }

  #lookedOn(): void {
    const { status, value } = this.#look.answer;
    const isSettled = status === 'done' && value !== null && value.result !== null;
    if (isSettled) this.#keep(value);
    this.notify();
    // The tray may hold another pass by now.
    if (isSettled) this.#refresh();
  }

  /** The first look makes the list; a later one, for the tray's pass, adds that one. */
  #keep(compared: Compared): void {
    if (this.#ranked === null) this.#ranked = rankedOf(compared);
    else {
      const later = compared.choices.map((_, place) => judgedAt(compared, place));
      this.#added = [...this.#added, ...later.filter(({ choice }) => this.judged(choice) === null)];
    }
  }

  /** Whether the tray's pass, if there is one, was compared with the others, or is being compared. */
  #hasCompared(chosen: GiveChoice | null): boolean {
    const { status, value } = this.#look.answer;
    if (status !== 'pending' && status !== 'done') return false;
    if (chosen === null || this.judged(chosen) !== null) return true;
    return value?.choices.some((choice) => isSameChoice(choice, chosen)) ?? false;
  }

  #forget(): void {
    this.#ranked = null;
    this.#added = [];
  }

  #leaveLook(): void {
    this.#lookFor = '';
    this.#forget();
    this.#look.clear();
  }

  /** Whole games take all tiles as they come: no rates are weighed. */
  async #play({ moment, choices }: GamesRequest, report: Report<never, Compared>): Promise<Result<Compared>> {
    return await raceOf(this.#pool, this.#gamesRule, { ...moment, depth: 'game', choices }, null, report);
  }

  /** Drops the games of another moment. Those of this one stay, whatever new rates and terms say of the look. */
  #leaveGames(now: string): void {
    if (now === this.#playedFor) return;
    this.#playedFor = now;
    this.#played.clear();
  }
}

/** A pass with a joker in it is none. */
function legalTiles(choice: GiveChoice | null): GiveChoice | null {
  return choice !== null && choice.tiles.every(mayBePassed) ? choice : null;
}
