import type { LineDocument } from '../../../core/card/document.ts';
import { type LineReading, readLine } from '../../../core/card/line.ts';
import { SLIDES } from '../../../core/card/pattern.ts';
import { numberMove } from '../../../core/card/ready.ts';
import { typedForms } from '../../../core/card/typing.ts';
import { cardWords } from '../../words/card.ts';

const words = cardWords.rows;

/** The cells of a line that are filled in, in the order in which a line is typed. */
export const COLUMNS = ['pattern', 'slide', 'concealed', 'points'] as const;
export type Column = (typeof COLUMNS)[number];

/** Where the focus is; `line` as many as the section has lines is the row for a new one. */
export interface Cell {
  readonly section: number;
  readonly line: number;
  readonly column: number;
}

/** The rows of a card, from top to bottom: each section's lines, and one for a new line where the card can be changed. */
export interface Rows {
  readonly sections: readonly { readonly lines: readonly unknown[] }[];
  /** Whether there are rows for new lines. */
  readonly grows: boolean;
}

function rowsIn({ sections, grows }: Rows, section: number): number {
  return (sections[section]?.lines.length ?? 0) + (grows ? 1 : 0);
}

/** The row above or below, in the next section if need be; null beyond the ends of the card. */
export function rowBeside(
  rows: Rows,
  { section, line }: Pick<Cell, 'section' | 'line'>,
  by: 1 | -1,
): Pick<Cell, 'section' | 'line'> | null {
  const next = line + by;
  if (next >= 0 && next < rowsIn(rows, section)) return { section, line: next };
  for (let other = section + by; other >= 0 && other < rows.sections.length; other += by) {
    const count = rowsIn(rows, other);
    if (count > 0) return { section: other, line: by === 1 ? 0 : count - 1 };
  }
  return null;
}

/** How many cells a row has: the row for a new line has only the one that is typed in. */
function cellsIn({ sections }: Rows, { section, line }: Pick<Cell, 'section' | 'line'>): number {
  return line < (sections[section]?.lines.length ?? 0) ? COLUMNS.length : 1;
}

/** The next cell, or the one before; null beyond the last and the first one of the card. */
export function cellBeside(rows: Rows, cell: Cell, by: 1 | -1): Cell | null {
  const column = cell.column + by;
  if (column >= 0 && column < cellsIn(rows, cell)) return { ...cell, column };
  const row = rowBeside(rows, cell, by);
  return row === null ? null : { ...row, column: by === 1 ? 0 : cellsIn(rows, row) - 1 };
}

/** A cell that is there: rows may have gone. */
export function within(rows: Rows, { section, line, column }: Cell): Cell {
  const at = Math.max(0, Math.min(section, rows.sections.length - 1));
  const row = { section: at, line: Math.max(0, Math.min(line, rowsIn(rows, at) - 1)) };
  return { ...row, column: Math.max(0, Math.min(column, cellsIn(rows, row) - 1)) };
}

/** What a key sets in a cell: how the numbers move by a digit, C or X by its letter. Any other key sets nothing. */
export function setByKey(key: string, column: Column): LineDocument | null {
  if (column === 'slide') {
    const slide = SLIDES.find((each) => String(each) === key);
    return slide === undefined ? null : { slide };
  }
  const letter = key.toLowerCase();
  return column === 'concealed' && (letter === 'c' || letter === 'x') ? { concealed: letter === 'c' } : null;
}

/** How the numbers of a line move, as a cell shows it. */
function moveText(reading: LineReading): string {
  const move = numberMove(reading);
  return move === null ? words.nothingMoves : words.moves[move];
}

/** What a cell shows. */
export function cellText(column: Column, line: LineDocument): string {
  const reading = readLine(line);
  switch (column) {
    case 'pattern':
      return typedForms(reading.forms.map(({ text }) => text));
    case 'slide':
      return moveText(reading);
    case 'concealed':
      return reading.concealed ? words.concealed : words.exposed;
    case 'points':
      return typeof line['points'] === 'string' ? line['points'] : String(reading.points);
  }
}
