import type { Problem } from '../../core/base/result.ts';
import type { Desk, Preferences } from '../../main/desk/desk.ts';
import { Store } from './store.ts';

/** Of a value that can never be kept: it is not sent again. */
const REFUSED = 'wrong-arguments';

/** The preferences in memory; a change holds at once and is kept through the desk. */
export class PreferenceStore extends Store {
  readonly #desk: Pick<Desk, 'changePreferences'>;
  #values: Preferences;
  #problem: Problem | null = null;
  /** What was chosen and could not be kept yet. */
  #unkept: Partial<Preferences> = {};

  constructor(desk: Pick<Desk, 'changePreferences'>, values: Preferences) {
    super();
    this.#desk = desk;
    this.#values = values;
  }

  get values(): Preferences {
    return this.#values;
  }

  /** Why the last change could not be kept; null when all is well. */
  get problem(): Problem | null {
    return this.#problem;
  }

  /** Takes what the desk keeps already, for instance from a file that was brought in. */
  adopt(values: Preferences): void {
    this.#values = values;
    this.#unkept = {};
    this.#problem = null;
    this.notify();
  }

  async change(change: Partial<Preferences>): Promise<void> {
    this.#values = { ...this.#values, ...change };
    this.notify();
    await this.#keep({ ...this.#unkept, ...change });
  }

  /** Tries again to keep what could not be kept. */
  async retrySaving(): Promise<void> {
    if (Object.keys(this.#unkept).length > 0) await this.#keep(this.#unkept);
  }

  async #keep(change: Partial<Preferences>): Promise<void> {
    const answer = await this.#desk.changePreferences(change);
    const before = this.#problem;
    this.#problem = answer.ok ? null : answer.problem;
    const others = Object.entries(this.#unkept).filter(([name]) => !Object.hasOwn(change, name));
    this.#unkept = { ...Object.fromEntries(others), ...(answer.ok || answer.problem.code === REFUSED ? {} : change) };
    if (this.#problem !== before) this.notify();
  }
}
