import { type Result, success } from '../../../core/base/result.ts';
import type { WarmUpItem } from '../../../core/warmup/item.ts';
import { MOST_PROBLEMS, problemOf, type Sheet, type SheetProblem } from '../../../core/warmup/sheet.ts';
import { readSheetFile, writeSheetFile } from '../../../core/warmup/sheet-file.ts';
import type { SheetEntry } from '../../../main/desk/desk.ts';
import { SaveQueue, type SaveStatus } from '../../session/save-queue.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { SheetAnswer } from '../../print/answer-for.ts';
import { newSheet } from './new-sheet.ts';
import type { RoomHost } from './room-parts.ts';
import { SheetAnswers } from './sheet-answers.ts';
import { SheetSteps } from './sheet-steps.ts';

/** The sheets: the list, the one that is open, and the answers to its problems. Changes are kept at once. */
export class SheetBook {
  readonly #app: Pick<AppContext, 'desk' | 'about'>;
  readonly #room: RoomHost;
  readonly #tell: () => void;
  readonly #queue: SaveQueue;
  readonly #answers: SheetAnswers;
  readonly #steps = new SheetSteps();
  #entries: readonly SheetEntry[] = [];
  #sheet: Sheet | null = null;
  #removed: Sheet | null = null;

  constructor(app: Pick<AppContext, 'desk' | 'about'>, room: RoomHost, tell: () => void) {
    this.#app = app;
    this.#room = room;
    this.#tell = tell;
    this.#queue = new SaveQueue(tell);
    this.#answers = new SheetAnswers(room, (id) => {
      if (id === this.#sheet?.id) this.#keep();
    });
  }

  get entries(): readonly SheetEntry[] {
    return this.#entries;
  }
  /** The sheet that is open; null when none is. */
  get sheet(): Sheet | null {
    return this.#sheet;
  }
  get canUndo(): boolean {
    return this.#steps.canUndo;
  }
  get canRedo(): boolean {
    return this.#steps.canRedo;
  }
  get saved(): SaveStatus {
    return this.#queue.status;
  }
  /** The sheet that was removed last, as long as it can be brought back. */
  get removed(): Sheet | null {
    return this.#removed;
  }
  /** The part of the answers that is worked out, 0 to 1; null when none is being worked out. */
  get answering(): number | null {
    return this.#answers.part;
  }
  /** The text of the open sheet's file, with all that is known of its problems; empty when none is open. */
  get fileText(): string {
    return this.#sheet === null ? '' : writeSheetFile(this.#answers.keeping(this.#sheet));
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
    this.#answers.stop();
    this.#sheet = null;
    this.#steps.clear();
    await this.list();
  }

  /** A new sheet on the card in use. */
  create(title: string): void {
    this.#show(newSheet(title, this.#room.card, this.#app.about.appVersion));
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
    this.#steps.changed(this.#sheet);
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
    this.#back(this.#sheet === null ? null : this.#steps.undo(this.#sheet));
  }

  redo(): void {
    this.#back(this.#sheet === null ? null : this.#steps.redo(this.#sheet));
  }

  #back(sheet: Sheet | null): void {
    if (sheet === null) return;
    this.#sheet = sheet;
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
  answerTo(problem: SheetProblem): SheetAnswer | null {
    return this.#sheet === null ? null : this.#answers.to(this.#sheet, problem);
  }

  /** Works out the answers that are still missing; whether all are there. */
  async answerAll(): Promise<boolean> {
    return this.#sheet !== null && (await this.#answers.all(this.#sheet));
  }

  /** Whether all is known that a problem tells. */
  isWhole(problem: SheetProblem): boolean {
    return this.#sheet !== null && this.#answers.isWhole(this.#sheet, problem);
  }

  stopAnswering(): void {
    this.#answers.stop();
  }

  #show(sheet: Sheet): void {
    this.#sheet = sheet;
    this.#answers.take(sheet);
    this.#steps.clear();
    this.#tell();
  }

  #keep(): void {
    const { sheet } = this;
    if (sheet === null) return;
    const text = this.fileText;
    this.#queue.add({ name: sheet.id, run: () => this.#app.desk.practice({ do: 'keep', text }) });
    this.#tell();
  }
}
