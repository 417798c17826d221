import { type CardDocument, type LineDocument, sectionName, textField } from './document.ts';
import { pointsFrom, readLine } from './line.ts';
import type { Slide } from './pattern.ts';
import { readTyped, typedForms } from './typing.ts';

/**
 * Lines of a card as rows of text, to be pasted, or kept in a text file or a table: the line as it is typed, how its
 * numbers move, C or X, points, note, how a second number moves, whether that is different. All but the first may be
 * left out. In a text the cells stand between bars or tabs, and `# Runs` begins a section.
 */
const LINE_CELLS = ['Line', 'Moves', 'C or X', 'Points', 'Note', 'Second number', 'Different'] as const;

/** A row of a text or table: a line without its id, or the name of the section that begins. */
export type LineRow = { readonly line: LineDocument } | { readonly section: string };

const MOVE_WORDS: readonly (readonly [RegExp, Slide])[] = [
  [/^(?:0|these|only|printed|as printed)/i, 0],
  [/^(?:1|any|run|consecutive|like)/i, 1],
  [/^(?:2|even|odd)/i, 2],
  [/^(?:3|three|by three)/i, 3],
];
const MOVE_NAMES: Readonly<Record<Slide, string>> = {
  0: '0 these numbers only',
  1: '1 any number',
  2: '2 evens or odds',
  3: '3 by threes',
};

/** The head of a table of lines. */
export const TABLE_HEAD = ['Section', ...LINE_CELLS] as const;

/** The rows of a text, for instance a pasted one; empty rows are left out. */
export function rowsOfText(text: string): readonly LineRow[] {
  const rows = text.split(/\r?\n/).filter((row) => row.trim() !== '');
  return rowsOfTable(rows.map((row) => row.split(/\t|\|/)));
}

/**
 * The rows of a table. With a head, which is known by its cell "Line", the cells are found by their names; without one
 * the line comes first, or behind the section where the second cell is a line and the first is none.
 */
export function rowsOfTable(table: readonly (readonly string[])[]): readonly LineRow[] {
  const head = (table[0] ?? []).map((cell) => cell.trim().toLowerCase());
  const hasHead = head.includes('line');
  let last = '';
  return table.slice(hasHead ? 1 : 0).flatMap((row): LineRow[] => {
    const heading = /^\s*#+\s*(.+)$/.exec(row.join(' '))?.[1]?.trim();
    if (heading !== undefined) return [{ section: (last = heading) }];
    const cells = hasHead ? TABLE_HEAD.map((name) => row[head.indexOf(name.toLowerCase())] ?? '') : withSection(row);
    const [section = '', ...line] = cells.map((cell) => cell.replace(/^\s*'(?=[=+\-@])/, ''));
    const isNew = section.trim() !== '' && section.trim() !== last;
    if (isNew) last = section.trim();
    return [...(isNew ? [{ section: last }] : []), { line: lineOfCells(line) }];
  });
}

/** The cells of a row without a head, the section first; empty where the row has none. */
function withSection(row: readonly string[]): readonly string[] {
  const isLine = (cell = ''): boolean => {
    const { groups } = readTyped(cell);
    return groups.length > 2 && groups.every(({ group }) => group.ok);
  };
  return !isLine(row[0]) && isLine(row[1]) ? row : ['', ...row];
}

/** Whether a text says lines at all: at least half of what stands in it can be read as groups of tiles. */
export function saysLines(rows: readonly LineRow[]): boolean {
  const groups = rows.flatMap((row) => ('line' in row ? readLine(row.line).forms.flatMap((form) => form.groups) : []));
  const read = groups.filter(({ group }) => group.ok).length;
  return read > 0 && 2 * read >= groups.length;
}

/** The line that a row of cells says. What can't be read stays in its field, so that it is told and nothing is lost. */
function lineOfCells(cells: readonly string[]): LineDocument {
  const [typed = '', moves = '', exposure = '', points = '', note = '', second = '', different = ''] = cells.map(
    (cell) => cell.trim(),
  );
  const [pattern = '', ...further] = readTyped(typed).forms;
  return {
    pattern,
    ...(further.length === 0 ? {} : { or: further }),
    slide: slideOf(moves, 0),
    concealed: exposure === '' ? false : (concealedOf(exposure) ?? exposure),
    points: points === '' ? 25 : (pointsFrom(points) ?? points),
    ...(note === '' ? {} : { note }),
    ...(second === '' ? {} : { slide2: slideOf(second, 1) }),
    ...(/^(?:y|true|different)/i.test(different) ? { distinct: true } : {}),
  };
}

function slideOf(text: string, otherwise: Slide): Slide | string {
  if (text === '') return otherwise;
  return MOVE_WORDS.find(([words]) => words.test(text))?.[1] ?? text;
}

function concealedOf(text: string): boolean | undefined {
  if (/^c/i.test(text)) return true;
  return /^[xe]/i.test(text) ? false : undefined;
}

/** The cells of a line, those at its end that say nothing left out; `lineOfCells` reads them back. */
export function cellsOfLine(line: LineDocument): readonly string[] {
  const { forms, slide, slide2, concealed, points, note, distinct } = readLine(line);
  const cells = [
    typedForms(forms.map(({ text }) => text)),
    MOVE_NAMES[slide],
    concealed ? 'C' : 'X',
    typeof line['points'] === 'string' ? line['points'] : String(points),
    note.replaceAll(/\s+/g, ' '),
    slide2 === 1 ? '' : MOVE_NAMES[slide2],
    distinct ? 'different' : '',
  ];
  return cells.slice(0, cells.findLastIndex((cell) => cell !== '') + 1);
}

const TITLES = ['Title', 'Season'] as const;

/** What a text says of its card before the lines, and the text without that. */
export function titlesOfText(text: string): { readonly title: string; readonly season: string; readonly rest: string } {
  const [title = '', season = ''] = TITLES.map((field) =>
    new RegExp(`^\\s*${field}:(.*)$`, 'im').exec(text)?.[1]?.trim(),
  );
  return { title, season, rest: text.replaceAll(/^\s*(?:title|season):.*$/gim, '') };
}

/** All lines of a card as a text of rows: its title and season, and a heading for each section. */
export function textOfLines(card: CardDocument): string {
  const rows = card.sections.flatMap((section, at) => [
    '',
    `# ${sectionName(section, at)}`,
    ...section.lines.map((line) =>
      cellsOfLine(line)
        .map((cell) => cell.replaceAll('|', '/'))
        .join(' | '),
    ),
  ]);
  const named = TITLES.map((field) => `${field}: ${textField(card, field.toLowerCase())}`);
  return `${[...named, ...rows].join('\n')}\n`;
}
