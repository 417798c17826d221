import { randomFromSeed, shuffle } from '../../../core/base/random.ts';
import { type Result, success } from '../../../core/base/result.ts';
import type { PassStep } from '../../../core/exchange/steps.ts';
import { EQUAL_WITHIN } from '../../../core/review/decision.ts';
import type { Review } from '../../../core/review/review.ts';
import { formatTileList, formatTiles } from '../../../core/tiles/text.ts';
import type { Tiles } from '../../../core/tiles/tiles.ts';
import type { DealKind } from '../../../core/warmup/deal-kinds.ts';
import type { AnswerEntry, MissEntry } from '../../../core/warmup/history.ts';
import { seedOfItem, type WarmUpItem } from '../../../core/warmup/item.ts';
import type { OwnMove } from '../../../core/warmup/own-policy.ts';
import { PRACTICE } from '../../../core/warmup/progress.ts';
import type { TryOut } from '../../../core/warmup/try-out.ts';
import {
  aimed,
  answerDue,
  arranged,
  back,
  chosen,
  isOver,
  isWhole,
  kept,
  movesToGoOn,
  movesToStop,
  rackNow,
  said,
  startWarmUp,
  stepNow,
  type WarmUp,
  wentOn,
} from '../../../core/warmup/warm-up.ts';
import { emptyLayout, fit, type Layout } from '../../session/layout.ts';
import type { AnswerView, FoundView, JudgedView } from '../../worker/warm-up-calls.ts';
import { answerOf, today } from './answers.ts';
import type { RoomHost } from './room-parts.ts';

/** What came before the problem. */
export interface About {
  /** The kind that was asked for; found out when it wasn't. */
  readonly kind?: DealKind;
  readonly found?: FoundView;
  /** The own miss that it repeats. */
  readonly miss?: string | null;
}

/** One problem at hand, through all its stages: the person's part in core, the answers from the worker. */
export class WarmUpRun {
  readonly #room: RoomHost;
  readonly item: WarmUpItem;
  readonly about: About;
  readonly #startedAt = Date.now();
  #warmUp: WarmUp;
  #layout: Layout;
  #answer: AnswerView | null = null;
  #tryOut: TryOut | null = null;
  #ledger: Review | null = null;
  /** The part of the work in the background that is done; null when none runs. */
  #working: number | null = null;
  #refusal = '';

  private constructor(room: RoomHost, item: WarmUpItem, about: About, warmUp: WarmUp) {
    this.#room = room;
    this.item = item;
    this.about = about;
    this.#warmUp = warmUp;
    this.#layout = shuffledLayout(warmUp);
  }

  static start(room: RoomHost, item: WarmUpItem, about: About): Result<WarmUpRun> {
    const warmUp = startWarmUp(item);
    return warmUp.ok ? success(new WarmUpRun(room, item, about, warmUp.value)) : warmUp;
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
  get tryOut(): TryOut | null {
    return this.#tryOut;
  }
  get ledger(): Review | null {
    return this.#ledger;
  }
  get working(): number | null {
    return this.#working;
  }
  get refusal(): string {
    return this.#refusal;
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

  back(): void {
    this.#warmUp = back(this.#warmUp);
    this.#refusal = '';
    this.#room.changed();
  }

  /** Says why, or nothing, and asks for the answer. */
  async said(why: string): Promise<void> {
    this.#take(said(this.#warmUp, why));
    await this.#askAnswer();
  }

  /** Goes on to the next pass, the other seats played by the practice table. */
  async goOn(): Promise<void> {
    await this.#goOnWith(movesToGoOn(this.#warmUp));
  }

  async stop(): Promise<void> {
    await this.#goOnWith(movesToStop(this.#warmUp));
  }

  async #askAnswer(): Promise<void> {
    const due = answerDue(this.#warmUp);
    if (due === null) return;
    const { rack, gone, step, attempt } = due;
    const request = { card: this.#room.card, rack, gone, step, give: attempt.give, aims: attempt.aims };
    const answer = await this.#work((onProgress) => this.#room.worker.askNewest('answer', request, { onProgress }));
    if (answer === null || answerDue(this.#warmUp) === null) return;
    this.#answer = answer;
    this.#room.changed();
    if (answer.chosen !== null) await this.#keepAnswer(answer.chosen, step);
    await this.#tryOutNow(answer);
  }

  /** Tries the first pass out at the table, where it is not the best one anyway. */
  async #tryOutNow({ chosen: own, options }: AnswerView): Promise<void> {
    const best = options[0];
    if (own === null || best === undefined || !this.whole || this.step !== 'right' || own.cost === 0) return;
    const request = {
      card: this.#room.card,
      rack: this.item.rack,
      seat: this.item.seat,
      chosen: textOf(own),
      best: textOf(best),
    };
    this.#tryOut = await this.#work((onProgress) => this.#room.worker.askNewest('tryOut', request, { onProgress }));
    this.#room.changed();
  }

  async #keepAnswer({ cost, verdict }: JudgedView, step: PassStep): Promise<void> {
    const kind = await this.#kind();
    const miss = this.#warmUp.past.length === 0 ? (this.about.miss ?? null) : null;
    const seconds = this.#room.wishes.clock ? { seconds: this.seconds } : {};
    const id = crypto.randomUUID();
    const entry: AnswerEntry = { type: 'answer', id, day: today(), miss, kind, step, cost, verdict, ...seconds };
    const own: MissEntry = {
      type: 'miss',
      id: crypto.randomUUID(),
      day: today(),
      kind,
      step,
      cost,
      source: PRACTICE,
    };
    this.#room.note(entry, ...(miss === null && cost > EQUAL_WITHIN ? [own] : []));
  }

  async #kind(): Promise<DealKind> {
    const { kind } = this.about;
    if (kind !== undefined && kind !== 'any' && this.#warmUp.past.length === 0) return kind;
    const request = { card: this.#room.card, rack: formatTiles(this.rack) };
    const found = answerOf(await this.#room.worker.ask('kind', request));
    return found?.ok === true ? found.value : 'any';
  }

  async #goOnWith(moves: readonly OwnMove[] | null): Promise<void> {
    if (moves === null) return;
    const { card, worker } = this.#room;
    this.#room.worker.cancelNewest('tryOut');
    const request = { card, item: this.item, seed: seedOfItem(this.item), moves };
    const events = await this.#work(() => worker.askNewest('goOn', request));
    if (events === null) return;
    this.#warmUp = wentOn(this.#warmUp, moves, events);
    this.#layout = fit(this.#layout, this.rack);
    this.#answer = null;
    this.#tryOut = null;
    this.#room.changed();
    if (this.over) await this.#askLedger();
  }

  async #askLedger(): Promise<void> {
    const { events, item } = this.#warmUp;
    const request = { card: this.#room.card, seat: item.seat, events };
    this.#ledger = await this.#work((onProgress) => this.#room.worker.askNewest('ledger', request, { onProgress }));
    this.#room.changed();
  }

  async #work<Value>(
    ask: (onProgress: (part: number) => void) => Promise<Parameters<typeof answerOf<Value>>[0]>,
  ): Promise<Value | null> {
    this.#working = 0;
    this.#room.changed();
    const onProgress = (part: number): void => {
      this.#working = part;
      this.#room.changed();
    };
    const answer = answerOf(await ask(onProgress));
    this.#working = null;
    if (answer?.ok === false) this.#refusal = answer.message;
    this.#room.changed();
    return answer?.ok === true ? answer.value : null;
  }

  #take(next: Result<WarmUp>): void {
    if (next.ok) this.#warmUp = next.value;
    this.#refusal = next.ok ? '' : next.problem.message;
    this.#room.changed();
  }
}

function textOf({ give }: JudgedView): string {
  return formatTileList(give);
}

/** The tiles as they come off the wall, so that there is something to arrange. */
function shuffledLayout(warmUp: WarmUp): Layout {
  const kinds = shuffle(rackNow(warmUp).toKinds(), randomFromSeed(seedOfItem(warmUp.item)));
  const rack = kinds.map((kind, place) => ({ id: `t${place + 1}`, kind, space: 'none' as const }));
  return { ...emptyLayout, rack, next: rack.length + 1 };
}
