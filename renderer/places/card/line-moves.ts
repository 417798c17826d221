import {
  type CardDocument,
  LINE_DEFAULTS,
  type LinePlace,
  sectionName,
  textField,
} from '../../../core/card/document.ts';
import { addLine, addSection, duplicateLine, lineAt, freshId, moveLine, removeLine } from '../../../core/card/edit.ts';
import { type LineRow, rowsOfText } from '../../../core/card/lines-text.ts';
import type { Selection } from './card-editor.ts';

/** A changed card, and what is selected in it then. */
export interface Step {
  readonly document: CardDocument;
  readonly selection: Selection;
}

/** An empty line at a place, with an id of its own. */
export function newLine(card: CardDocument, { section, line }: LinePlace): Step {
  const fields = { id: freshId(card, section), pattern: '', slide: 0, concealed: false, points: LINE_DEFAULTS.points };
  return { document: addLine(card, { section, line }, fields), selection: { section, line } };
}

export function copyLine(card: CardDocument, { section, line }: LinePlace): Step {
  return { document: duplicateLine(card, { section, line }), selection: { section, line: line + 1 } };
}

/** Removes a line and selects the one after it, or else the one before it. */
export function dropLine(card: CardDocument, { section, line }: LinePlace): Step {
  const document = removeLine(card, { section, line });
  const left = document.sections[section]?.lines.length ?? 0;
  return { document, selection: { section, line: left === 0 ? null : Math.min(line, left - 1) } };
}

/** The place one step above or below a line, in the next section if need be; null at the ends of the card. */
export function placeBeside({ sections }: CardDocument, { section, line }: LinePlace, by: 1 | -1): LinePlace | null {
  const lines = sections[section]?.lines.length ?? 0;
  const next = line + by;
  if (next >= 0 && next < lines) return { section, line: next };
  const other = sections[section + by];
  if (other === undefined) return null;
  return { section: section + by, line: by === 1 ? 0 : other.lines.length };
}

/** Moves a line one place up or down; at the card's ends nothing changes. */
export function shiftLine(card: CardDocument, place: LinePlace, by: 1 | -1): Step {
  const to = placeBeside(card, place, by);
  if (to === null) return { document: card, selection: place };
  return { document: moveLine(card, place, to), selection: to };
}

/** Moves a line to the end of another section. */
export function sendLine(card: CardDocument, place: LinePlace, section: number): Step {
  if (section === place.section) return { document: card, selection: place };
  const to = { section, line: card.sections[section]?.lines.length ?? 0 };
  return { document: moveLine(card, place, to), selection: to };
}

/**
 * Puts pasted rows below a line, or in its place while it is empty; a row with the name of a section goes on in that
 * section, which is added at the end where there is none. Returns how many lines came in.
 */
export function pasteLines(card: CardDocument, place: LinePlace, text: string): { step: Step; lines: number } {
  const rows = rowsOfText(text);
  const here = lineAt(card, place);
  const isEmpty = here !== undefined && textField(here, 'pattern').trim() === '';
  const from = { ...place, line: place.line + (here === undefined || isEmpty ? 0 : 1) };
  const step = addRows(isEmpty ? removeLine(card, place) : card, from, rows, true);
  return { step, lines: rows.filter((row) => 'line' in row).length };
}

/**
 * Adds rows from a place on. A row with the name of a section goes on at the end of the section of that name, if
 * sections are `joined` and there is one; else a new section is added. The last line is selected.
 */
export function addRows(card: CardDocument, from: LinePlace, rows: readonly LineRow[], joined: boolean): Step {
  let document = card;
  let { section, line } = from;
  for (const row of rows) {
    if ('section' in row) {
      section = joined ? document.sections.findIndex((each, at) => sectionName(each, at) === row.section) : -1;
      if (section < 0) {
        section = document.sections.length;
        document = addSection(document, row.section);
      }
      line = document.sections[section]?.lines.length ?? 0;
    } else {
      document = addLine(document, { section, line }, { id: freshId(document, section), ...row.line });
      line += 1;
    }
  }
  return { document, selection: { section, line: Math.max(0, line - 1) } };
}
