import type { Slide } from './pattern.ts';

export const CARD_FORMAT = 'windrow.card';
export const CARD_VERSION = 1;

/** Anything with named fields; fields that we don't know are kept as they are. */
export type Fields = { readonly [field: string]: unknown };

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

/** Fields as in the contract of card files: id, pattern, slide, slide2, concealed, points, note. */
export type LineDocument = Fields;

/** What a line has when its file doesn't say. */
export const LINE_DEFAULTS = { slide: 0 as Slide, slide2: 1 as Slide, concealed: false, points: 25, note: '' } as const;

/** A card without sections. */
export function emptyCard(title: string, season: string): CardDocument {
  return { format: CARD_FORMAT, version: CARD_VERSION, title, season, sections: [] };
}

export function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The name under which a section is shown: its own, or its place. */
export function sectionName(section: SectionDocument, index: number): string {
  const name = section['name'];
  return typeof name === 'string' && name.trim() !== '' ? name : `Section ${index + 1}`;
}

/** The text of a field, empty if it is not a text. */
export function textField(fields: Fields, field: string): string {
  const value = fields[field];
  return typeof value === 'string' ? value : '';
}
