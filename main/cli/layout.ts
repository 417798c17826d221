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

/** A chance in whole per cents, which is as fine as it is worth; `under 1%` and `over 99%` where it is not certain. */
export function wholePercent(chance: number): string {
  if (chance > 0 && chance < 0.01) return 'under 1%';
  if (chance > 0.99 && chance < 1) return 'over 99%';
  return `${Math.round(100 * chance)}%`;
}

/** A chance as a number of games at the start of a sentence: `About 34 games in 100`, `Under 1 game in 100`; 0 and 1 are exact. */
export function gamesInHundred(chance: number): string {
  if (chance <= 0 || chance >= 1) return `${chance <= 0 ? 0 : 100} games in 100`;
  if (chance < 0.005) return 'Under 1 game in 100';
  if (chance > 0.995) return 'Over 99 games in 100';
  return `About ${counted(Math.round(100 * chance), 'game')} in 100`;
}

/** What a chance is smaller than another, in whole games of a hundred: `3`, `under 1`, `0`. */
export function gamesGivenUp(cost: number): string {
  return cost > 0 && cost < 0.005 ? 'under 1' : String(Math.round(100 * cost));
}

/** A share as a bar of at most `width` signs. */
export function bar(share: number, width = 24): string {
  return '#'.repeat(Math.round(share * width));
}

/** `1 tile`, `3 tiles`. */
export function counted(count: number, one: string, more = `${one}s`): string {
  return `${count} ${count === 1 ? one : more}`;
}
