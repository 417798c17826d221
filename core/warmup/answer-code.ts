import { expectValue, failure, type Problem, type Result, success } from '../base/result.ts';
import { mayBeBlind, PASS_SIZE } from '../exchange/steps.ts';
import { formatTileList, formatTiles, parseTiles } from '../tiles/text.ts';
import {
  type AnswerCard,
  type AnswerChoice,
  type AnswerRoom,
  partOfPlace,
  placeOfPart,
  roomOf,
} from './answer-room.ts';
import { type CodeTrouble, formatCode, numberOf, readSigns, wrongCheck } from './code-signs.ts';
import type { WarmUpItem } from './item.ts';
import { codeOfItem } from './problem-code.ts';
import type { Attempt } from './warm-up.ts';

/** What a code carries of an attempt: at most one aim, and no reason. */
export type AnswerGiven = Omit<Attempt, 'why'>;

export type AnswerCodeTrouble = CodeTrouble | 'code-deal' | 'code-elsewhere' | 'code-doubtful';

/** An answer that came by its code, and the place of its problem in the list. */
export interface AnswerRead {
  readonly place: number;
  readonly answer: AnswerGiven;
}

/** Signs before the check: an answer has ten signs. */
const PAYLOAD = 9;
export const ANSWER_SIGNS = PAYLOAD + 1;
const NUMBERS = 31n ** BigInt(PAYLOAD);

/**
 * The code that a pupil sends back, ten signs such as `UQ5-DD5-F7J8`: what she gave, kept and aimed at as one number,
 * and in the room that is left the mark of the problem and the card. See FORMAT.md. An attempt that the problem does not
 * allow is a bug of ours.
 */
export function formatAnswerCode(
  item: WarmUpItem,
  { aims, keeps, give, stops }: AnswerGiven,
  card: AnswerCard,
): string {
  const room = roomOf(item, card);
  const given = stops ? '' : formatTiles(expectValue(parseTiles(give)));
  const choice = room.choices.findIndex((each) => each.stops === stops && formatTileList(each.give) === given);
  const kept = expectValue(parseTiles(keeps));
  if (choice < 0 || !room.rack.contains(kept)) throw new Error('this can not be answered to the problem');
  const aim = 1 + room.aims.indexOf(aims.find((each) => room.aims.includes(each)) ?? '');
  const said = (BigInt(aim) * room.parts + placeOfPart(room.rack, kept)) * BigInt(room.choices.length) + BigInt(choice);
  return formatCode(markOf(room) * answersOf(room) + said, PAYLOAD, 'answer');
}

/** Reads an answer's code and finds its problem; case, blanks and dashes are free. Never throws. */
export function readAnswerCode(
  text: string,
  items: readonly WarmUpItem[],
  card: AnswerCard,
): Result<AnswerRead, Problem<AnswerCodeTrouble>> {
  const signs = readSigns(text);
  if (!signs.ok) return signs;
  const { length } = signs.value;
  if (length >= ANSWER_SIGNS - 1 && numberOf(signs.value) !== undefined) return noAnswer();
  if (length !== ANSWER_SIGNS) return wrongLength(length);
  const number = numberOf(signs.value, 'answer');
  if (number === undefined) return wrongCheck();
  const found = items.flatMap((item, place) => {
    const answer = answerIn(number, roomOf(item, card), mayBeBlind(item.step));
    return answer === undefined ? [] : [{ place, answer }];
  });
  const [first] = found;
  if (first === undefined) return elsewhere();
  const codes = found.map(({ place }) => codeOfTiles(items[place] as WarmUpItem));
  const other = codes.findIndex((code) => code !== codes[0]);
  return other < 0 ? success(first) : doubtful(first.place, (found[other] as AnswerRead).place);
}

/** What a number says at a problem; undefined where the mark is another's. */
function answerIn(number: bigint, room: AnswerRoom, isBlind: boolean): AnswerGiven | undefined {
  if (number / answersOf(room) !== markOf(room)) return undefined;
  const said = number % answersOf(room);
  const choices = BigInt(room.choices.length);
  const { give, stops } = room.choices[Number(said % choices)] as AnswerChoice;
  const keeps = partOfPlace(room.rack, (said / choices) % room.parts);
  const aim = room.aims[Number(said / choices / room.parts) - 1];
  return {
    aims: aim === undefined ? [] : [aim],
    keeps: formatTiles(keeps),
    give: formatTileList(give),
    blind: isBlind ? PASS_SIZE - give.length : 0,
    stops,
  };
}

/** How many answers a problem has. */
function answersOf({ choices, parts, aims }: AnswerRoom): bigint {
  return BigInt(choices.length) * parts * BigInt(1 + aims.length);
}

/** The room that the answers leave is the mark's: on a card of sixty lines 150,000 numbers or more. */
function markOf(room: AnswerRoom): bigint {
  return room.print % (NUMBERS / answersOf(room));
}

/** The same for the same problem, whether a seed dealt it or not. */
function codeOfTiles({ code: _, ...item }: WarmUpItem): string {
  return codeOfItem(item);
}

function noAnswer(): Result<never, Problem<'code-deal'>> {
  return failure('code-deal', 'This is the code of a deal: ask for the code that stands under the answer.');
}

function wrongLength(length: number): Result<never, Problem<'code-length'>> {
  const fault = length < ANSWER_SIGNS ? 'it is cut short' : 'there are too many';
  return failure('code-length', `An answer’s code has ${ANSWER_SIGNS} signs, but this one has ${length}: ${fault}.`);
}

function elsewhere(): Result<never, Problem<'code-elsewhere'>> {
  return failure('code-elsewhere', 'This is an answer to another deal, or on another card: no problem here fits it.');
}

function doubtful(one: number, other: number): Result<never, Problem<'code-doubtful'>> {
  const both = `problems ${one + 1} and ${other + 1}`;
  return failure('code-doubtful', `This code fits ${both} alike: type this answer at the right one.`);
}
