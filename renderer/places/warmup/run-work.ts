import { type Result, success } from '../../../core/base/result.ts';
import type { ReadingDocument } from '../../../core/engine/documents.ts';
import type { Moment } from '../../../core/engine/moment.ts';
import type { AnswerDocument, GoOnRequest, LedgerRequest } from '../../../core/engine/practice-questions.ts';
import { PASS_SIZE, type PassSize } from '../../../core/exchange/steps.ts';
import { isSameChoice, type PassChoice } from '../../../core/future/rivals.ts';
import type { GameEvent } from '../../../core/game/events.ts';
import { USUAL_RULE } from '../../../core/plan/race.ts';
import type { Review } from '../../../core/review/review.ts';
import type { IncomingRates } from '../../../core/table/incoming-rates.ts';
import type { DealKind } from '../../../core/warmup/deal-kinds.ts';
import { seedOfItem } from '../../../core/warmup/item.ts';
import type { OwnMove } from '../../../core/warmup/practice-table.ts';
import { isWhole, problemNow, rackNow, type WarmUp } from '../../../core/warmup/warm-up.ts';
import { type Ask, question, type Report } from '../../session/ask.ts';
import { type Compared, comparePasses, type CompareRequest } from '../../session/compare-passes.ts';
import { inTheRoom, momentOfProblem, type RoomHost, saidAt, valueOf } from './room-parts.ts';

/** What is known of a decision, whatever is chosen: nothing of it is shown before the answer is asked for. */
export interface Found {
  readonly answer: AnswerDocument;
  /** The race of the best choices, as the Table runs it. */
  readonly compared: Compared;
  readonly request: CompareRequest;
}

/** How an exchange ended. */
export interface EndedExchange {
  readonly warmUp: WarmUp;
  /** The chance to win when play begins, with any hand. */
  readonly chance: number;
  readonly reading: ReadingDocument;
}

/** The questions of a problem to the engine, with their progress and what went wrong. */
export class RunWork {
  readonly #room: RoomHost;
  readonly #found: Ask<WarmUp, never, Found>;
  readonly #own: Ask<CompareRequest, never, Compared>;
  readonly #events: Ask<GoOnRequest, never, readonly GameEvent[]>;
  readonly #ledger: Ask<LedgerRequest, never, Review>;

  constructor(room: RoomHost) {
    this.#room = room;
    this.#found = inTheRoom(room, (request, report) => this.#find(request, report));
    this.#own = inTheRoom(room, (request, report) => comparePasses(room.pool, USUAL_RULE, request, report));
    this.#events = inTheRoom(room, question(room.worker, 'goOn'));
    const ledger = question(room.worker, 'ledger');
    this.#ledger = inTheRoom(room, async (request, report) => {
      const { fit = null } = await saidAt(room, request.card, room.table, report.signal);
      return await ledger({ ...request, fit }, report);
    });
  }

  /** The part that is done, 0 to 1; null when nothing runs. */
  get part(): number | null {
    const running = this.#states.find(({ status }) => status === 'pending');
    return running === undefined ? null : (running.progress ?? 0);
  }

  /** Why the last question could not be answered, in words. */
  get refusal(): string {
    return this.#states.find(({ status }) => status === 'failed')?.message ?? '';
  }

  /** All that is known of the decision that is due; null if that fails or another question takes its place. */
  find(warmUp: WarmUp): Promise<Found | null> {
    return this.#found.ask(warmUp);
  }

  /** Stops looking for what is known of a decision. */
  rest(): void {
    this.#found.clear();
  }

  /** A race with the choice in it: the one that was run, or one more with this choice beside the others. */
  async judge({ compared, request }: Found, choice: PassChoice): Promise<Compared | null> {
    if (compared.choices.some((each) => isSameChoice(each, choice))) return compared;
    return await this.#own.ask({ ...request, due: { ...request.due, chosen: choice } });
  }

  /** The events of the practice table after these moves. */
  events({ item }: WarmUp, moves: readonly OwnMove[]): Promise<readonly GameEvent[] | null> {
    return this.#events.ask({ card: this.#room.card, item, seed: seedOfItem(item), moves });
  }

  ledger({ item, events }: WarmUp): Promise<Review | null> {
    return this.#ledger.ask({ card: this.#room.card, seat: item.seat, events });
  }

  /** The kind that says most about the rack; `any` if that fails. */
  async kind(warmUp: WarmUp): Promise<DealKind> {
    const request = { card: this.#room.card, rack: rackNow(warmUp).toCounts() };
    return valueOf(await this.#room.worker.ask('kind', request)) ?? 'any';
  }

  /** How an exchange ended; null if that can't be told. */
  async ended(warmUp: WarmUp): Promise<EndedExchange | null> {
    const { card, worker } = this.#room;
    const { signal } = new AbortController();
    const moment = { card, at: { events: warmUp.events }, said: await this.#said(signal) };
    const chance = await worker.ask('gameChance', moment);
    const readings: ReadingDocument[] = [];
    await worker.ask('read', moment, { onProgress: (reading) => readings.push(reading) });
    const [reading] = readings;
    return chance.ok && reading !== undefined ? { warmUp, chance: chance.value.chance, reading } : null;
  }

  async #find(warmUp: WarmUp, report: Pick<Report<never, Found>, 'signal' | 'progress'>): Promise<Result<Found>> {
    const { signal } = report;
    const moment = await this.#moment(warmUp, signal);
    const answer = await this.#room.worker.ask('answer', moment, { signal });
    if (!answer.ok) return answer;
    const { rates } = moment.said;
    const request = { moment, due: dueOf(warmUp, answer.value), rates };
    const silent = { ...report, value: (): void => undefined };
    const compared = await comparePasses(this.#room.pool, USUAL_RULE, request, silent);
    return compared.ok ? success({ answer: answer.value, compared: compared.value, request }) : compared;
  }

  /** The moment as the Table has it: by its events where the exchange began with the deal. */
  async #moment(warmUp: WarmUp, signal: AbortSignal): Promise<Moment & { said: { rates: IncomingRates | null } }> {
    const said = await this.#said(signal);
    const { card } = this.#room;
    if (isWhole(warmUp.item)) return { card, at: { events: warmUp.events }, said };
    const problem = problemNow(warmUp);
    if (problem === null) throw new Error('no decision is due');
    return { ...momentOfProblem(card, problem, warmUp.item.seat), said };
  }

  async #said(signal: AbortSignal) {
    const said = await saidAt(this.#room, this.#room.card, this.#room.table, signal);
    return { ...said, rates: said.fit ? await this.#room.incoming.ratesFor(said.fit, signal) : null };
  }

  get #states(): readonly Pick<Ask<never, never, unknown>['answer'], 'status' | 'progress' | 'message'>[] {
    return [this.#found, this.#own, this.#events, this.#ledger].map(({ answer }) => answer);
  }
}

/** What a race compares: as at the Table, the passes of three own tiles first. */
function dueOf(warmUp: WarmUp, { options }: AnswerDocument): CompareRequest['due'] {
  const problem = problemNow(warmUp);
  if (problem === null) throw new Error('no decision is due');
  const passes = options.filter(({ blind }) => blind === 0).map(({ kinds }) => kinds);
  return { step: problem.step, passes, size: (passes[0]?.length ?? PASS_SIZE) as PassSize };
}
