import { expectValue, failure, type Problem, type Result, success } from '../base/result.ts';
import { formatTiles } from '../tiles/text.ts';
import { type CodeTrouble, formatCode, newerCode, numberOf, readSigns, wrongCheck, signsIn } from './code-signs.ts';
import { parseDealCode } from './deal-code.ts';
import { itemOfDeal, knownOfItem, type WarmUpItem } from './item.ts';
import { problemOfRank, rankOf } from './problem-rank.ts';

/** Signs before the check, one more than a deal's code has: all that is given away at the first pass fits. */
const LEAST = 9;
/** The signs of a deal's code. */
const DEAL_SIGNS = 9;
/** Room for two versions of what a code means. */
const VERSION = 0n;
const VERSIONS = 2n;

/** The code of any problem: ten signs before the first pass, and more the more tiles were given away. */
function formatProblemCode(item: WarmUpItem): string {
  const { rack, gone } = expectValue(knownOfItem(item));
  return formatCode(rankOf({ rack, gone, step: item.step, seat: item.seat }) * VERSIONS + VERSION, LEAST);
}

/** The code that gives back an item: the deal's, where that says all of it, else one of its tiles. */
export function codeOfItem(item: WarmUpItem): string {
  const deal = item.code === undefined ? null : parseDealCode(item.code);
  if (deal?.ok !== true) return formatProblemCode(item);
  const { rack, gone, step, seat, code } = itemOfDeal(deal.value);
  const same = item.gone === gone && item.step === step && item.seat === seat && item.rack === rack;
  return same ? (code ?? '') : formatProblemCode(item);
}

/** The item of a code, of a deal or of any other problem; case, blanks and dashes are free. Never throws. */
export function itemOfCode(text: string): Result<WarmUpItem, Problem<CodeTrouble | 'code-answer'>> {
  const signs = readSigns(text);
  if (!signs.ok) return signs;
  if (signs.value.length <= DEAL_SIGNS) {
    const deal = parseDealCode(text);
    return deal.ok ? success(itemOfDeal(deal.value)) : deal;
  }
  const number = numberOf(signs.value);
  if (number === undefined) return numberOf(signs.value, 'answer') === undefined ? wrongCheck() : anAnswer();
  const problem = number % VERSIONS === VERSION ? problemOfRank(number / VERSIONS) : undefined;
  if (problem === undefined) return newerCode();
  const { rack, gone, step, seat } = problem;
  const item: WarmUpItem = { rack: formatTiles(rack), gone: formatTiles(gone), step, seat };
  // A number has one code: no signs of nothing stand at its end.
  return signsIn(formatProblemCode(item)) === signs.value.length ? success(item) : wrongCheck();
}

function anAnswer(): Result<never, Problem<'code-answer'>> {
  return failure('code-answer', 'This is the code of an answer: it goes to the answers of a class.');
}
