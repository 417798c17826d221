import { failure, type Result, success } from '../../core/base/result.ts';
import { readSheetFile } from '../../core/warmup/sheet-file.ts';
import type { Sheet } from '../../core/warmup/sheet.ts';
import { makeFolders, removeDurably, writeDurably } from '../files/durable.ts';
import { orTrouble } from '../files/trouble.ts';
import { type DeskContext, filesIn, keepCopy, readText, setAside } from './context.ts';
import type { SheetEntry } from './desk.ts';
import { SHEET_ID } from './checks.ts';
import { SHEET_ENDING, sheetPath } from './places.ts';

/** The sheets, one file each. Calls may reject with a file error. */
export class PracticeShelf {
  readonly #context: DeskContext;

  constructor(context: DeskContext) {
    this.#context = context;
  }

  /** The newest first. A damaged sheet is set aside; one of a newer Windrow is only reported. */
  async list(): Promise<SheetEntry[]> {
    const names = await filesIn(this.#context, this.#context.places.sheets);
    const entries: SheetEntry[] = [];
    for (const name of names) {
      const id = name.endsWith(SHEET_ENDING) ? name.slice(0, -SHEET_ENDING.length) : '';
      const entry = SHEET_ID.test(id) ? await this.#entry(id) : undefined;
      if (entry !== undefined) entries.push(entry);
    }
    return entries.sort((one, other) => (one.madeAt < other.madeAt ? 1 : -1));
  }

  async #entry(id: string): Promise<SheetEntry | undefined> {
    const path = sheetPath(this.#context.places, id);
    const read = await orTrouble('read', `the sheet ${id}`, async () => success(await readText(this.#context, path)));
    if (!read.ok) this.#context.notify(read.problem.message);
    const text = read.ok ? read.value : undefined;
    if (text === undefined) return undefined;
    const sheet = readSheetFile(text);
    if (sheet.ok) return entryOf(id, sheet.value);
    if (sheet.problem.code === 'newer-version') {
      this.#context.notify(`The sheet ${id}: ${sheet.problem.message}`);
      return undefined;
    }
    const name = await setAside(this.#context, path);
    this.#context.notify(`The sheet ${id} is damaged and could not be read. Its file is kept as ${name}.`);
    return undefined;
  }

  async open(id: string): Promise<Result<string>> {
    const text = await readText(this.#context, sheetPath(this.#context.places, id));
    if (text === undefined) return failure('not-found', 'This sheet is no longer there: choose another one.');
    const sheet = readSheetFile(text);
    return sheet.ok ? success(text) : sheet;
  }

  async keep(text: string): Promise<Result<SheetEntry>> {
    const sheet = readSheetFile(text);
    if (!sheet.ok) return sheet;
    const { places } = this.#context;
    const path = sheetPath(places, sheet.value.id);
    const before = await readText(this.#context, path);
    const there = before === undefined ? undefined : readSheetFile(before);
    if (there?.ok === false) {
      if (there.problem.code === 'newer-version') return there;
      await keepCopy(this.#context, path);
    }
    await makeFolders(this.#context.files, places.sheets);
    await writeDurably(this.#context, path, text);
    return success(entryOf(sheet.value.id, sheet.value));
  }

  async remove(id: string): Promise<void> {
    await removeDurably(this.#context, sheetPath(this.#context.places, id));
  }
}

function entryOf(id: string, { title, madeAt, problems }: Sheet): SheetEntry {
  return { id, title, madeAt, problems: problems.length };
}
