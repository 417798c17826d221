import type { Result } from '../../../core/base/result.ts';
import { markedCard } from '../../../core/card/mark.ts';
import { FIRST_REACH_MODEL } from '../../../core/reading/reach-model.ts';
import type { Ahead } from '../../../core/review/ahead.ts';
import type { Moment } from '../../../core/engine/moment.ts';
import type { PassChoice } from '../../../core/future/rivals.ts';
import { USUAL_KIND } from '../../../core/table/kinds.ts';
import type { Sheet, SheetProblem } from '../../../core/warmup/sheet.ts';
import {
  endsKey,
  keepingEnds,
  keptEnds,
  choicesWithoutCost,
  type ProblemEnds,
  withBest,
  withChoice,
} from '../../../core/warmup/sheet-ends.ts';
import type { SheetAnswer } from '../../print/judged.ts';
import type { AnswerDocument } from '../../../core/engine/practice-questions.ts';
import { aheadOfChoice, momentOfProblem, type RoomHost, saidAt, worded } from './room-parts.ts';

/**
 * The answers to the problems of a sheet, on the sheet's own card: first what is exact, then what
 * each choice costs by the end of the exchange. Each is worked out once, in the background; after
 * a stop, what is done stays.
 */
export class SheetAnswers {
  readonly #room: RoomHost;
  readonly #found: (sheetId: string) => void;
  readonly #answers = new Map<string, AnswerDocument>();
  readonly #ends = new Map<string, ProblemEnds>();
  #stop = new AbortController();
  #part: number | null = null;

  /** `found` is called when something new is to be kept with a sheet. */
  constructor(room: RoomHost, found: (sheetId: string) => void) {
    this.#room = room;
    this.#found = found;
  }

  /** The part of the answers that is done, 0 to 1; null when none is being worked out. */
  get part(): number | null {
    return this.#part;
  }

  /** A problem's answer; null until it has been worked out. */
  to(sheet: Sheet, problem: SheetProblem): SheetAnswer | null {
    const key = this.#keyOf(sheet, problem);
    const answer = this.#answers.get(key);
    return answer === undefined ? null : { answer, ends: this.#ends.get(key) ?? null };
  }

  /** Adds what is kept with a sheet. */
  addKept(sheet: Sheet): void {
    for (const problem of sheet.problems) {
      const key = this.#keyOf(sheet, problem);
      const kept = keptEnds(problem, key);
      if (kept !== null && !this.#ends.has(key)) this.#ends.set(key, kept);
    }
  }

  /** The sheet with what is known of its problems, for its file. */
  keeping(sheet: Sheet): Sheet {
    const problems = sheet.problems.map((problem) =>
      keepingEnds(problem, this.#ends.get(this.#keyOf(sheet, problem)) ?? null),
    );
    return { ...sheet, problems };
  }

  /** Works out what is still missing, in place of what was being worked out; whether all is there. */
  async all(sheet: Sheet): Promise<boolean> {
    this.#stop.abort();
    const stop = new AbortController();
    this.#stop = stop;
    for (const [place, problem] of sheet.problems.entries()) {
      const report = (part: number): void => {
        if (stop.signal.aborted) return;
        this.#part = (place + part) / sheet.problems.length;
        this.#room.changed();
      };
      report(0);
      await this.#one(sheet, problem, stop.signal, report);
      if (stop.signal.aborted) return false;
    }
    this.#part = null;
    this.#room.changed();
    return sheet.problems.every((problem) => this.isWhole(sheet, problem));
  }

  stop(): void {
    this.#stop.abort();
    this.#part = null;
    this.#room.changed();
  }

  /** Whether all that is shown of a problem has been worked out. */
  isWhole(sheet: Sheet, problem: SheetProblem): boolean {
    const ends = this.to(sheet, problem)?.ends ?? null;
    return ends !== null && choicesWithoutCost(ends, problem).length === 0;
  }

  async #one(sheet: Sheet, problem: SheetProblem, signal: AbortSignal, report: (part: number) => void): Promise<void> {
    const key = this.#keyOf(sheet, problem);
    const answer = this.#answers.get(key) ?? (await this.#answer(sheet, problem, signal));
    if (answer === null) return;
    this.#answers.set(key, answer);
    report(0);
    const best = answer.options[0]?.kinds;
    if (best === undefined || this.isWhole(sheet, problem)) return;
    const look = async (choice: PassChoice): Promise<Ahead | null> =>
      await this.#ahead(sheet, problem, answer, choice, signal);
    if (!this.#ends.has(key)) {
      const ahead = await look({ type: 'give', tiles: best });
      if (ahead === null) return;
      this.#keep(sheet, key, withBest(key, ahead));
    }
    const due = choicesWithoutCost(this.#ends.get(key) as ProblemEnds, problem);
    for (const [place, choice] of due.entries()) {
      report((place + 1) / (due.length + 1));
      const ahead = await look(choice === null ? { type: 'stop' } : { type: 'give', tiles: choice.toKinds() });
      if (ahead === null) return;
      this.#keep(sheet, key, withChoice(this.#ends.get(key) as ProblemEnds, ahead));
    }
  }

  #keep(sheet: Sheet, key: string, ends: ProblemEnds): void {
    this.#ends.set(key, ends);
    this.#found(sheet.id);
  }

  async #answer(sheet: Sheet, problem: SheetProblem, signal: AbortSignal): Promise<AnswerDocument | null> {
    const request = await this.#moment(sheet, problem, signal);
    return this.#valueOf(await this.#room.worker.ask('answer', request, { signal }));
  }

  async #ahead(
    sheet: Sheet,
    problem: SheetProblem,
    { options }: AnswerDocument,
    chosen: PassChoice,
    signal: AbortSignal,
  ): Promise<Ahead | null> {
    const passes = options.map(({ kinds }) => kinds);
    const moment = await this.#moment(sheet, problem, signal);
    const request = { moment, passes, chosen };
    return this.#valueOf(await aheadOfChoice(this.#room.pool, request, { signal }));
  }

  /**
   * The moment as the Warm-up has it, at the usual table and with what comes in there; never with a journal's passes: what
   * is kept with a sheet is the same for everybody who opens it.
   */
  async #moment(sheet: Sheet, problem: SheetProblem, signal: AbortSignal): Promise<Moment> {
    const card = markedCard(sheet.card);
    const said = await saidAt(this.#room, card, USUAL_KIND, signal);
    const rates = said.fit?.table.incoming ?? null;
    return { ...momentOfProblem(card, problem, problem.seat), said: { ...said, rates } };
  }

  #valueOf<Value>(result: Result<Value>): Value | null {
    const answer = worded(result);
    if (!answer.ok && answer.problem.code !== 'cancelled') this.#room.fail(answer.problem.message);
    return answer.ok ? answer.value : null;
  }

  #keyOf(sheet: Sheet, problem: SheetProblem): string {
    return endsKey(markedCard(sheet.card).mark, problem, FIRST_REACH_MODEL);
  }
}
