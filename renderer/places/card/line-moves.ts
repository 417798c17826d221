import type { CardDocument, LinePlace } from '../../../core/card/document.ts';
import { addLine, duplicateLine, freshId, moveLine, removeLine } from '../../../core/card/edit.ts';
import type { Selection } from './card-editor.ts';

/** A changed card, and what is selected in it then. */
export interface Step {
  readonly document: CardDocument;
  readonly selection: Selection;
}

/** An empty line at a place, with an id of its own. */
export function newLine(card: CardDocument, { section, line }: LinePlace): Step {
  const fields = { id: freshId(card, section), pattern: '' };
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
