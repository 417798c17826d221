import { type Rate, rateOf } from '../base/statistics.ts';
import { meanOf } from '../base/intervals.ts';
import { isRight } from '../review/decision.ts';
import type { AnswerEntry, PracticeEntry } from './history-file.ts';
import { givenUp } from './history.ts';

/** What was answered in practice in one week. */
export interface PracticeWeek {
  /** Its Monday, in whole local days since 1970. */
  readonly monday: number;
  readonly right: Rate;
  /** Chance to win given up at one decision on average, 0 to 1. */
  readonly cost: number;
  /** Half of the 95% interval of that mean; null on too few decisions. */
  readonly halfWidth: number | null;
}

const WEEK = 7;

/** The weeks with answers, oldest first. */
export function weeksOf(history: readonly PracticeEntry[]): PracticeWeek[] {
  const answers = history.filter((entry): entry is AnswerEntry => entry.type === 'answer');
  const mondays = [...new Set(answers.map(({ day }) => mondayOf(day)))].sort((one, other) => one - other);
  return mondays.map((monday) => {
    const mine = answers.filter(({ day }) => mondayOf(day) === monday);
    const right = rateOf(mine.filter(({ verdict }) => isRight(verdict)).length, mine.length);
    const { mean, interval } = meanOf(mine.map(givenUp));
    return { monday, right, cost: mean ?? 0, halfWidth: interval === null ? null : (interval.high - interval.low) / 2 };
  });
}

/** The first of January 1970 was a Thursday. */
export function mondayOf(day: number): number {
  return day - ((day + 3) % WEEK);
}
