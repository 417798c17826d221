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
import type { Preferences, SheetEntry } from '../../../main/desk/desk.ts';
import { SaveQueue, type SaveStatus } from '../../session/save-queue.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { sheetWords } from '../../words/sheets.ts';
import type { SheetAnswer } from '../../print/judged.ts';
import { usualPaper } from '../../print/paper.ts';
import type { RoomHost } from './room-parts.ts';
import { SheetAnswers } from './sheet-answers.ts';

/** Steps that can be undone. */
const MOST_STEPS = 100;

/** The sheets: the list, the one that is open, and the answers to its problems. Changes are kept at once. */
export class SheetBook {
  readonly #app: Pick<AppContext, 'desk' | 'about' | 'preferences'>;
  readonly #room: RoomHost;
  readonly #notify: () => void;
  readonly #queue: SaveQueue;
  readonly #answers: SheetAnswers;
  readonly #steps = new SheetSteps();
  #entries: readonly SheetEntry[] = [];
  #sheet: Sheet | null = null;
  #removed: Sheet | null = null;

  constructor(app: Pick<AppContext, 'desk' | 'about' | 'preferences'>, room: RoomHost, notify: () => void) {
    this.#app = app;
    this.#room = room;
    this.#notify = notify;
    this.#queue = new SaveQueue(notify);
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
  /** What of a sheet is printed: what was chosen the last time. */
  get parts(): Preferences['sheetParts'] {
    return this.#app.preferences.values.sheetParts;
  }
  chooseParts(sheetParts: Preferences['sheetParts']): void {
    void this.#app.preferences.change({ sheetParts });
    this.#notify();
  }
  get saved(): SaveStatus {
    return this.#queue.status;
  }

  retrySaving(): void {
    this.#queue.retry();
  }
  /** The sheet removed last, as long as it can be restored. */
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

  /** Lists what is kept, once all that is being saved is there too. */
  async list(): Promise<void> {
    await this.#queue.settled();
    const sheets = await this.#app.desk.listSheets();
    if (sheets.ok) this.#entries = sheets.value;
    else this.#room.fail(sheets.problem.message);
    this.#notify();
  }

  async open(id: string): Promise<void> {
    const text = await this.#app.desk.openSheet(id);
    const read = text.ok ? readSheetFile(text.value) : text;
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
    const { about, preferences } = this.#app;
    const paper = usualPaper(preferences.values.paper);
    this.#show(newSheet({ title, paper, card: this.#room.card.document, appVersion: about.appVersion }));
    this.#keep();
  }

  /** Opens a sheet from a file, under a new id if another sheet has its id already. */
  async bring(text: string): Promise<Result<Sheet>> {
    const read = readSheetFile(text);
    if (!read.ok) return read;
    const isTaken = await this.#isTaken(read.value.id);
    const sheet = isTaken ? { ...read.value, id: `sheet-${crypto.randomUUID().slice(0, 12)}` } : read.value;
    this.#show(sheet);
    this.#keep();
    return success(sheet);
  }

  /** Whether an id is another sheet's: one on disk, readable or not, one that waits to be saved, or one that can come back. */
  async #isTaken(id: string): Promise<boolean> {
    await this.#queue.settled();
    if (this.#queue.waitsFor(id) || this.#removed?.id === id) return true;
    const there = await this.#app.desk.openSheet(id);
    return there.ok || there.problem.code !== 'not-found';
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
    if (this.#sheet === null) this.create(sheetWords.untitled);
    if (this.#sheet === null) return;
    const room = MOST_PROBLEMS - this.#sheet.problems.length;
    if (items.length > room) this.#room.fail(sheetWords.full);
    this.change({ ...this.#sheet, problems: [...this.#sheet.problems, ...items.slice(0, room).map(problemOf)] });
  }

  undo(): void {
    this.#replace(this.#sheet === null ? null : this.#steps.undo(this.#sheet));
  }

  redo(): void {
    this.#replace(this.#sheet === null ? null : this.#steps.redo(this.#sheet));
  }

  #replace(sheet: Sheet | null): void {
    if (sheet === null) return;
    this.#sheet = sheet;
    this.#keep();
  }

  async remove(id: string): Promise<void> {
    const text = await this.#app.desk.openSheet(id);
    const read = text.ok ? readSheetFile(text.value) : text;
    const left = await this.#app.desk.removeSheet(id);
    if (!left.ok) return this.#room.fail(left.problem.message);
    this.#queue.letGo(id);
    this.#removed = read.ok ? read.value : null;
    this.#entries = left.value;
    this.#notify();
  }

  async bringBack(): Promise<void> {
    if (this.#removed === null) return;
    const kept = await this.#app.desk.keepSheet(writeSheetFile(this.#removed));
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

  /** Whether all that is shown of a problem has been worked out. */
  isWhole(problem: SheetProblem): boolean {
    return this.#sheet !== null && this.#answers.isWhole(this.#sheet, problem);
  }

  stopAnswering(): void {
    this.#answers.stop();
  }

  #show(sheet: Sheet): void {
    this.#sheet = sheet;
    this.#answers.addKept(sheet);
    this.#steps.clear();
    this.#notify();
  }

  #keep(): void {
    const { sheet } = this;
    if (sheet === null) return;
    const text = this.fileText;
    this.#queue.add({ of: sheet.id, name: sheet.id, run: () => this.#app.desk.keepSheet(text) });
    this.#notify();
  }
}

/** The changes of the open sheet, for undo and redo. */
class SheetSteps {
  #before: readonly Sheet[] = [];
  #after: readonly Sheet[] = [];

  get canUndo(): boolean {
    return this.#before.length > 0;
  }
  get canRedo(): boolean {
    return this.#after.length > 0;
  }

  /** Forgets all changes, for another sheet. */
  clear(): void {
    this.#before = [];
    this.#after = [];
  }

  /** Remembers how a sheet was before a change. */
  changed(before: Sheet): void {
    this.#before = [...this.#before, before].slice(-MOST_STEPS);
    this.#after = [];
  }

  /** The sheet before the last change; null when there was none. */
  undo(now: Sheet): Sheet | null {
    const last = this.#before.at(-1);
    if (last === undefined) return null;
    this.#before = this.#before.slice(0, -1);
    this.#after = [now, ...this.#after];
    return last;
  }

  /** The sheet as it was before the last undo; null when there was none. */
  redo(now: Sheet): Sheet | null {
    const [next, ...rest] = this.#after;
    if (next === undefined) return null;
    this.#after = rest;
    this.#before = [...this.#before, now];
    return next;
  }
}

/** An empty sheet, begun now. */
export function newSheet(given: Pick<Sheet, 'title' | 'paper' | 'card' | 'appVersion'>): Sheet {
  const madeAt = new Date().toISOString();
  return {
    kind: SHEET_KIND,
    schemaVersion: SHEET_VERSION,
    ...given,
    id: `${madeAt.slice(0, 19).replaceAll(/[-:]/g, '').replace('T', '-')}-${crypto.randomUUID().slice(0, 6)}`,
    madeAt,
    zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    problems: [],
  };
}
