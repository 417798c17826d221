import type { Sheet, SheetProblem } from '../../../core/warmup/sheet.ts';
import type { AnswerView } from '../../worker/warm-up-calls.ts';
import { answerOf } from './answers.ts';
import type { RoomHost } from './room-parts.ts';

/** The answers to the problems of sheets, on each sheet's own card; worked out once. */
export class SheetAnswers {
  readonly #room: RoomHost;
  readonly #answers = new Map<string, AnswerView>();
  #running = false;

  constructor(room: RoomHost) {
    this.#room = room;
  }

  /** Whether answers are being worked out. */
  get running(): boolean {
    return this.#running;
  }

  /** A problem's answer; null until it has been worked out. */
  to(sheet: Sheet, problem: SheetProblem): AnswerView | null {
    return this.#answers.get(keyOf(sheet, problem)) ?? null;
  }

  /** Works out the answers that are still missing, one after the other; whether all are there. */
  async all(sheet: Sheet): Promise<boolean> {
    this.#running = true;
    this.#room.changed();
    for (const problem of sheet.problems) await this.#one(sheet, problem);
    this.#running = false;
    this.#room.changed();
    return sheet.problems.every((problem) => this.to(sheet, problem) !== null);
  }

  async #one(sheet: Sheet, problem: SheetProblem): Promise<void> {
    if (this.to(sheet, problem) !== null) return;
    const { rack, gone, step } = problem;
    const card = JSON.stringify(sheet.card);
    const answer = answerOf(await this.#room.worker.ask('answer', { card, rack, gone, step, give: null, aims: [] }));
    if (answer?.ok === true) this.#answers.set(keyOf(sheet, problem), answer.value);
    else if (answer !== null) this.#room.fail(answer.message);
    this.#room.changed();
  }
}

function keyOf({ id }: Sheet, { rack, gone, step }: SheetProblem): string {
  return `${id} ${rack} / ${gone} ${step}`;
}
