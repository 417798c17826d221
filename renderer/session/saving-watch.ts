import type { Problem } from '../../core/base/result.ts';
import type { Desk } from '../../main/desk/desk.ts';
import { Store } from './store.ts';

/** How often the desk is asked whether it can save, in ms, while it can't. */
const OFTEN = 3000;

/** Whether the desk can save anything at all: on a full disk it opens for reading, until there is room. */
export class SavingWatch extends Store {
  readonly #desk: Pick<Desk, 'whyOnlyReading'>;
  readonly #often: number;
  #trouble: string | null;

  /** `trouble`: what the desk said at the start. */
  constructor(desk: Pick<Desk, 'whyOnlyReading'>, trouble: string | null, often = OFTEN) {
    super();
    this.#desk = desk;
    this.#often = often;
    this.#trouble = trouble;
    this.#waitIfDue();
  }

  /** Why nothing can be saved, in words; null when all can be. */
  get trouble(): string | null {
    return this.#trouble;
  }

  /** A problem of saving, unless it stands at the top of the window already; then saving goes on by itself. */
  unsaid(problem: Problem | null): Problem | null {
    return problem?.message === this.#trouble ? null : problem;
  }

  /** Calls once saving is possible after it was not; what waits can be saved then. */
  whenItSaves(call: () => void): void {
    this.subscribe(() => {
      if (this.#trouble === null) call();
    });
  }

  #waitIfDue(): void {
    if (this.#trouble !== null) setTimeout(() => void this.#ask(), this.#often);
  }

  async #ask(): Promise<void> {
    const now = await this.#desk.whyOnlyReading();
    if (now.ok && now.value !== this.#trouble) {
      this.#trouble = now.value;
      this.notify();
    }
    this.#waitIfDue();
  }
}
