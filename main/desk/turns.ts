import { failure, type Result, success } from '../../core/base/result.ts';
import { quietly } from '../files/files.ts';
import { orTrouble } from '../files/trouble.ts';
import type { Hold } from './hold.ts';

/** One call at a time, in the order in which they came, and none that saves while the folder may not be written. */
export class Turns {
  readonly #hold: Hold;
  #before: Promise<unknown> = Promise.resolve();
  /** Long saves that go on; the end waits for them. */
  readonly #long = new Set<Promise<unknown>>();
  #closed = false;

  constructor(hold: Hold) {
    this.#hold = hold;
  }

  async read<Value>(what: string, call: () => Promise<Result<Value>>): Promise<Result<Value>> {
    return await this.#turn('read', what, call);
  }

  async save<Value>(what: string, call: () => Promise<Result<Value>>): Promise<Result<Value>> {
    return await this.#turn('save', what, async () => {
      const problem = await this.#hold.refusal();
      return problem === null ? await call() : { ok: false, problem };
    });
  }

  /** A long save, a piece at a time: other calls have their turns between two pieces. */
  async saveInPieces<Value>(what: string, pieces: AsyncIterator<undefined, Result<Value>>): Promise<Result<Value>> {
    const all = this.#pieces(what, pieces);
    this.#long.add(all);
    return await all.finally(() => this.#long.delete(all));
  }

  async #pieces<Value>(what: string, pieces: AsyncIterator<undefined, Result<Value>>): Promise<Result<Value>> {
    for (;;) {
      const piece = await this.save(what, async () => success(await pieces.next()));
      if (!piece.ok) return piece;
      if (piece.value.done === true) return piece.value.value;
    }
  }

  async beat(): Promise<void> {
    await this.#next(async () => await quietly(this.#hold.beat()));
  }

  async last(call: () => Promise<void>): Promise<void> {
    if (this.#long.size > 0) await Promise.allSettled(this.#long);
    await this.#next(async () => {
      if (this.#closed) return;
      this.#closed = true;
      await this.#hold.end(call);
    });
  }

  async #turn<Value>(doing: 'read' | 'save', what: string, call: () => Promise<Result<Value>>): Promise<Result<Value>> {
    return await this.#next(async () => {
      if (this.#closed) return failure('closed', 'Windrow has been closed: open it again.');
      return await orTrouble(doing, what, call);
    });
  }

  async #next<Value>(call: () => Promise<Value>): Promise<Value> {
    const mine = this.#before.then(call);
    this.#before = mine.catch(() => undefined);
    return await mine;
  }
}
