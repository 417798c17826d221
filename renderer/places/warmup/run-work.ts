import type { Choice } from '../../../core/table/future-seats.ts';
import { formatTiles } from '../../../core/tiles/text.ts';
import type { Ahead } from '../../../core/review/ahead.ts';
import type { DealKind } from '../../../core/warmup/deal-kinds.ts';
import { seedOfItem } from '../../../core/warmup/item.ts';
import type { OwnMove } from '../../../core/warmup/own-policy.ts';
import { type AskedAnswer, rackNow, type WarmUp } from '../../../core/warmup/warm-up.ts';
import type { GameEvent } from '../../../core/game/events.ts';
import type { Review } from '../../../core/review/review.ts';
import type { AnswerView } from '../../worker/warm-up-calls.ts';
import { answerOf, valueOf } from './answers.ts';
import type { RoomHost } from './room-parts.ts';

type Asked<Value> = Parameters<typeof answerOf<Value>>[0];

/** What a problem asks of the worker: how far it is, and what went wrong. A newer question takes an older one's place. */
export class RunWork {
  readonly #room: RoomHost;
  #part: number | null = null;
  #refusal = '';

  constructor(room: RoomHost) {
    this.#room = room;
  }

  /** The part that is done, 0 to 1; null when nothing runs. */
  get part(): number | null {
    return this.#part;
  }
  /** Why the last question could not be answered, in words. */
  get refusal(): string {
    return this.#refusal;
  }

  answer({ rack, gone, step, attempt }: AskedAnswer): Promise<AnswerView | null> {
    const give = attempt.stops ? null : attempt.give;
    const request = { card: this.#room.card, rack, gone, step, give, aims: attempt.aims };
    return this.#ask((onProgress) => this.#room.worker.askNewest('answer', request, { onProgress }));
  }

  /** What the choice costs by the end of the exchange. */
  ahead(
    { rack, gone, step }: AskedAnswer,
    { item }: WarmUp,
    { options }: AnswerView,
    chosen: Choice,
  ): Promise<Ahead | null> {
    const passes = options.map(({ give }) => give);
    const request = { card: this.#room.card, rack, gone, seat: item.seat, step, passes, chosen };
    return this.#ask((onProgress) => this.#room.worker.askNewest('ahead', request, { onProgress }));
  }

  /** What the practice table makes of the moves. */
  events({ item }: WarmUp, moves: readonly OwnMove[]): Promise<readonly GameEvent[] | null> {
    this.#room.worker.cancelNewest('ahead');
    const request = { card: this.#room.card, item, seed: seedOfItem(item), moves };
    return this.#ask(() => this.#room.worker.askNewest('goOn', request));
  }

  ledger({ item, events }: WarmUp): Promise<Review | null> {
    const request = { card: this.#room.card, seat: item.seat, events };
    return this.#ask((onProgress) => this.#room.worker.askNewest('ledger', request, { onProgress }));
  }

  /** The kind that says most about the rack; any if it can't be told. */
  async kind(warmUp: WarmUp): Promise<DealKind> {
    const request = { card: this.#room.card, rack: formatTiles(rackNow(warmUp)) };
    return valueOf(await this.#room.worker.ask('kind', request)) ?? 'any';
  }

  async #ask<Value>(ask: (onProgress: (part: number) => void) => Promise<Asked<Value>>): Promise<Value | null> {
    this.#show(0);
    const answer = answerOf(await ask((part) => this.#show(part)));
    this.#refusal = answer?.ok === false ? answer.message : '';
    this.#show(null);
    return answer?.ok === true ? answer.value : null;
  }

  #show(part: number | null): void {
    this.#part = part;
    this.#room.changed();
  }
}
