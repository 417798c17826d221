import { randomFromSeed, shuffle } from '../../../core/base/random.ts';
import { type Result, success } from '../../../core/base/result.ts';
import type { AnswerDocument, FoundDocument } from '../../../core/engine/practice-questions.ts';
import type { PassStep } from '../../../core/exchange/steps.ts';
import { isSameChoice, type PassChoice } from '../../../core/future/rivals.ts';
import { type Ahead, aheadOf } from '../../../core/review/ahead.ts';
import { inTheEnd, type Judgement } from '../../../core/review/decision.ts';
import type { ReceivedEvent } from '../../../core/game/events.ts';
import type { Review } from '../../../core/review/review.ts';
import { formatTiles, kindsOf } from '../../../core/tiles/text.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';
import type { DealKind } from '../../../core/warmup/deal-kinds.ts';
import { seedOfItem, type WarmUpItem } from '../../../core/warmup/item.ts';
import {
  answered,
  type Attempt,
  isOver,
  isWhole,
  movesToGoOn,
  problemNow,
  rackNow,
  startWarmUp,
  stepNow,
  type WarmUp,
  wentOn,
} from '../../../core/warmup/warm-up.ts';
import { type Judged, judgedAt, rankedOf } from '../../session/compare-passes.ts';
import { emptyLayout, fit, type LaidTile, type Layout, takeBack } from '../../session/layout.ts';
import { playedByWindrow } from './own-passes.ts';
import { entriesOf } from './practice-log.ts';
import type { RoomHost } from './room-parts.ts';
import { type EndedExchange, type Found, RunWork } from './run-work.ts';

/** What came before the problem. */
export interface About {
  /** The kind that was asked for; without it, the kind is found from the rack. */
  readonly kind?: DealKind;
  readonly found?: FoundDocument;
  /** The player's own miss that it repeats. */
  readonly miss?: string | null;
  /** The sitting that it belongs to. */
  readonly sitting?: string;
  /** Whether the exchange is to be played to its end. */
  readonly isExchange?: boolean;
  /** Whether it was asked for by its code, so that the answer may be wanted back as a code. */
  readonly isByCode?: boolean;
}

/** What is marked before the answer: which tiles to keep, what to aim at, how many go unseen, and why. */
export interface Draft {
  /** By tile ids. */
  readonly keeps: readonly string[];
  readonly aims: readonly string[];
  readonly blind: number;
  readonly why: string;
}

const NOTHING_MARKED: Draft = { keeps: [], aims: [], blind: 0, why: '' };

/** The answer to a decision, beside the choice that was made. */
export interface ShownAnswer {
  readonly answer: AnswerDocument;
  /** The choices in one list, the recommended one first, as at the Table. */
  readonly list: readonly Judged[];
  readonly own: Judged;
  readonly ahead: Ahead;
}

/** A decision of this problem with its verdict. */
export interface JudgedDecision extends Judgement {
  readonly step: PassStep;
  /** Null for a stop. */
  readonly give: string | null;
}

/** How an exchange ended, with the player's passes and with Windrow's. */
export interface Comparison {
  readonly mine: EndedExchange;
  readonly windrows: EndedExchange;
}

/** One problem at hand: the player's part in core, the answers from the workers. */
export class WarmUpRun {
  readonly #room: RoomHost;
  readonly #work: RunWork;
  readonly about: About;
  /** Whether it shows an answer that was given before; nothing of it is kept again. */
  readonly isReopened: boolean;
  readonly #startedAt = Date.now();
  #warmUp: WarmUp;
  #layout: Layout;
  #draft: Draft = NOTHING_MARKED;
  /** What is worked out while the player thinks; null when it is not begun. */
  #finding: Promise<Found | null> | null;
  #shown: ShownAnswer | null = null;
  #ledger: Review | null = null;
  #comparison: Comparison | null = null;
  #isSettled = false;
  #judged: readonly JudgedDecision[] = [];
  #refusal = '';

  private constructor(room: RoomHost, about: About, warmUp: WarmUp, isReopened = false) {
    this.#room = room;
    this.#work = new RunWork(room);
    this.about = about;
    this.isReopened = isReopened;
    this.#warmUp = warmUp;
    this.#layout = wallLayout(warmUp);
    this.#finding = this.#work.find(warmUp);
  }

  static start(room: RoomHost, item: WarmUpItem, about: About): Result<WarmUpRun> {
    const warmUp = startWarmUp(item);
    return warmUp.ok ? success(new WarmUpRun(room, about, warmUp.value)) : warmUp;
  }

  /** Opens the answer that was given to a problem before. */
  static reopen(room: RoomHost, item: WarmUpItem, attempt: Attempt): Result<WarmUpRun> {
    const begun = startWarmUp(item);
    const warmUp = begun.ok ? answered(begun.value, attempt) : begun;
    if (!warmUp.ok) return warmUp;
    const run = new WarmUpRun(room, {}, warmUp.value, true);
    run.#draft = { ...NOTHING_MARKED, aims: attempt.aims };
    void run.#judge();
    return success(run);
  }

  get item(): WarmUpItem {
    return this.#warmUp.item;
  }
  /** The decision that is due as a problem of its own. */
  get itemNow(): WarmUpItem {
    const now = this.#warmUp.past.length === 0 ? null : problemNow(this.#warmUp);
    return now === null ? this.item : { ...now, seat: this.item.seat };
  }
  get warmUp(): WarmUp {
    return this.#warmUp;
  }
  get layout(): Layout {
    return this.#layout;
  }
  get draft(): Draft {
    return this.#draft;
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
  /** What came in by the last pass of an exchange that is played; null before it, and where nothing came. */
  get cameIn(): ReceivedEvent | null {
    const last = this.#warmUp.events.at(-1);
    return last?.type === 'received' ? last : null;
  }
  /** Whether the decision that is due was answered. */
  get isAnswered(): boolean {
    return this.#warmUp.attempt !== null;
  }
  /** Whether the exchange can be played on after this decision. */
  get whole(): boolean {
    return isWhole(this.item) && !this.isReopened;
  }
  /** Null before the player has answered, and until it has been worked out. */
  get shown(): ShownAnswer | null {
    return this.isAnswered ? this.#shown : null;
  }
  get ledger(): Review | null {
    return this.#ledger;
  }
  get comparison(): Comparison | null {
    return this.#comparison;
  }
  /** Whether all that can be told of an exchange that is over has been worked out. */
  get isSettled(): boolean {
    return this.#isSettled;
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
    return this.#refusal || (this.isAnswered && this.#shown === null ? this.#work.refusal : '');
  }
  get seconds(): number {
    return Math.round((Date.now() - this.#startedAt) / 1000);
  }

  lay(layout: Layout): void {
    this.#layout = layout;
    this.#refusal = '';
    this.#room.changed();
  }

  mark(change: Partial<Draft>): void {
    this.#draft = { ...this.#draft, ...change };
    this.#room.changed();
  }

  /** Answers with what lies in the tray, or with a stop, and shows what Windrow has to say. */
  async show(stops = false): Promise<void> {
    const { keeps, ...said } = this.#draft;
    const tiles = (laid: readonly LaidTile[]): string => formatTiles(Tiles.of(laid.map(({ kind }) => kind)));
    const next = answered(this.#warmUp, {
      ...said,
      keeps: tiles(this.#layout.rack.filter(({ id }) => keeps.includes(id))),
      give: tiles(this.#layout.tray),
      stops,
    });
    this.#refusal = next.ok ? '' : next.problem.message;
    if (next.ok) {
      this.#warmUp = next.value;
      const given = this.#layout.tray.map(({ id }) => id);
      this.#layout = takeBack(this.#layout, given);
    }
    this.#room.changed();
    if (next.ok) await this.#judge();
  }

  /** Stops working for a decision that was not answered: what is then wanted is worked out anew. */
  rest(): void {
    if (this.isAnswered || this.over) return;
    this.#finding = null;
    this.#work.rest();
  }

  /** Works out what could not be worked out before. */
  async again(): Promise<void> {
    this.#finding = null;
    await this.#judge();
  }

  /** Goes on to the next pass, the other seats played by the practice table. */
  async goOn(): Promise<void> {
    const moves = movesToGoOn(this.#warmUp);
    const events = moves === null ? null : await this.#work.events(this.#warmUp, moves);
    if (moves === null || events === null) return;
    const { aims } = this.#draft;
    this.#warmUp = wentOn(this.#warmUp, moves, events);
    this.#layout = fit(this.#layout, this.rack);
    this.#draft = { ...NOTHING_MARKED, aims };
    this.#shown = null;
    if (!this.over) this.#finding = this.#work.find(this.#warmUp);
    this.#room.changed();
    if (this.over) await this.#end();
  }

  /** How the exchange came out: its figures, and what Windrow's own passes would have come to. */
  async #end(): Promise<void> {
    this.#ledger = await this.#work.ledger(this.#warmUp);
    this.#room.changed();
    const mine = await this.#work.ended(this.#warmUp);
    const other = await playedByWindrow(this.#work, this.item);
    const windrows = other === null ? null : await this.#work.ended(other);
    if (mine !== null && windrows !== null) this.#comparison = { mine, windrows };
    this.#isSettled = true;
    this.#room.changed();
  }

  async #judge(): Promise<void> {
    const decided = this.#warmUp;
    const { attempt } = decided;
    const step = stepNow(decided);
    if (attempt === null || step === null) return;
    const choice: PassChoice = attempt.stops ? { type: 'stop' } : { type: 'give', tiles: kindsOf(attempt.give) };
    this.#finding ??= this.#work.find(decided);
    const found = await this.#finding;
    const compared = found === null ? null : await this.#work.judge(found, choice);
    const list = found === null ? null : rankedOf(found.compared);
    const place = compared?.choices.findIndex((each) => isSameChoice(each, choice)) ?? -1;
    if (found === null || list === null || compared === null || compared.result === null || place < 0) {
      this.#room.changed();
      return;
    }
    const ahead = aheadOf(compared.result, compared.choices, choice);
    const shown = { answer: found.answer, list, own: judgedAt(compared, place), ahead };
    if (this.#warmUp === decided) this.#shown = shown;
    const judgement = inTheEnd(ahead.chosen);
    this.#judged = [...this.#judged, { ...judgement, step, give: attempt.stops ? null : attempt.give }];
    this.#room.changed();
    if (!this.isReopened) await this.#keep(decided, step, judgement);
  }

  /** Keeps a decision in the history; `decided`: the problem as it was then. */
  async #keep(decided: WarmUp, step: PassStep, judgement: Judgement): Promise<void> {
    const seconds = this.#room.options.clock ? this.seconds : null;
    const first = decided.past.length === 0;
    const known = first && this.about.kind !== 'any' ? this.about.kind : undefined;
    const kind = known ?? (await this.#work.kind(decided));
    const miss = first ? (this.about.miss ?? null) : null;
    const { sitting } = this.about;
    const asked = { warmUp: decided, card: this.#room.card.mark };
    const within = sitting === undefined ? {} : { sitting };
    this.#room.note(...entriesOf({ kind, step, miss, seconds, asked, ...within, ...judgement }));
  }
}

/** The rack in a random order, as drawn from the wall, so that there is something to arrange. */
function wallLayout(warmUp: WarmUp): Layout {
  const kinds = shuffle(rackNow(warmUp).toKinds(), randomFromSeed(seedOfItem(warmUp.item)));
  const rack = kinds.map((kind, place) => ({ id: `t${place + 1}`, kind, space: 'none' as const }));
  return { ...emptyLayout, rack, next: rack.length + 1 };
}
