import { lastEnteredAt } from '../../core/game/record.ts';
import type { Preferences } from '../../main/desk/desk.ts';
import type { GameSession } from './game-session.ts';
import type { PreferenceStore } from './preference-store.ts';

/** Where a person says when what can be done is weighed. */
export type Weighing = Pick<PreferenceStore, 'subscribe'> & { readonly values: Pick<Preferences, 'weighs'> };

/** Whether what can be done at a moment is to be weighed: as soon as it is due or, where a person wants that, once she asks. */
export class Demand {
  readonly #session: Pick<GameSession, 'id' | 'events'>;
  readonly #preferences: Weighing | undefined;
  /** The moment that was asked about last. */
  #askedAt = '';

  /** Without preferences everything is to be weighed at once. */
  constructor(session: Pick<GameSession, 'id' | 'events'>, preferences: Weighing | undefined) {
    this.#session = session;
    this.#preferences = preferences;
  }

  get isThere(): boolean {
    return this.#preferences?.values.weighs !== 'when-asked' || this.#askedAt === momentKey(this.#session);
  }

  /** Asks for the moment at which the game is. */
  ask(): void {
    this.#askedAt = momentKey(this.#session);
  }
}

/** Distinct for each moment of each game, whatever is learned of the card meanwhile. */
export function momentKey({ id, events }: Pick<GameSession, 'id' | 'events'>): string {
  return `${id} ${events.length} ${lastEnteredAt(events)}`;
}
