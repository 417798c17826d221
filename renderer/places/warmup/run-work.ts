import type { GameEvent } from '../../../core/game/events.ts';
import type { Ahead } from '../../../core/review/ahead.ts';
import type { Review } from '../../../core/review/review.ts';
import type { PassChoice } from '../../../core/future/rivals.ts';
import type { DealKind } from '../../../core/warmup/deal-kinds.ts';
import { seedOfItem } from '../../../core/warmup/item.ts';
import type { OwnMove } from '../../../core/warmup/practice-table.ts';
import { type AskedAnswer, rackNow, type WarmUp } from '../../../core/warmup/warm-up.ts';
import { type Ask, question } from '../../session/ask.ts';
import type {
  AnswerRequest,
  AnswerDocument,
  GoOnRequest,
  LedgerRequest,
} from '../../../core/engine/practice-questions.ts';
import {
  aheadOfChoice,
  type AheadRequest,
  countsOf,
  inTheRoom,
  momentOfProblem,
  type RoomHost,
  saidAt,
  valueOf,
} from './room-parts.ts';

/** The questions of a problem to the engine, with their progress and what went wrong. */
export class RunWork {
  readonly #room: RoomHost;
  readonly #answer: Ask<AnswerRequest, never, AnswerDocument>;
  readonly #ahead: Ask<AheadRequest, never, Ahead>;
  readonly #events: Ask<GoOnRequest, never, readonly GameEvent[]>;
  readonly #ledger: Ask<LedgerRequest, never, Review>;

  constructor(room: RoomHost) {
    this.#room = room;
    this.#answer = inTheRoom(room, question(room.worker, 'answer'));
    this.#ahead = inTheRoom(room, async (request, report) => {
      const { signal, progress } = report;
      const said = await saidAt(room, room.card, room.table, signal);
      const moment = {
        ...request.moment,
        said: said.fit ? { ...said, rates: await room.incoming.ratesFor(said.fit, signal) } : said,
      };
      return await aheadOfChoice(room.pool, { ...request, moment }, { signal, progress });
    });
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

  answer(due: AskedAnswer, { item }: WarmUp): Promise<AnswerDocument | null> {
    const { aims, stops, give } = due.attempt;
    this.#ahead.clear();
    const moment = momentOfProblem(this.#room.card, due, item.seat);
    return this.#answer.ask({ ...moment, give: stops ? null : countsOf(give), aims });
  }

  /** What the choice costs by the end of the exchange. */
  ahead(due: AskedAnswer, { item }: WarmUp, { options }: AnswerDocument, chosen: PassChoice): Promise<Ahead | null> {
    const passes = options.map(({ kinds }) => kinds);
    return this.#ahead.ask({
      moment: momentOfProblem(this.#room.card, due, item.seat),
      passes,
      chosen,
    });
  }

  /** The events of the practice table after these moves. */
  events({ item }: WarmUp, moves: readonly OwnMove[]): Promise<readonly GameEvent[] | null> {
    this.#ahead.clear();
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

  get #states(): readonly Pick<Ask<never, never, unknown>['answer'], 'status' | 'progress' | 'message'>[] {
    return [this.#answer, this.#ahead, this.#events, this.#ledger].map(({ answer }) => answer);
  }
}
