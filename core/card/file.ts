import type { Fields } from '../base/json.ts';
import { type Problem, type Result, success } from '../base/result.ts';
import { type CardLimitCode, checkCard, type CheckedCard } from './check.ts';
import type { CardDocument } from './document.ts';
import { cardDocument, type DocumentRefusal, readCardDocument } from './read-document.ts';

export type CardRefusal = DocumentRefusal | Problem<CardLimitCode>;

export interface CardFile extends CheckedCard {
  /** The file's content, with fields that this version doesn't know: what is edited and written back. */
  readonly document: CardDocument;
}

/** Reads a card file's text. Never throws; a refusal says why nothing of it can be opened. */
export function readCardFile(text: string): Result<CardFile, CardRefusal> {
  const document = readCardDocument(text);
  return document.ok ? checked(document.value) : document;
}

/** Reads a card from a plain document: what JSON holds, from a file or from another thread. Never throws. */
export function readCard(plain: unknown): Result<CardFile, CardRefusal> {
  const document = cardDocument(plain);
  return document.ok ? checked(document.value) : document;
}

function checked(document: CardDocument): Result<CardFile, CardRefusal> {
  const card = checkCard(document);
  return card.ok ? success({ ...card.value, document }) : card;
}

/**
 * The text of a card file: known fields in a fixed order, then unknown ones by name, so that the
 * same card gives the same bytes. `readCardFile` reads it back to an equal document.
 */
export function writeCardFile(document: CardDocument): string {
  const sections = document.sections.map((section) => ({
    ...inOrder(section, ['name', 'lines']),
    lines: section.lines.map((line) => inOrder(line, LINE_FIELDS)),
  }));
  return `${JSON.stringify({ ...inOrder(document, CARD_FIELDS), sections }, null, 2)}\n`;
}

const CARD_FIELDS = ['format', 'version', 'title', 'season', 'sections'] as const;
const LINE_FIELDS = ['id', 'pattern', 'or', 'slide', 'slide2', 'distinct', 'concealed', 'points', 'note'] as const;

function inOrder(fields: Fields, first: readonly string[]): Fields {
  const known = first.filter((field) => Object.hasOwn(fields, field));
  const others = Object.keys(fields)
    .filter((field) => !first.includes(field))
    .sort();
  return Object.fromEntries([...known, ...others].map((field) => [field, fields[field]]));
}
