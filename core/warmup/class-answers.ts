import { aimAtLine, aimAtSection } from './aims.ts';
import type { AnswerCard } from './answer-room.ts';
import type { AnswerGiven } from './answer-code.ts';
import { type Kind, KINDS } from '../tiles/kinds.ts';
import { type ClassAnswer, MOST_ANSWERS, MOST_PEOPLE, type SheetProblem, tilesOf } from './sheet.ts';

/** What one person answered, as it is counted in a class; what was not said is left out. */
export function classAnswerOf({ give, keeps, aims: [aim], stops }: AnswerGiven): ClassAnswer {
  return {
    give,
    people: 1,
    ...(stops ? { stops } : {}),
    ...(keeps === '' ? {} : { keeps }),
    ...(aim === undefined ? {} : { aim }),
  };
}

/** Adds what people answered; the same answer is counted together, whatever the order of its tiles. */
export function addAnswer(problem: SheetProblem, answer: ClassAnswer): SheetProblem {
  const place = problem.answers.findIndex((other) => isSameAnswer(other, answer));
  const before = problem.answers[place];
  if (before === undefined) return { ...problem, answers: [...problem.answers, answer] };
  const people = before.people + answer.people;
  return { ...problem, answers: problem.answers.with(place, { ...before, people }) };
}

/** Takes one person off those who chose this, the answer entered last first. */
export function takeAnswer(problem: SheetProblem, choice: Pick<ClassAnswer, 'give' | 'stops'>): SheetProblem {
  const place = problem.answers.findLastIndex((answer) => isSameChoice(answer, choice));
  const before = problem.answers[place];
  if (before === undefined) return problem;
  const answers = problem.answers.with(place, { ...before, people: before.people - 1 });
  return { ...problem, answers: answers.filter(({ people }) => people > 0) };
}

/** Whether the same answer is counted already. */
export function isCounted({ answers }: SheetProblem, answer: ClassAnswer): boolean {
  return answers.some((other) => isSameAnswer(other, answer));
}

/** Whether the file has no room for one more of this answer. */
export function isFull({ answers }: SheetProblem, answer: ClassAnswer): boolean {
  const same = answers.find((other) => isSameAnswer(other, answer));
  return same === undefined ? answers.length >= MOST_ANSWERS : same.people + answer.people > MOST_PEOPLE;
}

function isSameAnswer(one: ClassAnswer, other: ClassAnswer): boolean {
  const alike = tilesOf(one.keeps ?? '').equals(tilesOf(other.keeps ?? ''));
  return isSameChoice(one, other) && one.aim === other.aim && alike;
}

function isSameChoice(one: Pick<ClassAnswer, 'give' | 'stops'>, other: Pick<ClassAnswer, 'give' | 'stops'>): boolean {
  return one.stops === other.stops && tilesOf(one.give).equals(tilesOf(other.give));
}

export function peopleOf(answers: readonly ClassAnswer[]): number {
  return answers.reduce((sum, { people }) => sum + people, 0);
}

/** The section that an answer aims at; undefined where no aim was named, or none of this card. */
export function sectionOf({ aim }: ClassAnswer, { sections }: AnswerCard): string | undefined {
  return sections.find(({ name, lines }) => aim === aimAtSection(name) || lines.some(({ id }) => aim === aimAtLine(id)))
    ?.name;
}

/** How many people aimed at a section, or at a line in it. */
export interface AimCount {
  readonly section: string;
  readonly people: number;
}

/** The sections aimed at, most people first, then as on the card. */
export function aimCounts(answers: readonly ClassAnswer[], card: AnswerCard): AimCount[] {
  return card.sections
    .map(({ name }) => ({
      section: name,
      people: peopleOf(answers.filter((answer) => sectionOf(answer, card) === name)),
    }))
    .filter(({ people }) => people > 0)
    .toSorted((one, other) => other.people - one.people);
}

/** How many people kept a tile, or one of several alike. */
export interface KeptCount {
  readonly kind: Kind;
  readonly people: number;
}

/** What is kept by four in five of those who said what they keep. */
export function keptByNearlyAll(answers: readonly ClassAnswer[]): { readonly of: number; readonly kept: KeptCount[] } {
  const said = answers.filter(({ keeps }) => keeps !== undefined);
  const of = peopleOf(said);
  const kept = keptCounts(said).filter(({ people }) => people >= 0.8 * of);
  return { of, kept };
}

/** The kinds kept by anybody, in canonical order. */
export function keptCounts(answers: readonly ClassAnswer[]): KeptCount[] {
  return KINDS.map((kind) => ({
    kind,
    people: peopleOf(answers.filter(({ keeps }) => tilesOf(keeps ?? '').count(kind) > 0)),
  })).filter(({ people }) => people > 0);
}
