/** A column of a table for people. */
export interface Column<Row> {
  readonly title: string;
  readonly cell: (row: Row, place: number) => string;
  readonly side?: 'left' | 'right';
}

const GAP = '  ';

/** Rows under their titles, columns as wide as they need; no blanks at line ends. */
export function table<Row>(rows: readonly Row[], columns: readonly Column<Row>[]): string {
  const cells = columns.map(({ title, cell }) => [title, ...rows.map(cell)]);
  const widths = cells.map((column) => Math.max(...column.map(signs)));
  const lines = ['', ...rows].map((_, line) =>
    columns
      .map(({ side }, place) => {
        const text = cells[place]?.[line] ?? '';
        const blanks = ' '.repeat((widths[place] ?? 0) - signs(text));
        return side === 'right' ? blanks + text : text + blanks;
      })
      .join(GAP)
      .trimEnd(),
  );
  return lines.join('\n');
}

/** How many signs a text takes on the screen. */
function signs(text: string): number {
  return Array.from(text).length;
}

/** A chance in percent, as fine as it is worth: `34%`, `3.1%`, `0.02%`, `under 0.01%`. */
export function percent(chance: number): string {
  const value = chance * 100;
  if (value === 0 || value === 100) return `${value}%`;
  if (value < 0.01) return 'under 0.01%';
  if (value > 99.9) return 'over 99.9%';
  return `${value.toFixed(value >= 10 ? 0 : value >= 1 ? 1 : 2)}%`;
}

/** A share as a bar of at most `width` signs. */
export function bar(share: number, width = 24): string {
  return '#'.repeat(Math.round(share * width));
}

/** `1 tile`, `3 tiles`. */
export function counted(count: number, one: string, more = `${one}s`): string {
  return `${count} ${count === 1 ? one : more}`;
}
