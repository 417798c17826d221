import { randomFromSeed, shuffle } from '../../../core/base/random.ts';
import { type Result, success } from '../../../core/base/result.ts';
import type { PassStep } from '../../../core/exchange/steps.ts';
import { inTheEnd, type Judgement } from '../../../core/review/decision.ts';
import type { Review } from '../../../core/review/review.ts';
import type { PassChoice } from '../../../core/future/rivals.ts';
import { kindsOf } from '../../../core/tiles/text.ts';
import type { Tiles } from '../../../core/tiles/tiles.ts';
import type { Ahead } from '../../../core/review/ahead.ts';
import type { DealKind } from '../../../core/warmup/deal-kinds.ts';
import {
  aimed,
  answerDue,
  arranged,
  type AskedAnswer,
  back,
  chosen,
  isOver,
  isWhole,
  kept,
  movesToGoOn,
  rackNow,
  said,
  startWarmUp,
  stepNow,
  stopped,
  type WarmUp,
  wentOn,
} from '../../../core/warmup/warm-up.ts';
import { seedOfItem, type WarmUpItem } from '../../../core/warmup/item.ts';
import { emptyLayout, fit, type Layout } from '../../session/layout.ts';
import type { AnswerDocument, FoundDocument } from '../../../core/engine/practice-questions.ts';
import { entriesOf } from './practice-log.ts';
import type { RoomHost } from './room-parts.ts';
import { RunWork } from './run-work.ts';

/** What came before the problem. */
export interface About {
  /** The kind that was asked for; without it, the kind is found from the rack. */
  readonly kind?: DealKind;
  readonly found?: FoundDocument;
  /** The player's own miss that it repeats. */
  readonly miss?: string | null;
}

/** A decision of this problem with its verdict. */
export interface JudgedDecision extends Judgement {
  readonly step: PassStep;
  /** Null for a stop. */
  readonly give: string | null;
  /** What it cost for now; null for a stop, which only the look ahead can judge. */
  readonly now: number | null;
}

/** One problem at hand, through all its stages: the player's part in core, the answers from the worker. */
export class WarmUpRun {
  readonly #room: RoomHost;
  readonly #work: RunWork;
  readonly about: About;
  readonly #startedAt = Date.now();
  #warmUp: WarmUp;
  #layout: Layout;
  #answer: AnswerDocument | null = null;
  #ahead: Ahead | null = null;
  #ledger: Review | null = null;
  #judged: readonly JudgedDecision[] = [];
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
  get answer(): AnswerDocument | null {
    return this.#answer;
  }
  /** What the decision costs by the end of the exchange; null until the look ahead is done. */
  get ahead(): Ahead | null {
    return this.#ahead;
  }
  get ledger(): Review | null {
    return this.#ledger;
  }
  /** All decisions so far that were judged. */
  get judged(): readonly JudgedDecision[] {
    return this.#judged;
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
    this.#advance(arranged(this.#warmUp));
  }
  aimed(aims: readonly string[]): void {
    this.#advance(aimed(this.#warmUp, aims));
  }
  kept(tiles: Tiles): void {
    this.#advance(kept(this.#warmUp, tiles));
  }
  chosen(tiles: Tiles, blind: number): void {
    this.#advance(chosen(this.#warmUp, tiles, blind));
  }
  /** Chooses to stop before the second round. */
  stopped(): void {
    this.#advance(stopped(this.#warmUp));
  }
  back(): void {
    this.#advance(success(back(this.#warmUp)));
  }

  /**
   * Says why, or nothing, and asks for the answer: first what is exact, then the look ahead, whose
   * cost is the one that is kept. If the player goes on before that, the cost for now is kept.
   */
  async said(why: string): Promise<void> {
    this.#advance(said(this.#warmUp, why));
    const due = answerDue(this.#warmUp);
    const answer = due === null ? null : await this.#work.answer(due, this.#warmUp);
    if (due === null || answer === null || this.#isPast(due)) return;
    this.#answer = answer;
    this.#room.changed();
    const { chosen: now } = answer;
    const decided = this.#warmUp;
    const ahead = await this.#work.ahead(due, decided, answer, choiceOf(due));
    const exact = now === null ? null : { cost: now.cost, halfWidth: null, verdict: now.verdict };
    const judgement = ahead === null ? exact : inTheEnd(ahead.chosen);
    if (ahead !== null && !this.#isPast(due)) this.#ahead = ahead;
    if (judgement === null) return;
    const give = due.attempt.stops ? null : due.attempt.give;
    this.#judged = [...this.#judged, { ...judgement, step: due.step, give, now: now?.cost ?? null }];
    this.#room.changed();
    await this.#keep(decided, due.step, judgement);
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

  /** Whether the player has gone on meanwhile. */
  #isPast({ step, attempt }: AskedAnswer): boolean {
    const now = answerDue(this.#warmUp);
    return now === null || now.step !== step || now.attempt !== attempt;
  }

  /** Keeps a decision in the history; `decided`: the problem as it was then. */
  async #keep(decided: WarmUp, step: PassStep, judgement: Judgement): Promise<void> {
    const seconds = this.#room.options.clock ? this.seconds : null;
    const first = decided.past.length === 0;
    const known = first && this.about.kind !== 'any' ? this.about.kind : undefined;
    const kind = known ?? (await this.#work.kind(decided));
    const miss = first ? (this.about.miss ?? null) : null;
    this.#room.note(...entriesOf({ kind, step, miss, seconds, ...judgement }));
  }

  #advance(next: Result<WarmUp>): void {
    if (next.ok) this.#warmUp = next.value;
    this.#refusal = next.ok ? '' : next.problem.message;
    this.#room.changed();
  }
}

function choiceOf({ attempt }: AskedAnswer): PassChoice {
  return attempt.stops ? { type: 'stop' } : { type: 'give', tiles: kindsOf(attempt.give) };
}

/** The rack in a random order, as drawn from the wall, so that there is something to arrange. */
function wallLayout(warmUp: WarmUp): Layout {
  const kinds = shuffle(rackNow(warmUp).toKinds(), randomFromSeed(seedOfItem(warmUp.item)));
  const rack = kinds.map((kind, place) => ({ id: `t${place + 1}`, kind, space: 'none' as const }));
  return { ...emptyLayout, rack, next: rack.length + 1 };
}
