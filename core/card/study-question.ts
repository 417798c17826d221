import { type Random, shuffle } from '../base/random.ts';
import { DRAGONS, WINDS } from '../tiles/kinds.ts';
import { waysOf } from './expand.ts';
import type { LineSettings } from './line.ts';
import { OPEN_SUITS, OPEN_WINDS, type Pattern, type PatternGroup, type Slide } from './pattern.ts';
import { lineSentence } from './sentence.ts';
import { groupWords } from './words.ts';

/** What card study asks of a line. */
export const STUDY_ASKS = ['groups', 'movement', 'exposure', 'points'] as const;
export type StudyAsk = (typeof STUDY_ASKS)[number];

/** A line as it is studied. */
export interface StudyLine extends Omit<LineSettings, 'note'> {
  readonly id: string;
  readonly section: string;
  readonly pattern: Pattern;
  readonly or: readonly Pattern[];
}

/** A question with two to four choices, of which exactly one is right. */
export interface StudyQuestion {
  readonly ask: StudyAsk;
  readonly lineId: string;
  /** Places of groups in the pattern that are shown face down. */
  readonly covered: readonly number[];
  readonly question: string;
  readonly choices: readonly string[];
  readonly right: number;
  /** One sentence that is shown after the answer. */
  readonly because: string;
}

/** The kinds of question that make sense for a line: without numbers nothing moves. */
export function asksFor({ pattern }: StudyLine): readonly StudyAsk[] {
  const moves = pattern.some(({ tile }) => tile.is === 'number' && tile.movement === 'first');
  return STUDY_ASKS.filter((ask) => ask !== 'movement' || moves);
}

/** Makes a question of one kind about a line; the random stream decides what is covered and the order of choices. */
export function askAbout(line: StudyLine, ask: StudyAsk, random: Random): StudyQuestion {
  switch (ask) {
    case 'groups':
      return askGroups(line, random);
    case 'movement':
      return choose(
        line,
        ask,
        'How do the numbers of this line move?',
        MOVES[line.slide],
        Object.values(MOVES),
        random,
      );
    case 'exposure':
      return choose(
        line,
        ask,
        'Is this line exposed or concealed?',
        EXPOSURE[line.concealed ? 1 : 0],
        EXPOSURE,
        random,
      );
    case 'points':
      return choose(
        line,
        ask,
        'How many points is this line worth?',
        `${line.points}`,
        pointChoices(line.points, random),
        random,
      );
  }
}

const MOVES: Readonly<Record<Slide, string>> = {
  0: 'These numbers only',
  1: 'Any number, any run',
  2: 'Evens stay even, odds stay odd',
  3: 'By threes',
};
const EXPOSURE = ['X, it may be exposed.', 'C, it is concealed.'] as const;

/** Four values in steps of five; the right one may stand anywhere among them. */
function pointChoices(points: number, random: Random): string[] {
  const lowest = points - 5 * Math.min(random.below(4), Math.floor(points / 5));
  return [0, 5, 10, 15].map((more) => `${lowest + more}`);
}

function choose(
  line: StudyLine,
  ask: StudyAsk,
  question: string,
  answer: string,
  all: readonly string[],
  random: Random,
): StudyQuestion {
  const choices = shuffle([...all], random);
  const right = choices.indexOf(answer);
  return { ask, lineId: line.id, covered: [], question, choices, right, because: becauseOf(line) };
}

/** What is said after an answer: the whole line. */
function becauseOf(line: StudyLine): string {
  return `${lineSentence(line)}.`;
}

function askGroups(line: StudyLine, random: Random): StudyQuestion {
  const { covered, answer, wrong } = coverGroups(line, random);
  const choices = shuffle([answer, ...wrong], random);
  const question = covered.length === 1 ? 'What stands in the covered group?' : 'What stands in the covered groups?';
  const right = choices.indexOf(answer);
  return { ask: 'groups', lineId: line.id, covered, question, choices, right, because: becauseOf(line) };
}

/** Groups of a line shown face down, what they are, and what they are not. */
interface CoveredGroups {
  /** Places in the pattern, rising. */
  readonly covered: readonly number[];
  /** The covered groups in words. */
  readonly answer: string;
  /** Up to three other fillings in words; each makes a line with other ways, so that only the answer is right. */
  readonly wrong: readonly string[];
}

/** Covers one to three groups of a line. */
function coverGroups(line: StudyLine, random: Random): CoveredGroups {
  const places = shuffle([...line.pattern.keys()], random);
  const covered = places.slice(0, 1 + random.below(3)).sort((one, other) => one - other);
  return { covered, answer: wordsAt(line.pattern, covered), wrong: wrongGroups(line, covered, random) };
}

function groupsAt(pattern: Pattern, places: readonly number[]): PatternGroup[] {
  return places.map((place) => pattern[place] as PatternGroup);
}

function wordsAt(pattern: Pattern, places: readonly number[]): string {
  return groupsAt(pattern, places).map(groupWords).join('; ');
}

function wrongGroups(line: StudyLine, covered: readonly number[], random: Random): string[] {
  const right = signature(line, line.pattern);
  const found = new Map<string, string>();
  const changed = covered.flatMap((place) =>
    otherGroups(line.pattern[place] as PatternGroup).map((group) => line.pattern.with(place, group)),
  );
  for (const pattern of shuffle(changed, random)) {
    if (found.size === 3) break;
    const ways = signature(line, pattern);
    const words = wordsAt(pattern, covered);
    if (ways !== right && ways !== '' && words !== wordsAt(line.pattern, covered)) found.set(words, ways);
  }
  return [...found.keys()];
}

function signature({ slide, slide2, distinct }: StudyLine, pattern: Pattern): string {
  return waysOf(pattern, slide, slide2, distinct)
    .map(({ key }) => key)
    .sort()
    .join('\n');
}

/** Groups of the same size that a person might mistake it for. */
function otherGroups({ tile, size }: PatternGroup): PatternGroup[] {
  switch (tile.is) {
    case 'number':
      return [
        ...NUMBERS.map((number): PatternGroup => ({ tile: { ...tile, number }, size })),
        ...OPEN_SUITS.map((suit): PatternGroup => ({ tile: { ...tile, suit }, size })),
      ];
    case 'news':
      return DRAGONS.map((dragon) => ({ tile: { is: 'dragon', dragon }, size: 4 }));
    case 'open-dragon':
    case 'dragon':
    case 'suit-dragon':
      return [
        ...DRAGONS.map((dragon): PatternGroup => ({ tile: { is: 'dragon', dragon }, size })),
        ...OPEN_SUITS.map((suit): PatternGroup => ({ tile: { is: 'suit-dragon', suit }, size })),
      ];
    case 'flower':
    case 'wind':
    case 'open-wind':
      return [
        ...WINDS.map((wind): PatternGroup => ({ tile: { is: 'wind', wind }, size })),
        ...OPEN_WINDS.map((slot): PatternGroup => ({ tile: { is: 'open-wind', slot }, size })),
      ];
  }
}

const NUMBERS = [1, 2, 3, 4, 5, 6, 7, 8, 9] as const;
