import { FIRST_REACH_MODEL } from '../../../core/reading/reach-model.ts';
import type { Ahead } from '../../../core/review/ahead.ts';
import type { Choice } from '../../../core/table/future-seats.ts';
import type { Kind } from '../../../core/tiles/kinds.ts';
import type { Sheet, SheetProblem } from '../../../core/warmup/sheet.ts';
import {
  endsKey,
  keepingEnds,
  keptEnds,
  passesDue,
  type ProblemEnds,
  sheetCardMark,
  withBest,
  withChoice,
} from '../../../core/warmup/sheet-ends.ts';
import type { SheetAnswer } from '../../print/answer-for.ts';
import type { AnswerView } from '../../worker/warm-up-calls.ts';
import { answerOf } from './answers.ts';
import type { RoomHost } from './room-parts.ts';

/**
 * The answers to the problems of a sheet, on the sheet's own card: first what is exact, then what
 * each choice costs by the end of the exchange. Worked out once, in the background, and left off
 * when asked to; what is done stays.
 */
export class SheetAnswers {
  readonly #room: RoomHost;
  readonly #found: (sheetId: string) => void;
  readonly #answers = new Map<string, AnswerView>();
  readonly #ends = new Map<string, ProblemEnds>();
  #card: { readonly of: unknown; readonly mark: string; readonly text: string } | null = null;
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

  /** Takes in what is kept with a sheet. */
  take(sheet: Sheet): void {
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
      const told = (part: number): void => {
        if (stop.signal.aborted) return;
        this.#part = (place + part) / sheet.problems.length;
        this.#room.changed();
      };
      told(0);
      await this.#one(sheet, problem, stop.signal, told);
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

  /** Whether all is known that a problem tells. */
  isWhole(sheet: Sheet, problem: SheetProblem): boolean {
    const ends = this.to(sheet, problem)?.ends ?? null;
    return ends !== null && passesDue(ends, problem).length === 0;
  }

  async #one(sheet: Sheet, problem: SheetProblem, signal: AbortSignal, told: (part: number) => void): Promise<void> {
    const key = this.#keyOf(sheet, problem);
    const answer = this.#answers.get(key) ?? (await this.#answer(sheet, problem, signal));
    if (answer === null) return;
    this.#answers.set(key, answer);
    told(0);
    const best = answer.options[0]?.give;
    if (best === undefined || this.isWhole(sheet, problem)) return;
    const look = async (tiles: readonly Kind[]): Promise<Ahead | null> =>
      await this.#ahead(sheet, problem, answer, { type: 'give', tiles }, signal);
    if (!this.#ends.has(key)) {
      const ahead = await look(best);
      if (ahead === null) return;
      this.#keep(sheet, key, withBest(key, ahead));
    }
    const due = passesDue(this.#ends.get(key) as ProblemEnds, problem);
    for (const [place, pass] of due.entries()) {
      told((place + 1) / (due.length + 1));
      const ahead = await look(pass.toKinds());
      if (ahead === null) return;
      this.#keep(sheet, key, withChoice(this.#ends.get(key) as ProblemEnds, ahead));
    }
  }

  #keep(sheet: Sheet, key: string, ends: ProblemEnds): void {
    this.#ends.set(key, ends);
    this.#found(sheet.id);
  }

  async #answer(sheet: Sheet, { rack, gone, step }: SheetProblem, signal: AbortSignal): Promise<AnswerView | null> {
    const request = { card: this.#cardOf(sheet).text, rack, gone, step, give: null, aims: [] };
    return this.#valueOf(await this.#room.worker.ask('answer', request, { signal }));
  }

  async #ahead(
    sheet: Sheet,
    { rack, gone, step, seat }: SheetProblem,
    { options }: AnswerView,
    chosen: Choice,
    signal: AbortSignal,
  ): Promise<Ahead | null> {
    const passes = options.map(({ give }) => give);
    const request = { card: this.#cardOf(sheet).text, rack, gone, seat, step, passes, chosen };
    return this.#valueOf(await this.#room.worker.ask('ahead', request, { signal }));
  }

  #valueOf<Value>(outcome: Parameters<typeof answerOf<Value>>[0]): Value | null {
    const answer = answerOf(outcome);
    if (answer?.ok === false) this.#room.fail(answer.message);
    return answer?.ok === true ? answer.value : null;
  }

  #keyOf(sheet: Sheet, problem: SheetProblem): string {
    return endsKey(this.#cardOf(sheet).mark, problem, FIRST_REACH_MODEL);
  }

  #cardOf(sheet: Sheet): { readonly mark: string; readonly text: string } {
    if (this.#card !== null && this.#card.of === sheet.card) return this.#card;
    this.#card = { of: sheet.card, mark: sheetCardMark(sheet), text: JSON.stringify(sheet.card) };
    return this.#card;
  }
}
