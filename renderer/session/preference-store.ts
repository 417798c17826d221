import type { Problem } from '../../core/base/result.ts';
import { DEFAULT_POINT_RULES } from '../../core/game/point-rules.ts';
import type { Desk, Preferences } from '../../main/desk/desk.ts';

/** What holds until the person chooses otherwise. */
export const USUAL_PREFERENCES: Preferences = {
  theme: 'system',
  textSize: 18,
  tiles: 'normal',
  rackTiers: 1,
  seat: 'East',
  cardId: 'demo',
  payment: DEFAULT_POINT_RULES,
  cautionsSeen: [],
  tourOffered: false,
};

/** The preferences in memory; a change holds at once and is kept through the desk. */
export class PreferenceStore {
  readonly #desk: Pick<Desk, 'changePreferences'>;
  readonly #listeners = new Set<() => void>();
  #values: Preferences;
  #problem: Problem | null = null;

  constructor(desk: Pick<Desk, 'changePreferences'>, values: Preferences) {
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
    this.#tell();
  }

  async change(change: Partial<Preferences>): Promise<void> {
    this.#values = { ...this.#values, ...change };
    this.#tell();
    const answer = await this.#desk.changePreferences(change);
    this.#problem = answer.ok ? null : answer.problem;
    if (this.#problem !== null) this.#tell();
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}
