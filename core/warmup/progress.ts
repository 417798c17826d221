import { type Rate, rateOf } from '../base/statistics.ts';
import { isRight } from '../review/decision.ts';
import type { DealKind } from './deal-kinds.ts';
import type { AnswerEntry, MissEntry, PracticeEntry, ThrowEntry } from './history-file.ts';
import { decisionKey, givenUp, type Phase, phaseOf } from './history.ts';

/** How practice goes, on first attempts after at least a day and on nothing else (CR-R7). */
export interface Progress {
  readonly all: Rate;
  /** The older and the newer half of those attempts; only from `FEWEST_FOR_TREND` on, else null (CR-G6). */
  readonly halves: { readonly older: Rate; readonly newer: Rate } | null;
  /** Kinds of decision, those that cost most in all first. */
  readonly kinds: readonly KindCost[];
}

export interface KindCost {
  readonly phase: Phase;
  readonly kind: DealKind;
  /** Decisions of this kind, right ones too. */
  readonly decisions: number;
  /** What was given up in all. */
  readonly cost: number;
  /** Right first attempts after at least a day. */
  readonly rate: Rate;
}

/** No change is stated on fewer attempts than this. */
export const FEWEST_FOR_TREND = 30;

export function progressOf(history: readonly PracticeEntry[]): Progress {
  const firsts = firstAttempts(history);
  const half = Math.floor(firsts.length / 2);
  const halves =
    firsts.length < FEWEST_FOR_TREND
      ? null
      : { older: rightRate(firsts.slice(0, half)), newer: rightRate(firsts.slice(half)) };
  return { all: rightRate(firsts), halves, kinds: kindCosts(history, firsts) };
}

/**
 * Answers that show what was remembered: the first to a miss on a day, at least a day after the
 * miss or the answer before.
 */
export function firstAttempts(history: readonly PracticeEntry[]): AnswerEntry[] {
  const lastDay = new Map<string, number>();
  const firsts: AnswerEntry[] = [];
  for (const entry of history) {
    if (entry.type === 'miss') lastDay.set(entry.id, entry.day);
    if (entry.type !== 'answer' || entry.miss === null) continue;
    const before = lastDay.get(entry.miss);
    if (before !== undefined && entry.day > before) firsts.push(entry);
    lastDay.set(entry.miss, Math.max(before ?? entry.day, entry.day));
  }
  return firsts;
}

function rightRate(answers: readonly AnswerEntry[]): Rate {
  return rateOf(answers.filter(({ verdict }) => isRight(verdict)).length, answers.length);
}

function kindCosts(history: readonly PracticeEntry[], firsts: readonly AnswerEntry[]): KindCost[] {
  const decisions = history.filter(
    (entry): entry is AnswerEntry | MissEntry =>
      entry.type === 'answer' || (entry.type === 'miss' && entry.source !== PRACTICE),
  );
  const keys = [...new Set(decisions.map(decisionKey))];
  return keys
    .map((key) => {
      const mine = decisions.filter((each) => decisionKey(each) === key);
      const [first] = mine as [AnswerEntry | MissEntry];
      return {
        phase: phaseOf(first.step),
        kind: first.kind,
        decisions: mine.length,
        cost: mine.reduce((sum, each) => sum + (each.type === 'answer' ? givenUp(each) : each.cost), 0),
        rate: rightRate(firsts.filter((each) => decisionKey(each) === key)),
      };
    })
    .sort((one, other) => other.cost - one.cost);
}

/** How throws of problems of play went: how many were as good as the best, and what they gave up in the mean. */
export interface ThrowProgress {
  readonly rate: Rate;
  /** As a part of the chance to win. */
  readonly meanCost: number;
}

export function throwProgress(history: readonly PracticeEntry[]): ThrowProgress {
  const thrown = history.filter((entry): entry is ThrowEntry => entry.type === 'throw');
  const right = thrown.filter(({ verdict }) => isRight(verdict)).length;
  const cost = thrown.reduce((sum, each) => sum + givenUp(each), 0);
  return { rate: rateOf(right, thrown.length), meanCost: thrown.length === 0 ? 0 : cost / thrown.length };
}

/** The source of a miss made in practice; its answer is counted already. */
export const PRACTICE = 'warm-up';
