import { type LineDocument, sectionName, type CardDocument } from './document.ts';
import { pointsFrom, readLine } from './line.ts';
import type { Slide } from './pattern.ts';
import { readTyped, typedForms } from './typing.ts';

/**
 * Lines of a card as rows of text, to be pasted, or kept in a text file or a table: the line as it is typed, how its
 * numbers move, C or X, points, note, how a second number moves, whether that is different. All but the first may be
 * left out. In a text the cells stand between bars or tabs, and `# Runs` begins a section.
 */
export const LINE_CELLS = ['Line', 'Moves', 'C or X', 'Points', 'Note', 'Second number', 'Different'] as const;

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

/** The rows of a text, for instance a pasted one; empty rows are left out. */
export function rowsOfText(text: string): readonly LineRow[] {
  return text
    .split(/\r?\n/)
    .map((row) => row.trim())
    .filter((row) => row !== '')
    .map((row) => {
      const section = /^#+\s*(.+)$/.exec(row)?.[1];
      return section === undefined ? { line: lineOfCells(row.split(/\t|\|/)) } : { section: section.trim() };
    });
}

/** The line that a row of cells says. What can't be read stays in its field, so that it is told and nothing is lost. */
export function lineOfCells(cells: readonly string[]): LineDocument {
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
    String(points),
    note.replaceAll(/\s+/g, ' '),
    slide2 === 1 ? '' : MOVE_NAMES[slide2],
    distinct ? 'different' : '',
  ];
  return cells.slice(0, cells.findLastIndex((cell) => cell !== '') + 1);
}

/** All lines of a card as a text of rows, a heading for each section. */
export function textOfLines({ sections }: CardDocument): string {
  const rows = sections.flatMap((section, at) => [
    ...(at === 0 ? [] : ['']),
    `# ${sectionName(section, at)}`,
    ...section.lines.map((line) =>
      cellsOfLine(line)
        .map((cell) => cell.replaceAll('|', '/'))
        .join(' | '),
    ),
  ]);
  return `${rows.join('\n')}\n`;
}
