import type { Fields } from '../base/json.ts';
import type { Slide } from './pattern.ts';

export const CARD_FORMAT = 'windrow.card';
export const CARD_VERSION = 1;

/**
 * A card as it stands in its file: what a person edits. Nothing in it is trusted, a line may be
 * half written; `checkCard` turns it into a `Card` and problems. Unknown fields stay at every level.
 */
export interface CardDocument extends Fields {
  readonly format: typeof CARD_FORMAT;
  readonly version: typeof CARD_VERSION;
  readonly sections: readonly SectionDocument[];
}

export interface SectionDocument extends Fields {
  readonly lines: readonly LineDocument[];
}

/** Fields as in the contract of card files: id, pattern, or, slide, slide2, distinct, concealed, points, note. */
export type LineDocument = Fields;

/** Where a line stands, both counted from 0. */
export interface LinePlace {
  readonly section: number;
  readonly line: number;
}

/** What a line has when its file doesn't say. */
export const LINE_DEFAULTS = {
  slide: 0 as Slide,
  slide2: 1 as Slide,
  distinct: false,
  concealed: false,
  points: 25,
  note: '',
} as const;

/** A card without sections. */
export function emptyCard(title: string, season: string): CardDocument {
  return { format: CARD_FORMAT, version: CARD_VERSION, title, season, sections: [] };
}

/** The name under which a section is shown: its own, or its place. */
export function sectionName(section: SectionDocument, index: number): string {
  const name = section['name'];
  return typeof name === 'string' && name.trim() !== '' ? name : `Section ${index + 1}`;
}

/** A line as a player is told of it: "Weather, 4th line"; the name of the section alone where it has no other line. */
export function lineName({ lines }: SectionDocument, section: string, line: number): string {
  return lines.length === 1 ? section : `${section}, ${ordinal(line + 1)} line`;
}

/** The name of the line of an id, as the card was printed; undefined if no line has it. */
export function nameOfLine({ sections }: CardDocument, id: string): string | undefined {
  for (const [index, section] of sections.entries()) {
    const line = section.lines.findIndex((fields) => fields['id'] === id);
    if (line >= 0) return lineName(section, sectionName(section, index), line);
  }
  return undefined;
}

const ENDINGS = ['th', 'st', 'nd', 'rd'] as const;

/** "1st", "2nd", "3rd", "11th". */
function ordinal(number: number): string {
  const isTeen = Math.floor(number / 10) % 10 === 1;
  return `${number}${(isTeen ? undefined : ENDINGS[number % 10]) ?? 'th'}`;
}

/** The text of a field, empty if it is not a text. */
export function textField(fields: Fields, field: string): string {
  const value = fields[field];
  return typeof value === 'string' ? value : '';
}
