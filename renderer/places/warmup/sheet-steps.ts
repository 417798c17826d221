import type { Sheet } from '../../../core/warmup/sheet.ts';

/** Steps that can be undone. */
const MOST_STEPS = 100;

/** The changes of the open sheet, to be undone and done again. */
export class SheetSteps {
  #before: readonly Sheet[] = [];
  #after: readonly Sheet[] = [];

  get canUndo(): boolean {
    return this.#before.length > 0;
  }
  get canRedo(): boolean {
    return this.#after.length > 0;
  }

  /** Forgets all, for another sheet. */
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
