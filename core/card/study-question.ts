import { type Random, shuffle } from '../base/random.ts';
import { coverGroups, type CoverableLine } from './study-groups.ts';
import type { Slide } from './pattern.ts';

/** What card study asks of a line. */
export const STUDY_ASKS = ['groups', 'movement', 'exposure', 'points'] as const;
export type StudyAsk = (typeof STUDY_ASKS)[number];

/** A line as it is studied. */
export interface StudyLine extends CoverableLine {
  readonly id: string;
  readonly section: string;
  readonly concealed: boolean;
  readonly points: number;
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
      return choose(line, ask, 'May this line be exposed?', EXPOSURE[line.concealed ? 1 : 0], EXPOSURE, random);
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
  0: 'They stay as printed.',
  1: 'By any amount, together.',
  2: 'By even amounts, together.',
  3: 'By threes, together.',
};
const EXPOSURE = ['Yes, it may be exposed.', 'No, it is concealed.'] as const;

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
  const because = ask === 'points' ? `It is worth ${answer} points.` : answer;
  return { ask, lineId: line.id, covered: [], question, choices, right: choices.indexOf(answer), because };
}

function askGroups(line: StudyLine, random: Random): StudyQuestion {
  const { covered, answer, wrong, text } = coverGroups(line, random);
  const choices = shuffle([answer, ...wrong], random);
  const question = covered.length === 1 ? 'What stands in the covered group?' : 'What stands in the covered groups?';
  const because = `Covered was ${answer}: ${text}.`;
  return { ask: 'groups', lineId: line.id, covered, question, choices, right: choices.indexOf(answer), because };
}
