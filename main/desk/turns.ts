import { failure, type Result } from '../../core/base/result.ts';
import { quietly } from '../files/files.ts';
import { orTrouble } from '../files/trouble.ts';
import type { Lock } from './lock.ts';

/** One call at a time, in the order in which they came, and none that saves once the folder may be another's. */
export class Turns {
  readonly #lock: Lock;
  #before: Promise<unknown> = Promise.resolve();
  #lost = false;
  #closed = false;

  constructor(lock: Lock) {
    this.#lock = lock;
  }

  async read<Value>(what: string, call: () => Promise<Result<Value>>): Promise<Result<Value>> {
    return await this.#turn('read', what, call);
  }

  async save<Value>(what: string, call: () => Promise<Result<Value>>): Promise<Result<Value>> {
    return await this.#turn('save', what, async () => {
      await this.#look();
      return this.#lost ? lostFolder() : await call();
    });
  }

  async beat(): Promise<void> {
    await this.#next(async () => await quietly(this.#beat()));
  }

  async #beat(): Promise<void> {
    this.#lost ||= !(await this.#lock.beat());
  }

  async last(call: () => Promise<void>): Promise<void> {
    await this.#next(async () => {
      if (this.#closed) return;
      this.#closed = true;
      try {
        // A folder that is not there has nothing folded into it either.
        await quietly(this.#look());
        if (!this.#lost) await call();
      } finally {
        await this.#lock.release();
      }
    });
  }

  /** Once another copy may have written here, what this one knows is no longer true. Rejects while the folder is gone. */
  async #look(): Promise<void> {
    this.#lost ||= !(await this.#lock.look());
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

function lostFolder(): Result<never> {
  return failure(
    'in-use',
    'Another copy of Windrow may have used this folder meanwhile. Close this one, then start Windrow again.',
  );
}
