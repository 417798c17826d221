import type { DealKind } from '../../../core/warmup/deal-kinds.ts';
import type { WarmUpItem } from '../../../core/warmup/item.ts';
import type { SessionItem } from '../../../core/warmup/session.ts';
import type { FoundView } from '../../worker/warm-up-calls.ts';
import { answerOf, freshSeed } from './answers.ts';
import type { DealWishes, RoomHost } from './room-parts.ts';

/** Finds deals of a kind in the worker, and tells how far it is; a newer search takes an older one's place. */
export class DealFinder {
  readonly #room: RoomHost;
  #dealt = 0;
  #tried = 0;
  #finding = false;

  constructor(room: RoomHost) {
    this.#room = room;
  }

  /** Deals tried so far by the search that runs. */
  get tried(): number {
    return this.#tried;
  }
  get finding(): boolean {
    return this.#finding;
  }

  /** A deal as wished; where dealer and not dealer take turns, the next one's turn. */
  async asWished({ kind, tiles }: DealWishes): Promise<FoundView | null> {
    const size = tiles === 'turns' ? (this.#dealt % 2 === 0 ? 13 : 14) : tiles;
    this.#dealt += 1;
    return await this.find(kind, size);
  }

  /** A deal of a kind; null when there is none, or a newer question took its place. */
  async find(kind: DealKind, tiles: 13 | 14): Promise<FoundView | null> {
    const { worker, card } = this.#room;
    const onProgress = (tried: number): void => {
      this.#tried = tried;
      this.#room.changed();
    };
    return await this.#ask(() => worker.askNewest('find', { card, kind, tiles, seed: freshSeed() }, { onProgress }));
  }

  /** A problem of the same kind as one of a session, dealt anew. */
  async again({ kind, step }: SessionItem): Promise<WarmUpItem | null> {
    const { worker, card } = this.#room;
    return await this.#ask(() => worker.askNewest('redeal', { card, kind, step, seed: freshSeed() }));
  }

  stop(): void {
    this.#room.worker.cancelNewest('find');
    this.#room.worker.cancelNewest('redeal');
  }

  async #ask<Value>(ask: () => Promise<Parameters<typeof answerOf<Value>>[0]>): Promise<Value | null> {
    this.#finding = true;
    this.#tried = 0;
    this.#room.changed();
    const answer = answerOf(await ask());
    this.#finding = false;
    if (answer?.ok === false) this.#room.fail(answer.message);
    this.#room.changed();
    return answer?.ok === true ? answer.value : null;
  }
}
