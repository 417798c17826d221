import { type Result, success } from '../../../core/base/result.ts';
import type { WarmUpItem } from '../../../core/warmup/item.ts';
import {
  MOST_PROBLEMS,
  problemOf,
  type Sheet,
  SHEET_KIND,
  SHEET_VERSION,
  type SheetProblem,
} from '../../../core/warmup/sheet.ts';
import { readSheetFile, writeSheetFile } from '../../../core/warmup/sheet-file.ts';
import type { SheetEntry } from '../../../main/desk/desk.ts';
import { SaveQueue, type SaveStatus } from '../../session/save-queue.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { AnswerView } from '../../worker/warm-up-calls.ts';
import { answerOf } from './answers.ts';
import type { RoomHost } from './room-parts.ts';

/** Steps that can be undone. */
const MOST_STEPS = 100;

/** The sheets: the list, the one that is open, and the answers to its problems. Changes are kept at once. */
export class SheetBook {
  readonly #app: Pick<AppContext, 'desk' | 'about'>;
  readonly #room: RoomHost;
  readonly #tell: () => void;
  readonly #queue: SaveQueue;
  readonly #answers = new Map<string, AnswerView>();
  #entries: readonly SheetEntry[] = [];
  #sheet: Sheet | null = null;
  #before: readonly Sheet[] = [];
  #after: readonly Sheet[] = [];
  #removed: Sheet | null = null;
  #answering = false;

  constructor(app: Pick<AppContext, 'desk' | 'about'>, room: RoomHost, tell: () => void) {
    this.#app = app;
    this.#room = room;
    this.#tell = tell;
    this.#queue = new SaveQueue(tell);
  }

  get entries(): readonly SheetEntry[] {
    return this.#entries;
  }
  /** The sheet that is open; null when none is. */
  get sheet(): Sheet | null {
    return this.#sheet;
  }
  get canUndo(): boolean {
    return this.#before.length > 0;
  }
  get canRedo(): boolean {
    return this.#after.length > 0;
  }
  get saved(): SaveStatus {
    return this.#queue.status;
  }
  /** The sheet that was removed last, as long as it can be brought back. */
  get removed(): Sheet | null {
    return this.#removed;
  }
  get answering(): boolean {
    return this.#answering;
  }

  async list(): Promise<void> {
    const told = await this.#app.desk.practice({ do: 'list' });
    if (told.ok) this.#entries = told.value.sheets;
    else this.#room.fail(told.problem.message);
    this.#tell();
  }

  async open(id: string): Promise<void> {
    const told = await this.#app.desk.practice({ do: 'open', id });
    const read = told.ok ? readSheetFile(told.value.text) : told;
    if (read.ok) this.#show(read.value);
    else this.#room.fail(read.problem.message);
  }

  /** Closes the sheet that is open; it is kept already. */
  async close(): Promise<void> {
    this.#sheet = null;
    this.#before = [];
    this.#after = [];
    await this.list();
  }

  /** A new sheet on the card in use. */
  create(title: string): void {
    const madeAt = new Date().toISOString();
    const card: unknown = JSON.parse(this.#room.card);
    this.#show({
      kind: SHEET_KIND,
      schemaVersion: SHEET_VERSION,
      appVersion: this.#app.about.appVersion,
      id: `${madeAt.slice(0, 19).replaceAll(/[-:]/g, '').replace('T', '-')}-${crypto.randomUUID().slice(0, 6)}`,
      title,
      madeAt,
      zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
      paper: navigator.language.endsWith('US') || navigator.language.endsWith('CA') ? 'letter' : 'a4',
      card,
      problems: [],
    });
    this.#keep();
  }

  /** Takes in a sheet from a file, with an id of its own where that id is taken by another sheet. */
  bring(text: string): Result<Sheet> {
    const read = readSheetFile(text);
    if (!read.ok) return read;
    const taken = this.#entries.some(({ id }) => id === read.value.id);
    const sheet = taken ? { ...read.value, id: `sheet-${crypto.randomUUID().slice(0, 12)}` } : read.value;
    this.#show(sheet);
    this.#keep();
    return success(sheet);
  }

  change(sheet: Sheet): void {
    if (this.#sheet === null) return;
    this.#before = [...this.#before, this.#sheet].slice(-MOST_STEPS);
    this.#after = [];
    this.#sheet = sheet;
    this.#keep();
  }

  changeProblem(place: number, problem: SheetProblem): void {
    if (this.#sheet === null) return;
    this.change({ ...this.#sheet, problems: this.#sheet.problems.with(place, problem) });
  }

  /** Adds problems at the end, as many as there is room for; opens a sheet if none is open. */
  add(items: readonly WarmUpItem[]): void {
    if (this.#sheet === null) this.create(warmUpWords.sheets.untitled);
    if (this.#sheet === null) return;
    const room = MOST_PROBLEMS - this.#sheet.problems.length;
    if (items.length > room) this.#room.fail(warmUpWords.sheets.full);
    this.change({ ...this.#sheet, problems: [...this.#sheet.problems, ...items.slice(0, room).map(problemOf)] });
  }

  undo(): void {
    const last = this.#before.at(-1);
    if (last === undefined || this.#sheet === null) return;
    this.#after = [this.#sheet, ...this.#after];
    this.#before = this.#before.slice(0, -1);
    this.#sheet = last;
    this.#keep();
  }

  redo(): void {
    const [next, ...rest] = this.#after;
    if (next === undefined || this.#sheet === null) return;
    this.#before = [...this.#before, this.#sheet];
    this.#after = rest;
    this.#sheet = next;
    this.#keep();
  }

  async remove(id: string): Promise<void> {
    const told = await this.#app.desk.practice({ do: 'open', id });
    const read = told.ok ? readSheetFile(told.value.text) : told;
    const gone = await this.#app.desk.practice({ do: 'remove', id });
    if (!gone.ok) return this.#room.fail(gone.problem.message);
    this.#removed = read.ok ? read.value : null;
    this.#entries = gone.value.sheets;
    this.#tell();
  }

  async bringBack(): Promise<void> {
    if (this.#removed === null) return;
    const kept = await this.#app.desk.practice({ do: 'keep', text: writeSheetFile(this.#removed) });
    if (!kept.ok) return this.#room.fail(kept.problem.message);
    this.#removed = null;
    await this.list();
  }

  /** A problem's answer, once it has been computed. */
  answerTo(problem: SheetProblem): AnswerView | null {
    return this.#answers.get(this.#keyOf(problem)) ?? null;
  }

  /** Computes the answers that are still missing, one after the other. */
  async answerAll(): Promise<boolean> {
    const { sheet } = this;
    if (sheet === null) return false;
    this.#answering = true;
    this.#tell();
    for (const problem of sheet.problems) await this.#answer(sheet, problem);
    this.#answering = false;
    this.#tell();
    return sheet.problems.every((problem) => this.answerTo(problem) !== null);
  }

  async #answer(sheet: Sheet, { rack, gone, step, ...rest }: SheetProblem): Promise<void> {
    const problem = { rack, gone, step, ...rest };
    if (this.answerTo(problem) !== null) return;
    const card = JSON.stringify(sheet.card);
    const asked = await this.#room.worker.ask('answer', { card, rack, gone, step, give: null, aims: [] });
    const answer = answerOf(asked);
    if (answer?.ok === true) this.#answers.set(this.#keyOf(problem), answer.value);
    else if (answer !== null) this.#room.fail(answer.message);
    this.#tell();
  }

  #keyOf({ rack, gone, step }: SheetProblem): string {
    return `${this.#sheet?.id ?? ''} ${rack} / ${gone} ${step}`;
  }

  #show(sheet: Sheet): void {
    this.#sheet = sheet;
    this.#before = [];
    this.#after = [];
    this.#tell();
  }

  #keep(): void {
    const { sheet } = this;
    if (sheet === null) return;
    const text = writeSheetFile(sheet);
    this.#queue.add({ name: sheet.id, run: () => this.#app.desk.practice({ do: 'keep', text }) });
    this.#tell();
  }
}
