import Papa from 'papaparse';
import { failure, type Result, success } from '../../../core/base/result.ts';
import { type CardDocument, emptyCard, sectionName } from '../../../core/card/document.ts';
import {
  cellsOfLine,
  rowsOfTable,
  rowsOfText,
  saysLines,
  TABLE_HEAD,
  titlesOfText,
} from '../../../core/card/lines-text.ts';
import { cardWords } from '../../words/card.ts';
import { addRows } from './line-moves.ts';

/* Lines of a card in a text file or a table (CSV): in, as a card of its own, and out. */

/** All lines of a card as a table, with as many cells in each row as in its head (RFC 4180, 2.4). */
export function tableOfLines({ sections }: CardDocument): string {
  const rows = sections.flatMap((section, at) =>
    section.lines.map((line) => {
      const cells = [sectionName(section, at), ...cellsOfLine(line)];
      return TABLE_HEAD.map((_, column) => cells[column] ?? '');
    }),
  );
  return `${Papa.unparse([[...TABLE_HEAD], ...rows], { newline: '\r\n', escapeFormulae: true })}\r\n`;
}

/** Whether a file holds lines as text or as a table, by its name. */
export function holdsLines(name: string): boolean {
  return /\.(?:txt|text|csv|tsv)$/i.test(name);
}

/** The card that a file of lines makes, named by what it says or else by the file; refused where it says no lines. */
export function cardOfLines(name: string, text: string): Result<CardDocument> {
  const { title, season, rest } = titlesOfText(text);
  const isTable = /\.[ct]sv$/i.test(name);
  const rows = isTable ? rowsOfTable(Papa.parse<string[]>(text, { skipEmptyLines: 'greedy' }).data) : rowsOfText(rest);
  if (!saysLines(rows)) return failure('no-lines', cardWords.arrived.noLines);
  const stem = name.replace(/(?:\.lines)?\.[^.]+$/i, '').replaceAll(/[-_]+/g, ' ');
  const [first] = rows;
  const headed = first !== undefined && 'section' in first ? rows : [{ section: '' }, ...rows];
  // A table may be sorted anew: its sections are those of one name. A text goes from heading to heading.
  return success(addRows(emptyCard(title || stem, season), { section: 0, line: 0 }, headed, isTable).document);
}
