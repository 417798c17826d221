import { markedCard } from '../../core/card/mark.ts';
import type { DeadRequest } from '../../core/engine/reading-questions.ts';
import type { Seat } from '../../core/exchange/steps.ts';
import type { Exposure } from '../../core/game/game-state.ts';
import type { Engine } from '../worker/engine.ts';
import { Ask, question } from './ask.ts';
import type { GameSession } from './game-session.ts';

type Session = Pick<GameSession, 'id' | 'card' | 'state'>;

/** Whose hands are dead by the groups that lie open, asked anew whenever one more does. */
export class DeadHands {
  readonly ask: Ask<DeadRequest, never, readonly Seat[]>;
  readonly #session: Session;
  readonly #worker: Engine;

  constructor(session: Session, worker: Engine) {
    this.#session = session;
    this.#worker = worker;
    this.ask = new Ask(question(worker, 'dead'), { keeps: true });
  }

  get seats(): readonly Seat[] {
    return this.ask.answer.value ?? [];
  }

  refresh(): void {
    const { id, card, state } = this.#session;
    const marked = markedCard(card);
    const groups = state.exposures.map(({ seat, kind, size }) => `${seat} ${kind} ${size}`);
    if (groups.length === 0) this.ask.clear();
    else void this.ask.ask({ card: marked, exposures: state.exposures }, `${id} ${marked.mark} ${groups.join()}`);
  }

  /** Whether laying a group open makes that seat's hand dead; not, where that can't be found out. */
  async isDeadly(group: Exposure): Promise<boolean> {
    const { card, state } = this.#session;
    const answer = await this.#worker.ask('deadly', { card: markedCard(card), exposures: state.exposures, group });
    return answer.ok && answer.value;
  }
}
