import { failure, type Problem, type Result, success } from '../base/result.ts';
import { type CardLimitCode, checkCard, type CheckedCard } from './check.ts';
import {
  CARD_FORMAT,
  CARD_VERSION,
  type CardDocument,
  type Fields,
  isFields,
  type LineDocument,
  type SectionDocument,
} from './document.ts';

export type CardRefusalCode = 'not-a-card' | 'newer-version' | 'unknown-version' | 'too-large' | CardLimitCode;
export type CardRefusal = Problem<CardRefusalCode>;

export interface CardFile extends CheckedCard {
  /** The file's content, with fields that this version doesn't know: what is edited and written back. */
  readonly document: CardDocument;
}

/** Letters in the largest file that is read, and its deepest nesting. A full card has some 60,000 and 4. */
export const FILE_LIMITS = { letters: 4_000_000, depth: 40 } as const;

/** Reads a card file's text. Never throws; a refusal says why nothing of it can be opened. */
export function readCardFile(text: string): Result<CardFile, CardRefusal> {
  const raw = readFields(text);
  if (!raw.ok) return raw;
  const foreign = checkFormat(raw.value);
  if (foreign !== undefined) return foreign;
  const document = documentOf(raw.value);
  const checked = checkCard(document);
  return checked.ok ? success({ ...checked.value, document }) : checked;
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
const LINE_FIELDS = ['id', 'pattern', 'slide', 'slide2', 'concealed', 'points', 'note'] as const;

function inOrder(fields: Fields, first: readonly string[]): Fields {
  const known = first.filter((field) => Object.hasOwn(fields, field));
  const others = Object.keys(fields)
    .filter((field) => !first.includes(field))
    .sort();
  return Object.fromEntries([...known, ...others].map((field) => [field, fields[field]]));
}

function readFields(text: string): Result<Fields, CardRefusal> {
  if (text.length > FILE_LIMITS.letters) {
    return failure('too-large', 'This file is far too large for a card: choose a file ending in .card.json.');
  }
  if (depthOf(text) > FILE_LIMITS.depth) return notACard();
  try {
    const value: unknown = JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text);
    return isFields(value) ? success(value) : notACard();
  } catch {
    return failure('not-a-card', 'This file is damaged or cut short, or no card file: try a backup of it.');
  }
}

/** How deep brackets nest, those inside texts left out. A plain loop: it must stand any text of any length. */
function depthOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const letter = text[at];
    if (quoted && letter === '\\') at += 1;
    else if (letter === '"') quoted = !quoted;
    else if (!quoted && (letter === '[' || letter === '{')) depth += 1;
    else if (!quoted && (letter === ']' || letter === '}')) depth -= 1;
    if (depth > deepest) deepest = depth;
  }
  return deepest;
}

function checkFormat({ format, version }: Fields): Result<never, CardRefusal> | undefined {
  if (format !== CARD_FORMAT) return notACard();
  if (version === CARD_VERSION) return undefined;
  if (typeof version === 'number' && version > CARD_VERSION) {
    return failure(
      'newer-version',
      'This card was written by a newer Windrow: update Windrow to open it. The file is unchanged.',
    );
  }
  return failure(
    'unknown-version',
    `This card file has no version that Windrow knows: it must say version ${CARD_VERSION}.`,
  );
}

function notACard(): Result<never, CardRefusal> {
  return failure('not-a-card', 'This file is no Windrow card: choose a file ending in .card.json.');
}

/** What is not shaped as it should be becomes a line that shows its content, so that nothing is lost unseen. */
function documentOf(raw: Fields): CardDocument {
  const { sections = [] } = raw;
  const listed: readonly unknown[] = Array.isArray(sections) ? sections : [sections];
  return { ...raw, format: CARD_FORMAT, version: CARD_VERSION, sections: listed.map(sectionOf) };
}

function sectionOf(value: unknown): SectionDocument {
  if (!isFields(value)) return { lines: misplaced(value) };
  const lines = value['lines'];
  return { ...value, lines: Array.isArray(lines) ? lines.map(lineOf) : misplaced(lines) };
}

function lineOf(value: unknown): LineDocument {
  return isFields(value) ? value : { pattern: JSON.stringify(value) };
}

function misplaced(value: unknown): LineDocument[] {
  return value === undefined ? [] : [{ pattern: JSON.stringify(value) }];
}
