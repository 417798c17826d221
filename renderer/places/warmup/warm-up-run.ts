import { type Result, success } from '../../../core/base/result.ts';
import type { PassStep } from '../../../core/exchange/steps.ts';
import { inTheEnd, type Judgement } from '../../../core/review/judgement.ts';
import type { Review } from '../../../core/review/review.ts';
import type { Choice } from '../../../core/table/future-seats.ts';
import type { Tiles } from '../../../core/tiles/tiles.ts';
import type { Ahead } from '../../../core/review/ahead.ts';
import type { DealKind } from '../../../core/warmup/deal-kinds.ts';
import { movesToGoOn, wentOn } from '../../../core/warmup/go-on.ts';
import type { WarmUpItem } from '../../../core/warmup/item.ts';
import { aimed, arranged, back, chosen, kept, said, stopped } from '../../../core/warmup/stages.ts';
import {
  type AskedAnswer,
  answerDue,
  isOver,
  isWhole,
  rackNow,
  startWarmUp,
  stepNow,
  type WarmUp,
} from '../../../core/warmup/warm-up.ts';
import { fit, type Layout } from '../../session/layout.ts';
import type { AnswerView, FoundView } from '../../worker/warm-up-calls.ts';
import { entriesOf } from './decided.ts';
import type { RoomHost } from './room-parts.ts';
import { RunWork } from './run-work.ts';
import { kindsOf } from './tile-row.ts';
import { wallLayout } from './wall-layout.ts';

/** What came before the problem. */
export interface About {
  /** The kind that was asked for; found out when it wasn't. */
  readonly kind?: DealKind;
  readonly found?: FoundView;
  /** The own miss that it repeats. */
  readonly miss?: string | null;
}

/** A decision of this problem with what was told of it. */
export interface ToldDecision extends Judgement {
  readonly step: PassStep;
  /** Null for a stop. */
  readonly give: string | null;
  /** What it cost for now; null for a stop, which nothing but the look ahead can judge. */
  readonly now: number | null;
}

/** One problem at hand, through all its stages: the person's part in core, the answers from the worker. */
export class WarmUpRun {
  readonly #room: RoomHost;
  readonly #work: RunWork;
  readonly about: About;
  readonly #startedAt = Date.now();
  #warmUp: WarmUp;
  #layout: Layout;
  #answer: AnswerView | null = null;
  #ahead: Ahead | null = null;
  #ledger: Review | null = null;
  #told: readonly ToldDecision[] = [];
  #refusal = '';

  private constructor(room: RoomHost, about: About, warmUp: WarmUp) {
    this.#room = room;
    this.#work = new RunWork(room);
    this.about = about;
    this.#warmUp = warmUp;
    this.#layout = wallLayout(warmUp);
  }

  static start(room: RoomHost, item: WarmUpItem, about: About): Result<WarmUpRun> {
    const warmUp = startWarmUp(item);
    return warmUp.ok ? success(new WarmUpRun(room, about, warmUp.value)) : warmUp;
  }

  get item(): WarmUpItem {
    return this.#warmUp.item;
  }
  get warmUp(): WarmUp {
    return this.#warmUp;
  }
  get layout(): Layout {
    return this.#layout;
  }
  get step(): PassStep | null {
    return stepNow(this.#warmUp);
  }
  get rack(): Tiles {
    return rackNow(this.#warmUp);
  }
  get over(): boolean {
    return isOver(this.#warmUp);
  }
  /** Whether the exchange can be played on after this decision. */
  get whole(): boolean {
    return isWhole(this.item);
  }
  get answer(): AnswerView | null {
    return this.#answer;
  }
  /** What the decision costs by the end of the exchange; null until it was looked through. */
  get ahead(): Ahead | null {
    return this.#ahead;
  }
  get ledger(): Review | null {
    return this.#ledger;
  }
  /** All decisions so far that were judged. */
  get told(): readonly ToldDecision[] {
    return this.#told;
  }
  /** The part of the work in the background that is done; null when none runs. */
  get working(): number | null {
    return this.#work.part;
  }
  get refusal(): string {
    return this.#refusal || this.#work.refusal;
  }
  get seconds(): number {
    return Math.round((Date.now() - this.#startedAt) / 1000);
  }

  lay(layout: Layout): void {
    this.#layout = layout;
    this.#room.changed();
  }

  arranged(): void {
    this.#take(arranged(this.#warmUp));
  }
  aimed(aims: readonly string[]): void {
    this.#take(aimed(this.#warmUp, aims));
  }
  kept(tiles: Tiles): void {
    this.#take(kept(this.#warmUp, tiles));
  }
  chosen(tiles: Tiles, blind: number): void {
    this.#take(chosen(this.#warmUp, tiles, blind));
  }
  /** Chooses to stop before the second round. */
  stopped(): void {
    this.#take(stopped(this.#warmUp));
  }
  back(): void {
    this.#take(success(back(this.#warmUp)));
  }

  /**
   * Says why, or nothing, and asks for the answer: first what is exact, then the look ahead, whose
   * cost is the one that is kept. Who goes on before it is there has the cost for now kept.
   */
  async said(why: string): Promise<void> {
    this.#take(said(this.#warmUp, why));
    const due = answerDue(this.#warmUp);
    const answer = due === null ? null : await this.#work.answer(due);
    if (due === null || answer === null || this.#isPast(due)) return;
    this.#answer = answer;
    this.#room.changed();
    const { chosen: now } = answer;
    const decided = this.#warmUp;
    const ahead = await this.#work.ahead(due, decided, answer, choiceOf(due));
    const exact = now === null ? null : { cost: now.cost, halfWidth: null, verdict: now.verdict };
    const told = ahead === null ? exact : inTheEnd(ahead.chosen);
    if (ahead !== null && !this.#isPast(due)) this.#ahead = ahead;
    if (told === null) return;
    const give = due.attempt.stops ? null : due.attempt.give;
    this.#told = [...this.#told, { ...told, step: due.step, give, now: now?.cost ?? null }];
    this.#room.changed();
    await this.#keep(decided, due.step, told);
  }

  /** Goes on to the next pass, the other seats played by the practice table. */
  async goOn(): Promise<void> {
    const moves = movesToGoOn(this.#warmUp);
    const events = moves === null ? null : await this.#work.events(this.#warmUp, moves);
    if (moves === null || events === null) return;
    this.#warmUp = wentOn(this.#warmUp, moves, events);
    this.#layout = fit(this.#layout, this.rack);
    this.#answer = null;
    this.#ahead = null;
    this.#room.changed();
    if (!this.over) return;
    this.#ledger = await this.#work.ledger(this.#warmUp);
    this.#room.changed();
  }

  /** Whether the person has gone on meanwhile. */
  #isPast({ step, attempt }: AskedAnswer): boolean {
    const now = answerDue(this.#warmUp);
    return now === null || now.step !== step || now.attempt !== attempt;
  }

  /** Keeps a decision in the history; `decided`: the problem as it was then. */
  async #keep(decided: WarmUp, step: PassStep, told: Judgement): Promise<void> {
    const seconds = this.#room.wishes.clock ? this.seconds : null;
    const first = decided.past.length === 0;
    const known = first && this.about.kind !== 'any' ? this.about.kind : undefined;
    const kind = known ?? (await this.#work.kind(decided));
    const miss = first ? (this.about.miss ?? null) : null;
    this.#room.note(...entriesOf({ kind, step, miss, seconds, ...told }));
  }

  #take(next: Result<WarmUp>): void {
    if (next.ok) this.#warmUp = next.value;
    this.#refusal = next.ok ? '' : next.problem.message;
    this.#room.changed();
  }
}

function choiceOf({ attempt }: AskedAnswer): Choice {
  return attempt.stops ? { type: 'stop' } : { type: 'give', tiles: kindsOf(attempt.give) };
}
