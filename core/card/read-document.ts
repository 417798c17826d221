import { type Fields, isFields, readJson } from '../base/json.ts';
import { failure, type Problem, type Result, success } from '../base/result.ts';
import { CARD_FORMAT, CARD_VERSION, type CardDocument, type LineDocument, type SectionDocument } from './document.ts';

/*
 * The first half of reading a card file: its shape alone. The window needs no more of a card that the desk has checked;
 * file.ts goes on with what the lines stand for.
 */

export type DocumentRefusal = Problem<'not-a-card' | 'newer-version' | 'unknown-version' | 'too-large'>;

/**
 * Letters in the largest file that is read, and its deepest nesting. A full card has some 60,000 and 4. Files that hold a
 * card take somewhat more, so that each card that is read fits in.
 */
export const CARD_FILE_LIMITS = { letters: 4_000_000, depth: 40 } as const;

/** The content of a card file by its text. Never throws; its lines are not looked at. */
export function readCardDocument(text: string): Result<CardDocument, DocumentRefusal> {
  const raw = readJson(text, CARD_FILE_LIMITS);
  if (raw.ok) return cardDocument(raw.value);
  if (raw.problem === 'too-large') {
    return failure('too-large', 'This file is far too large for a card: choose a file ending in .card.json.');
  }
  if (raw.problem !== 'damaged') return notACard();
  return failure('not-a-card', 'This file is damaged or cut short, or no card file: try a backup of it.');
}

/** The content of a plain document: what JSON holds, from a file or from another thread. */
export function cardDocument(plain: unknown): Result<CardDocument, DocumentRefusal> {
  if (!isFields(plain)) return notACard();
  return checkFormat(plain) ?? success(documentOf(plain));
}

function checkFormat({ format, version }: Fields): Result<never, DocumentRefusal> | undefined {
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

function notACard(): Result<never, DocumentRefusal> {
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
