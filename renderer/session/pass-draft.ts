import { agreed, PASS_SIZE, type PassSize } from '../../core/exchange/steps.ts';
import { legalEvents } from '../../core/game/legal.ts';
import type { GameSession } from './game-session.ts';
import { Store } from './store.ts';

/** What is said of a pass before it is given. */
interface Said {
  /** How many tiles go on blind. */
  readonly blind: number;
  /** Courtesy: how many tiles the player asks for; null until said. */
  readonly asked: PassSize | null;
  /** Courtesy: how many the player across asks for; null until said. */
  readonly offered: PassSize | null;
}

const NOTHING: Said = { blind: 0, asked: null, offered: null };

/** What the player says of the pass that is due beside its tiles: forgotten with each pass. */
export class PassDraft extends Store {
  readonly #session: Pick<GameSession, 'id' | 'state' | 'subscribe'>;
  #said = NOTHING;
  #due = '';
  #afterwards = '';

  constructor(session: Pick<GameSession, 'id' | 'state' | 'subscribe'>) {
    super();
    this.#session = session;
    session.subscribe(() => this.#follow());
    this.#follow();
  }

  /** How many tiles of the pass go on blind; 0 where none may. */
  get blind(): number {
    return Math.min(this.#said.blind, legalEvents(this.#session.state).give?.blindUpTo ?? 0);
  }
  get asked(): PassSize | null {
    return this.#said.asked;
  }
  get offered(): PassSize | null {
    return this.#said.offered;
  }

  /** How many tiles of the rack the pass takes; null while a courtesy is not agreed on, or no pass is due. */
  get wanted(): PassSize | null {
    const due = legalEvents(this.#session.state).give;
    if (due === null) return null;
    const { asked, offered } = this.#said;
    if (due.step === 'courtesy')
      return asked === null || offered === null ? null : (agreed(asked, offered) as PassSize);
    return (PASS_SIZE - this.blind) as PassSize;
  }

  /** What is said of the last pass once it is given, where the player chooses before she sees advice. */
  get afterwards(): string {
    return this.#afterwards;
  }

  /** Says it until the next pass. */
  sayAfterwards(words: string): void {
    this.#afterwards = words;
    this.notify();
  }

  say(said: Partial<Said>): void {
    this.#said = { ...this.#said, ...said };
    this.notify();
  }

  #follow(): void {
    const step = legalEvents(this.#session.state).give?.step ?? null;
    const due = step === null ? '' : `${this.#session.id} ${step}`;
    if (due === this.#due) return;
    this.#due = due;
    this.#said = NOTHING;
    this.notify();
  }
}
