import { COLUMNS, emptied, goTo, isTextColumn, setByKey } from './grid-cells.ts';
import type { GridPen } from './grid-pen.ts';

/** A key in a cell that is written in: Escape gives up, Enter and Tab end it and go on. Whether it meant anything. */
export function keyWhileWriting(event: KeyboardEvent, pen: GridPen): boolean {
  const { row, column } = pen.cell;
  if (event.key === 'Escape') {
    pen.giveUp();
    return true;
  }
  if (event.key !== 'Enter' && event.key !== 'Tab') return false;
  const next = Math.max(0, Math.min(COLUMNS.length - 1, column + (event.shiftKey ? -1 : 1)));
  pen.finish();
  pen.go(event.key === 'Enter' ? { row: row + 1, column: 0 } : { row, column: next });
  return true;
}

/** A key outside of writing: it goes about, empties, sets or begins to write. `fixed`: nothing may be changed. */
export function keyGoingAbout(event: KeyboardEvent, pen: GridPen, fixed: boolean): boolean {
  const next = event.altKey || event.metaKey ? null : goTo(event, pen.cell, pen.rows);
  if (next !== null) {
    pen.go(next);
    return true;
  }
  if (event.ctrlKey || event.metaKey || event.altKey || event.key === 'Tab' || fixed) return false;
  if (event.key === 'Delete') {
    if (pen.line !== undefined) pen.set(emptied(pen.column));
    return true;
  }
  return isTextColumn(pen.column) ? beginsBy(event.key, pen) : sets(event.key, pen);
}

/** Enter or F2 goes on with what stands in the cell, a character begins anew. */
function beginsBy(key: string, pen: GridPen): boolean {
  if (key === 'Enter' || key === 'F2') {
    pen.beginHere();
    return true;
  }
  if (key.length !== 1) return false;
  pen.begin('');
  pen.write(key);
  return true;
}

function sets(key: string, pen: GridPen): boolean {
  const set = setByKey(key, pen.column, pen.line ?? {});
  if (set === null) return false;
  pen.set(set);
  return true;
}
