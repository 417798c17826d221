import type { Kind } from '../tiles/kinds.ts';
import type { AnswerCard } from './answer-room.ts';
import { keptCounts, peopleOf, sectionOf } from './class-answers.ts';
import { type ClassAnswer, tilesOf } from './sheet.ts';

/** People of a class who think alike. */
export interface School {
  readonly people: number;
  /** The section that they aim at; null where they are told by their pass. */
  readonly section: string | null;
  /** The pass that most of them chose; null for stopping. */
  readonly give: string | null;
  /** Kinds that three in four of them keep, and fewer than half of the other school. */
  readonly keeps: readonly Kind[];
}

/** The two schools of thought of a class; or why there are none. */
export type Schools =
  | { readonly type: 'two'; readonly schools: readonly [School, School]; readonly others: number }
  | { readonly type: 'few' | 'agree' };

/** A class of fewer people has no schools. */
const LEAST_PEOPLE = 4;
/** Nor is one person a school. */
const LEAST_SCHOOL = 2;
const SHOWN_KEEPS = 2;

/**
 * The two schools of a class, by an exact rule. Who named an aim belongs to its section; where nobody named one, people
 * belong to what they chose. The larger school is the largest group, the other the next largest that differs: another
 * section, or a pass with at most one tile in common. Of groups of one size the one nearer the top of the card comes
 * first, of passes the one entered first. There are two schools when each has two people or more, in a class of four.
 */
export function schoolsOf(answers: readonly ClassAnswer[], card: AnswerCard): Schools {
  if (peopleOf(answers) < LEAST_PEOPLE) return { type: 'few' };
  const groups = groupsOf(answers, card).toSorted((one, other) => peopleOf(other) - peopleOf(one));
  const [first] = groups;
  const second = groups.find((group) => first !== undefined && differ(first, group, card));
  if (first === undefined || second === undefined || peopleOf(second) < LEAST_SCHOOL) return { type: 'agree' };
  const others = peopleOf(answers) - peopleOf(first) - peopleOf(second);
  return { type: 'two', schools: [schoolOf(first, second, card), schoolOf(second, first, card)], others };
}

type Group = readonly ClassAnswer[];

function groupsOf(answers: readonly ClassAnswer[], card: AnswerCard): Group[] {
  const bySection = card.sections.map(({ name }) => answers.filter((answer) => sectionOf(answer, card) === name));
  const named = bySection.filter(({ length }) => length > 0);
  return named.length > 0 ? named : byChoice(answers);
}

/** Whether two groups think differently. */
function differ([one]: Group, [other]: Group, card: AnswerCard): boolean {
  if (one === undefined || other === undefined) return false;
  const section = sectionOf(one, card);
  if (section !== undefined) return section !== sectionOf(other, card);
  if (one.stops === true || other.stops === true) return one.stops !== other.stops;
  const given = tilesOf(one.give);
  return given.size - given.minus(tilesOf(other.give)).size <= 1 && choiceOf(one) !== choiceOf(other);
}

function schoolOf(group: Group, other: Group, card: AnswerCard): School {
  const [choice] = byChoice(group).toSorted((a, b) => peopleOf(b) - peopleOf(a));
  const most = choice?.[0];
  return {
    people: peopleOf(group),
    section: most === undefined ? null : (sectionOf(most, card) ?? null),
    give: most === undefined || most.stops === true ? null : most.give,
    keeps: ownKeeps(group, other).slice(0, SHOWN_KEEPS),
  };
}

/** What one group keeps and the other does not, most people first. */
function ownKeeps(group: Group, other: Group): Kind[] {
  const [mine, theirs] = [saidKeeps(group), saidKeeps(other)];
  const elsewhere = new Map(keptCounts(theirs).map(({ kind, people }) => [kind, people]));
  return keptCounts(mine)
    .filter(({ people }) => people >= 0.75 * peopleOf(mine))
    .filter(({ kind }) => theirs.length > 0 && (elsewhere.get(kind) ?? 0) < 0.5 * peopleOf(theirs))
    .toSorted((one, two) => two.people - one.people)
    .map(({ kind }) => kind);
}

function saidKeeps(group: Group): Group {
  return group.filter(({ keeps }) => keeps !== undefined);
}

/** Those who chose the same together, in the order of their first answers. */
function byChoice(answers: Group): Group[] {
  return [...new Set(answers.map(choiceOf))].map((choice) => answers.filter((answer) => choiceOf(answer) === choice));
}

/** The same for the same choice, whatever the order of its tiles. */
function choiceOf({ give, stops }: ClassAnswer): string {
  return stops === true ? 'stop' : String(tilesOf(give));
}
