import type { Problem, Result } from '../../core/base/result.ts';
import { quietly } from '../files/files.ts';
import { cannotWrite } from '../files/trouble.ts';
import type { Lock } from './lock.ts';

/**
 * Whether this copy of the program may write in its folder: it has the lock, or had it and another copy came, or could
 * only read at the start and takes up writing as soon as that is possible.
 */
export class Hold {
  readonly #folder: string;
  readonly #takeUp: () => Promise<Result<Lock>>;
  #lock: Lock | null;
  #reading: Problem | null;
  #lost = false;

  /** `start` is the lock, or why there is none; `takeUp` opens the folder for writing, or rejects with a file error. */
  constructor(folder: string, start: Lock | Problem, takeUp: () => Promise<Result<Lock>>) {
    this.#folder = folder;
    this.#takeUp = takeUp;
    this.#lock = 'look' in start ? start : null;
    this.#reading = 'look' in start ? null : start;
  }

  /** Why the desk only reads; null once it has written. */
  get reading(): Problem | null {
    return this.#reading;
  }

  /**
   * Why nothing may be saved now; null when it may. Once another copy may have written here, what this one knows is no
   * longer true. Rejects while the folder is gone.
   */
  async refusal(): Promise<Problem | null> {
    await this.#tryToWrite();
    if (this.#lock === null) return this.#reading;
    this.#lost ||= !(await this.#lock.look());
    return this.#lost ? LOST : null;
  }

  /** Says that this copy still runs, or tries whether it may write now. */
  async beat(): Promise<void> {
    if (this.#lock === null) await this.#tryToWrite();
    else this.#lost ||= !(await this.#lock.beat());
  }

  /** Makes the last writes, if any may be made, and lets the folder go. */
  async end(lastWrites: () => Promise<void>): Promise<void> {
    const lock = this.#lock;
    if (lock === null) return;
    try {
      // A folder that is not there has nothing folded into it either.
      await quietly(this.refusal());
      if (!this.#lost) await lastWrites();
    } finally {
      await lock.release();
    }
  }

  async #tryToWrite(): Promise<void> {
    if (this.#lock !== null) return;
    try {
      const taken = await this.#takeUp();
      this.#lock = taken.ok ? taken.value : null;
      this.#reading = taken.ok ? null : taken.problem;
    } catch (error) {
      const problem = cannotWrite(error, this.#folder);
      if (problem === null) throw error;
      this.#reading = problem;
    }
  }
}

const LOST: Problem = {
  code: 'in-use',
  message: 'Another copy of Windrow may have used this folder meanwhile. Close this one, then start Windrow again.',
};
