import { type Decision, isRight } from '../../../core/review/decision.ts';
import { judgementOf } from '../../../core/review/judgement.ts';
import { lookbackWords } from '../../words/lookback.ts';

const words = lookbackWords.choices;

/** What was decided: "First pass across", "Discard". */
export function decisionName({ kind, step }: Decision): string {
  return step === null || kind === 'second-round' ? words.kinds[kind] : words.steps[step];
}

/** True if two are the same choice of a game, whatever has been found out about it since. */
export function isSameChoice(one: Decision | undefined, other: Decision): boolean {
  return one?.place === other.place && one.kind === other.kind;
}

/** The verdict; that of a choice of the exchange is one for now until it was looked ahead to its end. */
export function verdictWords(decision: Decision): string {
  if (decision.forced) return words.forced;
  const verdict = words.verdicts[judgementOf(decision).verdict];
  return decision.step !== null && decision.ahead === null ? words.forNow(verdict) : verdict;
}

/** True if a choice cost more than what counts as equal. */
export function isCostly(decision: Decision): boolean {
  return !isRight(judgementOf(decision).verdict);
}

/** The choices for one page of paper: those of the exchange, and the costliest few of the play. */
export function forPaper(decisions: readonly Decision[]): Decision[] {
  const worst = decisions
    .filter((each) => each.step === null && isCostly(each))
    .sort((one, other) => other.cost - one.cost)
    .slice(0, MOST_OF_PLAY);
  return decisions.filter((each) => each.step !== null || worst.includes(each));
}

const MOST_OF_PLAY = 3;
