import { expectValue } from '../../../core/base/result.ts';
import type { GameMoment } from '../../../core/engine/chance-questions.ts';
import type { AdviceDocument, AdvisedDocument } from '../../../core/engine/documents.ts';
import type { OthersDocument } from '../../../core/engine/others-document.ts';
import type { OthersRequest } from '../../../core/engine/play-questions.ts';
import type { ThrowRequest } from '../../../core/engine/practice-questions.ts';
import type { GameState } from '../../../core/game/game-state.ts';
import { DEFAULT_POINT_RULES } from '../../../core/game/point-rules.ts';
import { stateOf } from '../../../core/game/state.ts';
import { type Kind, codeOf } from '../../../core/tiles/kinds.ts';
import type { ThrowProblem } from '../../../core/warmup/throw-problem.ts';
import type { Answer, Ask } from '../../session/ask.ts';
import { question } from '../../session/ask.ts';
import { adviceBy, allOpen } from '../../session/play-advice.ts';
import type { PracticeRoom } from './practice-room.ts';
import { freshSeed, inTheRoom, saidAt, today } from './room-parts.ts';

/** A moment of play to practise on. */
export interface ThrowMoment extends ThrowProblem {
  readonly state: GameState;
}

/** A problem of play at hand: which tile to throw, and, once one is thrown, what each costs and what the others can hold. */
export class ThrowRun {
  readonly #room: PracticeRoom;
  readonly #find: Ask<ThrowRequest, never, ThrowProblem>;
  readonly #advise: Ask<GameMoment, never, AdviceDocument>;
  readonly #read: Ask<OthersRequest, never, OthersDocument>;
  #moment: ThrowMoment | null = null;
  #thrown: Kind | null = null;
  #isNoted = false;

  constructor(room: PracticeRoom) {
    this.#room = room;
    this.#find = inTheRoom(room, question(room.worker, 'throwing'));
    this.#advise = inTheRoom(room, adviceBy(room.worker, room.pool, allOpen));
    this.#read = inTheRoom(room, question(room.worker, 'others'));
    this.#advise.subscribe(() => this.#note());
  }

  /** Null before the first problem. */
  get moment(): ThrowMoment | null {
    return this.#moment;
  }
  /** Null while the player thinks. */
  get thrown(): Kind | null {
    return this.#thrown;
  }
  get finding(): Answer<unknown> {
    return this.#find.answer;
  }
  /** What each choice costs; it is worked out while the player thinks, and shown after. */
  get advice(): Answer<AdviceDocument> {
    return this.#advise.answer;
  }
  get others(): Answer<OthersDocument> {
    return this.#read.answer;
  }
  /** What the thrown tile is in the list; null until its cost is known. */
  get judged(): AdvisedDocument | null {
    const { status, value } = this.advice;
    if (status !== 'done' || this.#thrown === null) return null;
    return value?.choices.find(({ action, tiles }) => action === 'discard' && tiles[0] === this.#thrown) ?? null;
  }

  /** Finds a moment and begins to weigh it. */
  async next(): Promise<void> {
    const { card, table } = this.#room;
    this.#advise.clear();
    this.#read.clear();
    this.#moment = null;
    this.#thrown = null;
    this.#isNoted = false;
    const problem = await this.#find.ask({ card, table, seed: freshSeed() });
    if (problem === null) return;
    const found = { ...problem, state: expectValue(stateOf(problem.events)) };
    this.#moment = found;
    this.#room.changed();
    const said = await saidAt(this.#room, card, table, new AbortController().signal);
    // Another one may have been asked for meanwhile.
    if (this.#moment !== found) return;
    const moment: GameMoment = { card, at: { events: problem.events }, said };
    void this.#read.ask({ ...moment, rules: DEFAULT_POINT_RULES });
    void this.#advise.ask(moment);
  }

  throw(kind: Kind): void {
    if (this.#moment === null || this.#thrown !== null) return;
    this.#thrown = kind;
    this.#room.changed();
    this.#note();
  }

  /** Asks once more what failed. */
  again(): void {
    for (const ask of [this.#find, this.#advise, this.#read]) void ask.again();
  }

  /** Keeps the answer, once its cost is known. */
  #note(): void {
    const judged = this.judged;
    if (this.#isNoted || this.#moment === null || this.#thrown === null || judged === null || judged.verdict === null)
      return;
    this.#isNoted = true;
    const { card, table } = this.#room;
    this.#room.note({
      type: 'throw',
      id: crypto.randomUUID(),
      day: today(),
      seed: this.#moment.seed,
      card: card.mark,
      table,
      tile: codeOf(this.#thrown),
      cost: judged.cost,
      verdict: judged.verdict,
    });
  }
}
