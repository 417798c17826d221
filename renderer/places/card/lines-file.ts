import Papa from 'papaparse';
import { type CardDocument, emptyCard, sectionName } from '../../../core/card/document.ts';
import { addLine, addSection, freshId } from '../../../core/card/edit.ts';
import { cellsOfLine, LINE_CELLS, lineOfCells, type LineRow, rowsOfText } from '../../../core/card/lines-text.ts';

/* Lines of a card in a text file or a table (CSV): in, as a card of its own, and out. */

const HEAD = ['Section', ...LINE_CELLS] as const;

/** All lines of a card as a table. */
export function tableOfLines({ sections }: CardDocument): string {
  const rows = sections.flatMap((section, at) =>
    section.lines.map((line) => [sectionName(section, at), ...cellsOfLine(line)]),
  );
  return `${Papa.unparse([[...HEAD], ...rows], { newline: '\r\n', escapeFormulae: true })}\r\n`;
}

/** Whether a file holds lines as text or as a table, by its name. */
export function holdsLines(name: string): boolean {
  return /\.(?:txt|text|csv|tsv)$/i.test(name);
}

/** The card that a file of lines makes, named by the file. */
export function cardOfLines(name: string, text: string): CardDocument {
  const stem = name.replace(/\.[^.]+$/, '').replaceAll(/[-_]+/g, ' ');
  const rows = /\.[ct]sv$/i.test(name) ? rowsOfTable(text) : rowsOfText(text);
  let card = emptyCard(stem, '');
  let section = -1;
  for (const row of rows) {
    if ('section' in row || section < 0) {
      const wanted = 'section' in row ? row.section : '';
      section = card.sections.findIndex((each, at) => sectionName(each, at) === wanted);
      if (section < 0) {
        section = card.sections.length;
        card = addSection(card, wanted);
      }
    }
    if ('line' in row) {
      const line = card.sections[section]?.lines.length ?? 0;
      card = addLine(card, { section, line }, { id: freshId(card, section), ...row.line });
    }
  }
  return card;
}

/** Rows of a table: with a head the cells are found by their names, without one the first cell is the line. */
function rowsOfTable(text: string): readonly LineRow[] {
  const { data } = Papa.parse<string[]>(text, { skipEmptyLines: 'greedy' });
  const [first = [], ...rest] = data;
  const places = HEAD.map((name) => first.findIndex((cell) => cell.trim().toLowerCase() === name.toLowerCase()));
  const [section = -1, ...cells] = places;
  if (cells[0] === -1) return data.map((row) => ({ line: lineOfCells(row) }));
  let last = '';
  return rest.flatMap((row): LineRow[] => {
    const line: LineRow = { line: lineOfCells(cells.map((at) => (at < 0 ? '' : (row[at] ?? '')))) };
    const own = (row[section] ?? '').trim();
    const isNew = own !== '' && own !== last;
    if (isNew) last = own;
    return isNew ? [{ section: own }, line] : [line];
  });
}
