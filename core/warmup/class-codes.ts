import { ANSWER_SIGNS, readAnswerCode } from './answer-code.ts';
import type { AnswerCard } from './answer-room.ts';
import { addAnswer, classAnswerOf, isCounted, isFull } from './class-answers.ts';
import { signsIn } from './code-signs.ts';
import type { ClassAnswer, SheetProblem } from './sheet.ts';

/** A code that could not be counted, and why. */
interface RefusedCode {
  readonly text: string;
  readonly message: string;
}

/** A code whose very answer is counted already: two people may think alike, or one code came twice. */
export interface RepeatedCode {
  readonly text: string;
  readonly place: number;
  readonly answer: ClassAnswer;
}

/** What became of many codes. */
export interface CountedCodes {
  /** The problems with the good ones counted. */
  readonly problems: readonly SheetProblem[];
  /** How many were counted, problem by problem. */
  readonly counted: readonly number[];
  readonly refused: readonly RefusedCode[];
  readonly repeated: readonly RepeatedCode[];
}

const GROUP_SIGNS = 4;

/** Counts the codes of a class, of any problem of a sheet; each good one once, nothing is dropped without a word. */
export function countCodes(text: string, problems: readonly SheetProblem[], card: AnswerCard): CountedCodes {
  const start: CountedCodes = { problems, counted: problems.map(() => 0), refused: [], repeated: [] };
  return codesIn(text).reduce((sum, code) => withCode(sum, code, card), start);
}

function withCode(sum: CountedCodes, text: string, card: AnswerCard): CountedCodes {
  const read = readAnswerCode(text, sum.problems, card);
  if (!read.ok) return { ...sum, refused: [...sum.refused, { text, message: read.problem.message }] };
  const { place } = read.value;
  const answer = classAnswerOf(read.value.answer);
  const problem = sum.problems[place] as SheetProblem;
  if (isCounted(problem, answer)) return { ...sum, repeated: [...sum.repeated, { text, place, answer }] };
  return withAnswer(sum, { text, place, answer });
}

/** The same with a code counted once more. */
export function withAnswer(sum: CountedCodes, { text, place, answer }: RepeatedCode): CountedCodes {
  const problem = sum.problems[place] as SheetProblem;
  if (isFull(problem, answer)) {
    const message = `Problem ${place + 1} has no room for more answers.`;
    return { ...sum, refused: [...sum.refused, { text, message }] };
  }
  return {
    ...sum,
    problems: sum.problems.with(place, addAnswer(problem, answer)),
    counted: sum.counted.with(place, (sum.counted[place] ?? 0) + 1),
  };
}

/**
 * The codes in a text: apart by lines, blanks, commas or semicolons. Groups of up to four signs with blanks between are
 * one code; what stands before a colon, such as a name, is passed over.
 */
export function codesIn(text: string): string[] {
  const codes: string[] = [];
  for (const line of text.split(/[\n,;]/)) {
    let open = '';
    for (const word of line.replace(/^.*:/, '').split(/\s+/).filter(Boolean)) {
      const isGroup = word.length <= GROUP_SIGNS && !word.includes('-');
      if (isGroup && open !== '' && signsIn(open) + word.length <= ANSWER_SIGNS) {
        open = `${open} ${word}`;
        continue;
      }
      if (open !== '') codes.push(open);
      open = isGroup ? word : '';
      if (!isGroup) codes.push(word);
    }
    if (open !== '') codes.push(open);
  }
  return codes;
}
