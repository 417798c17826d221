import Papa from 'papaparse';
import { TABLE_HEADER, tableRows } from '../../../core/journal/table-rows.ts';
import type { SeasonGame } from '../../../core/journal/season.ts';

/** How a spreadsheet knows a formula, in texts of several lines too, which the library's own rule passes over. */
const FORMULA = /^[=+\-@\t\r\n＝＋－＠]/;

/**
 * The journal as CSV by RFC 4180, with the byte order mark that spreadsheets look for. A text that
 * a spreadsheet would read as a formula gets a quote before it; numbers stay numbers.
 */
export function journalCsv(games: readonly SeasonGame[]): string {
  const data = tableRows(games).map((row) => [...row]);
  const text = Papa.unparse({ fields: [...TABLE_HEADER], data }, { escapeFormulae: FORMULA, newline: '\r\n' });
  return `\u{FEFF}${text}\r\n`;
}
