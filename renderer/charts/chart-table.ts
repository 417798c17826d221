/** The rows of a table: a list, or something that makes those of a page when they are asked for. */
interface Rows {
  readonly length: number;
  slice(from: number, to: number): readonly (readonly string[])[];
}

/** The table beside a chart: what the chart draws, in words and numbers. */
export interface ChartTable {
  /** Heads of the columns; the first names the rows. */
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** One that may have many rows. */
export interface LongTable extends Pick<ChartTable, 'head'> {
  readonly rows: Rows;
  /** The words of the buttons that turn its pages, if it has words of its own. */
  readonly turns?: { readonly before: string; readonly after: string };
}
