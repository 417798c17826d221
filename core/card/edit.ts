import { CARD_LIMITS } from './check.ts';
import type { Fields } from '../base/json.ts';
import {
  type CardDocument,
  type LineDocument,
  type LinePlace,
  type SectionDocument,
  sectionName,
  textField,
} from './document.ts';

/**
 * Edits of a card. Each gives a new document and leaves the old one as it was, so that undo is
 * keeping the old one. A place that isn't there changes nothing and gives back the same document.
 */

/** Changes the card's title or season. */
export function changeCard(
  card: CardDocument,
  change: { readonly title?: string; readonly season?: string },
): CardDocument {
  return { ...card, ...change };
}

/** Adds an empty section before place `at` (by default at the end). */
export function addSection(card: CardDocument, name: string, at: number = card.sections.length): CardDocument {
  if (at < 0 || at > card.sections.length || card.sections.length >= CARD_LIMITS.sections) return card;
  return { ...card, sections: card.sections.toSpliced(at, 0, { name, lines: [] }) };
}

export function renameSection(card: CardDocument, at: number, name: string): CardDocument {
  return withSection(card, at, (section) => ({ ...section, name }));
}

/** Takes a section out of place `from` and puts it at place `to`. */
export function moveSection(card: CardDocument, from: number, to: number): CardDocument {
  const sections = moved(card.sections, from, to);
  return sections === card.sections ? card : { ...card, sections };
}

/** Removes a section with all its lines. */
export function removeSection(card: CardDocument, at: number): CardDocument {
  return card.sections[at] === undefined ? card : { ...card, sections: card.sections.toSpliced(at, 1) };
}

/** Puts a line at a place; what stood there moves down. */
export function addLine(card: CardDocument, place: LinePlace, line: LineDocument): CardDocument {
  return withSection(card, place.section, (section) =>
    place.line < 0 || place.line > section.lines.length
      ? section
      : { ...section, lines: section.lines.toSpliced(place.line, 0, line) },
  );
}

/** Puts a copy with an id of its own below a line. */
export function duplicateLine(card: CardDocument, place: LinePlace): CardDocument {
  const line = lineAt(card, place);
  if (line === undefined) return card;
  const copy = { ...line, id: freshId(card, place.section) };
  return addLine(card, { section: place.section, line: place.line + 1 }, copy);
}

export function removeLine(card: CardDocument, place: LinePlace): CardDocument {
  if (lineAt(card, place) === undefined) return card;
  return withSection(card, place.section, (section) => ({ ...section, lines: section.lines.toSpliced(place.line, 1) }));
}

/** Takes a line out of one place and puts it at another, in the same section or in another one. */
export function moveLine(card: CardDocument, from: LinePlace, to: LinePlace): CardDocument {
  const line = lineAt(card, from);
  if (line === undefined) return card;
  const without = removeLine(card, from);
  const target = without.sections[to.section];
  if (target === undefined || to.line < 0 || to.line > target.lines.length) return card;
  return addLine(without, to, line);
}

/** Changes fields of a line; a value of undefined removes the field. */
export function changeLine(card: CardDocument, place: LinePlace, change: Fields): CardDocument {
  const line = lineAt(card, place);
  if (line === undefined) return card;
  const next = Object.fromEntries(Object.entries({ ...line, ...change }).filter(([, value]) => value !== undefined));
  return withSection(card, place.section, (section) => ({ ...section, lines: section.lines.with(place.line, next) }));
}

/** The fields that say a line's forms: its pattern, and what it may be instead. For `changeLine`. */
export function withForms([pattern = '', ...further]: readonly string[]): Fields {
  return { pattern, or: further.length === 0 ? undefined : further };
}

/** The line at a place, if there is one. */
export function lineAt(card: CardDocument, place: LinePlace): LineDocument | undefined {
  return card.sections[place.section]?.lines[place.line];
}

/** An id that no line of the card has: the section's name and the next free number. */
export function freshId(card: CardDocument, section: number): string {
  const found = card.sections[section];
  const name = found === undefined ? '' : sectionName(found, section);
  const stem =
    name
      .toLowerCase()
      .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
      .replaceAll(/^-|-$/g, '')
      .slice(0, 40) || 'line';
  const taken = new Set(card.sections.flatMap(({ lines }) => lines.map((line) => textField(line, 'id'))));
  let number = (found?.lines.length ?? 0) + 1;
  while (taken.has(`${stem}-${number}`)) number += 1;
  return `${stem}-${number}`;
}

function withSection(
  card: CardDocument,
  at: number,
  change: (section: SectionDocument) => SectionDocument,
): CardDocument {
  const section = card.sections[at];
  if (section === undefined) return card;
  const next = change(section);
  return next === section ? card : { ...card, sections: card.sections.with(at, next) };
}

function moved<Item>(items: readonly Item[], from: number, to: number): readonly Item[] {
  const item = items[from];
  if (item === undefined || from === to || to < 0 || to >= items.length) return items;
  return items.toSpliced(from, 1).toSpliced(to, 0, item);
}

/**
 * Edits of a pattern's text group by group. Groups that can't be read yet stay as they were typed;
 * a place that isn't there changes nothing.
 */

export function replaceGroup(text: string, at: number, group: string): string {
  const groups = groupsIn(text);
  return groups[at] === undefined ? text : groups.with(at, group).join(' ');
}

/** Puts a group before place `at`, by default at the end. */
export function insertGroup(text: string, group: string, at: number = groupsIn(text).length): string {
  return groupsIn(text).toSpliced(at, 0, group).join(' ');
}

export function removeGroup(text: string, at: number): string {
  return groupsIn(text)[at] === undefined ? text : groupsIn(text).toSpliced(at, 1).join(' ');
}

export function moveGroup(text: string, from: number, to: number): string {
  const groups = groupsIn(text);
  const next = moved(groups, from, to);
  return next === groups ? text : next.join(' ');
}

function groupsIn(text: string): readonly string[] {
  return text.match(/\S+/g) ?? [];
}
