import type { LineDocument } from '../../../core/card/document.ts';
import { readLine } from '../../../core/card/line.ts';
import { SLIDES } from '../../../core/card/pattern.ts';
import { cardWords } from '../../words/card.ts';

const words = cardWords.grid;

/** The columns of quick entry, in the order in which a line is usually typed. */
export const COLUMNS = ['pattern', 'slide', 'points', 'concealed', 'slide2', 'note', 'ways'] as const;
export type Column = (typeof COLUMNS)[number];

/** Columns whose cells are written in; the others are set by one key, or only shown. */
export type TextColumn = 'pattern' | 'points' | 'note';

export function isTextColumn(column: Column): column is TextColumn {
  return column === 'pattern' || column === 'points' || column === 'note';
}

/** Where the focus is. */
export interface Cell {
  readonly row: number;
  readonly column: number;
}

/**
 * Where a key moves the focus (APG grid): arrows by a cell, stopping at the edges, Home and End
 * within the row, with Control to the corners. Null for any other key.
 */
export function goTo({ key, ctrlKey }: Pick<KeyboardEvent, 'key' | 'ctrlKey'>, cell: Cell, rows: number): Cell | null {
  const last = { row: rows - 1, column: COLUMNS.length - 1 };
  switch (key) {
    case 'ArrowLeft':
      return { ...cell, column: Math.max(0, cell.column - 1) };
    case 'ArrowRight':
      return { ...cell, column: Math.min(last.column, cell.column + 1) };
    case 'ArrowUp':
      return { ...cell, row: Math.max(0, cell.row - 1) };
    case 'ArrowDown':
      return { ...cell, row: Math.min(last.row, cell.row + 1) };
    case 'Home':
      return ctrlKey ? { row: 0, column: 0 } : { ...cell, column: 0 };
    case 'End':
      return ctrlKey ? last : { ...cell, column: last.column };
    default:
      return null;
  }
}

/** What a key sets in a cell that is not written in: a slide by its digit, exposure by c or e; Space chooses the next. */
export function setByKey(key: string, column: Column, line: LineDocument): LineDocument | null {
  const read = readLine(line);
  if (column === 'slide' || column === 'slide2') {
    if (key === ' ' || key === 'Enter') return { [column]: (read[column] + 1) % SLIDES.length };
    const slide = SLIDES.find((each) => String(each) === key);
    return slide === undefined ? null : { [column]: slide };
  }
  if (column !== 'concealed') return null;
  if (key === ' ' || key === 'Enter') return { concealed: !read.concealed };
  const letter = key.toLowerCase();
  return letter === 'c' || letter === 'e' ? { concealed: letter === 'c' } : null;
}

/** What an emptied cell holds. */
export function emptied(column: Column): LineDocument | null {
  const empty = { pattern: '', note: '', slide: undefined, slide2: undefined, points: undefined, concealed: undefined };
  return column === 'ways' ? null : { [column]: empty[column] };
}

/** What a cell shows. */
export function cellText(column: Exclude<Column, 'ways'>, line: LineDocument): string {
  const read = readLine(line);
  switch (column) {
    case 'pattern':
      return read.text;
    case 'note':
      return read.note;
    case 'points':
      return String(read.points);
    case 'concealed':
      return read.concealed ? words.yes : words.no;
    case 'slide':
    case 'slide2':
      return words.slides[read[column]];
  }
}
