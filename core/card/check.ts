import { failure, type Problem, type Result, success } from '../base/result.ts';
import { type Card, type Line, linesOf, type Section } from './card.ts';
import {
  type CardDocument,
  lineName,
  type LinePlace,
  type SectionDocument,
  sectionName,
  textField,
} from './document.ts';
import { type LineProblem, type LineReading, readLine } from './line.ts';

/** Largest card that opens; beyond it reading a rack would no longer be quick. */
export const CARD_LIMITS = { lines: 300, sections: 100, ways: 50_000 } as const;

/** A problem of a card, with what is needed to find it: `section` and `id` are empty where they don't apply. */
export interface CardProblem {
  readonly code: LineProblem['code'] | 'duplicate-id' | 'wrong-title';
  readonly section: string;
  readonly id: string;
  /** The line as a player is told of it, "Runs, 3rd line"; where the problem is no line's, as `section`. */
  readonly name: string;
  /** Place in the line's pattern, counted from 1; 0 if the problem is not in the pattern. */
  readonly column: number;
  readonly message: string;
  /** Where the line stands, if it is about one. */
  readonly place?: LinePlace;
}

export type CardLimitCode = 'too-many-lines' | 'too-many-sections' | 'too-many-ways';
export interface CheckedCard {
  readonly card: Card;
  readonly problems: readonly CardProblem[];
}

/**
 * Makes a card of what a document says, leaving out lines with problems. Refuses only a card
 * beyond the limits, before its ways are written out.
 */
export function checkCard(document: CardDocument): Result<CheckedCard, Problem<CardLimitCode>> {
  const beyond = checkSizes(document);
  if (beyond !== undefined) return beyond;
  const tally: Tally = { ids: new Map(), problems: titleProblems(document), ways: 0 };
  const sections: { name: string; lines: NamedReading[] }[] = [];
  for (const [index, section] of document.sections.entries()) {
    const name = sectionName(section, index);
    sections.push({ name, lines: goodLines(section, index, name, tally) });
    if (tally.ways > CARD_LIMITS.ways) return tooManyWays(name);
  }
  return success({ card: writeCard(document, sections), problems: tally.problems });
}

/** What is gathered over all sections. */
interface Tally {
  /** Where each id stood first. */
  readonly ids: Map<string, string>;
  readonly problems: CardProblem[];
  ways: number;
}

/** A line that may be used, and its name for a player. */
interface NamedReading {
  readonly name: string;
  readonly reading: LineReading;
}

/** A section's lines without problems; stops at the line with which the card has too many ways. */
function goodLines(section: SectionDocument, at: number, name: string, tally: Tally): NamedReading[] {
  const good: NamedReading[] = [];
  tally.problems.push(...nameProblems(section, name));
  for (const [index, fields] of section.lines.entries()) {
    if (tally.ways > CARD_LIMITS.ways) break;
    const reading = readLine(fields);
    const { id } = reading;
    const place = `line ${index + 1} of ${name}`;
    const known = lineName(section, name, index);
    const found = reading.problems.map((problem): CardProblem => ({
      ...located(problem, name, index),
      section: name,
      id,
      name: known,
    }));
    const first = tally.ids.get(id);
    if (first === undefined) tally.ids.set(id, place);
    else if (id !== '') found.unshift({ ...duplicateId(id, first, place), section: name, name: known });
    tally.problems.push(...found.map((problem) => ({ ...problem, place: { section: at, line: index } })));
    if (found.length > 0) continue;
    tally.ways += reading.wayCount;
    good.push({ name: known, reading });
  }
  return good;
}

/** A line without an id is named by its place. */
function located(problem: LineProblem, section: string, index: number): LineProblem {
  if (problem.code !== 'missing-id') return problem;
  return { ...problem, message: `Line ${index + 1} of ${section} has no id: give it a short one of its own.` };
}

function nameProblems(section: SectionDocument, name: string): CardProblem[] {
  if (section['name'] === undefined || typeof section['name'] === 'string') return [];
  const message = `The name of ${name} is not a text: write one.`;
  return [{ code: 'wrong-field', section: name, id: '', name, column: 0, message }];
}

function writeCard(
  document: CardDocument,
  sections: readonly { name: string; lines: readonly NamedReading[] }[],
): Card {
  return {
    title: textField(document, 'title'),
    season: textField(document, 'season'),
    sections: sections.map(({ name, lines }): Section => ({
      name,
      lines: lines.map((line) => writeLine(line, name)),
    })),
  };
}

function writeLine({ name, reading }: NamedReading, section: string): Line {
  const { id, text, concealed, points, note, ways } = reading;
  return { id, section, name, pattern: text, concealed, points, note, ways };
}

function titleProblems(document: CardDocument): CardProblem[] {
  return ['title', 'season']
    .filter((field) => document[field] !== undefined && typeof document[field] !== 'string')
    .map((field) => ({
      code: 'wrong-title',
      section: '',
      id: '',
      name: '',
      column: 0,
      message: `The card's ${field} is not a text: write it anew.`,
    }));
}

function duplicateId(
  id: string,
  first: string,
  place: string,
): Pick<CardProblem, 'code' | 'id' | 'column' | 'message'> {
  const message = `The id "${id}" stands at ${first} and again at ${place}: give ${place} another one.`;
  return { code: 'duplicate-id', id, column: 0, message };
}

function checkSizes({ sections }: CardDocument): Result<never, Problem<CardLimitCode>> | undefined {
  const lines = sections.reduce((sum, section) => sum + section.lines.length, 0);
  if (sections.length > CARD_LIMITS.sections) {
    const message = `This card has ${sections.length} sections, and Windrow takes ${CARD_LIMITS.sections}: put some together.`;
    return failure('too-many-sections', message);
  }
  if (lines <= CARD_LIMITS.lines) return undefined;
  return failure(
    'too-many-lines',
    `This card has ${lines} lines, and Windrow takes ${CARD_LIMITS.lines}: split it into two cards.`,
  );
}

function tooManyWays(section: string): Result<never, Problem<CardLimitCode>> {
  const message = `This card has more than ${CARD_LIMITS.ways} ways by section "${section}": split it into two cards.`;
  return failure('too-many-ways', message);
}

/** What the command `card` prints of a card. */
export interface CardSummary {
  readonly title: string;
  readonly season: string;
  /** Ways of all lines together. */
  readonly ways: number;
  readonly lines: readonly {
    readonly id: string;
    readonly section: string;
    readonly pattern: string;
    readonly ways: number;
  }[];
  readonly problems: readonly Pick<CardProblem, 'section' | 'id' | 'column' | 'message'>[];
}

export function summarizeCard({ card, problems }: CheckedCard): CardSummary {
  const lines = linesOf(card).map(({ id, section, pattern, ways }) => ({ id, section, pattern, ways: ways.length }));
  return {
    title: card.title,
    season: card.season,
    ways: lines.reduce((sum, { ways }) => sum + ways, 0),
    lines,
    problems: problems.map(({ section, id, column, message }) => ({ section, id, column, message })),
  };
}
