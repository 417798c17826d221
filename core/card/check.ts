import { failure, type Problem, type Result, success } from '../base/result.ts';
import type { Card, Section } from './card.ts';
import { type CardDocument, type SectionDocument, sectionName, textField } from './document.ts';
import { writeOut } from './expand.ts';
import { type CheckedLine, checkLine, type LineProblem } from './check-line.ts';

/** Largest card that opens; beyond it reading a rack would no longer be quick. */
export const CARD_LIMITS = { lines: 300, sections: 100, ways: 50_000 } as const;

/** A problem of a card, told so that it can be found: `section` and `id` are empty where they don't apply. */
export interface CardProblem {
  readonly code: LineProblem['code'] | 'duplicate-id' | 'wrong-title';
  readonly section: string;
  readonly id: string;
  /** Place in the line's pattern, counted from 1; 0 if the problem is not in the pattern. */
  readonly column: number;
  readonly message: string;
}

export type CardLimitCode = 'too-many-lines' | 'too-many-sections' | 'too-many-ways';
export interface CheckedCard {
  readonly card: Card;
  readonly problems: readonly CardProblem[];
}

type GoodLine = Pick<CheckedLine, 'line' | 'expansion'>;

/**
 * Makes a card of what a document says, leaving out lines with problems. Refuses only a card
 * beyond the limits, before its ways are written out.
 */
export function checkCard(document: CardDocument): Result<CheckedCard, Problem<CardLimitCode>> {
  const beyond = checkSizes(document);
  if (beyond !== undefined) return beyond;
  const tally: Tally = { ids: new Map(), problems: titleProblems(document), ways: 0 };
  const sections: { name: string; lines: GoodLine[] }[] = [];
  for (const [index, section] of document.sections.entries()) {
    const name = sectionName(section, index);
    sections.push({ name, lines: goodLines(section, name, tally) });
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

/** A section's lines without problems; stops at the line with which the card has too many ways. */
function goodLines(section: SectionDocument, name: string, tally: Tally): GoodLine[] {
  const good: GoodLine[] = [];
  tally.problems.push(...nameProblems(section, name));
  for (const [index, fields] of section.lines.entries()) {
    if (tally.ways > CARD_LIMITS.ways) break;
    const checked = checkLine(fields, name, index);
    const id = textField(fields, 'id');
    const found = checked.ok ? [] : checked.problem.map((problem): CardProblem => ({ ...problem, section: name, id }));
    const place = `line ${index + 1} of ${name}`;
    const first = tally.ids.get(id);
    if (first === undefined) tally.ids.set(id, place);
    else if (id !== '') found.unshift(duplicateId(name, id, first, place));
    tally.problems.push(...found);
    if (!checked.ok || found.length > 0) continue;
    tally.ways += checked.value.expansion.count;
    good.push(checked.value);
  }
  return good;
}

function nameProblems(section: SectionDocument, name: string): CardProblem[] {
  if (section['name'] === undefined || typeof section['name'] === 'string') return [];
  const message = `The name of ${name} is not a text: write one.`;
  return [{ code: 'wrong-field', section: name, id: '', column: 0, message }];
}

function writeCard(document: CardDocument, sections: readonly { name: string; lines: readonly GoodLine[] }[]): Card {
  return {
    title: textField(document, 'title'),
    season: textField(document, 'season'),
    sections: sections.map(({ name, lines }): Section => ({
      name,
      lines: lines.map(({ line, expansion }) => ({ ...line, ways: writeOut(expansion) })),
    })),
  };
}

function titleProblems(document: CardDocument): CardProblem[] {
  return ['title', 'season']
    .filter((field) => document[field] !== undefined && typeof document[field] !== 'string')
    .map((field) => ({
      code: 'wrong-title',
      section: '',
      id: '',
      column: 0,
      message: `The card's ${field} is not a text: write it anew.`,
    }));
}

function duplicateId(section: string, id: string, first: string, place: string): CardProblem {
  const message = `The id "${id}" stands at ${first} and again at ${place}: give ${place} another one.`;
  return { code: 'duplicate-id', section, id, column: 0, message };
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
