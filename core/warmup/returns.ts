import { dueDay, firstOfEachDay, HORIZON_DAYS, type SpacedAnswer } from '../base/spacing.ts';
import { isRight } from '../review/decision.ts';
import type { AnswerEntry, MissEntry, PracticeEntry } from './history-file.ts';

/** The most own misses that wait; the costliest ones, so that missed days never pile up (CR-R6). */
export const MOST_WAITING = 20;

/** An own decision that cost something, with when it comes back and why then. */
export interface Return {
  readonly miss: MissEntry;
  /** Whole local days since 1970. */
  readonly due: number;
  /** Right answers in a row on different days, the last ones; 0 after the miss itself, or after another. */
  readonly rightInARow: number;
}

export interface ReturnsRequest {
  readonly history: readonly PracticeEntry[];
  readonly horizonDays?: number;
}

/** All own misses with the days on which they come back, the next ones first, of one day the costliest. */
export function returnsOf({ history, horizonDays = HORIZON_DAYS }: ReturnsRequest): Return[] {
  return history
    .filter((entry): entry is MissEntry => entry.type === 'miss')
    .map((miss) => {
      const answers = answersTo(miss, history);
      return { miss, due: dueDay(answers, horizonDays) as number, rightInARow: rightAtEnd(answers) };
    })
    .sort((one, other) => one.due - other.due || other.miss.cost - one.miss.cost);
}

/** Own misses that are due, costliest first, at most `MOST_WAITING`. */
export function dueMisses({ today, ...request }: ReturnsRequest & { readonly today: number }): MissEntry[] {
  return returnsOf(request)
    .filter(({ due }) => due <= today)
    .map(({ miss }) => miss)
    .sort((one, other) => other.cost - one.cost || one.day - other.day)
    .slice(0, MOST_WAITING);
}

/** Making the miss counts as its first answer. */
function answersTo(miss: MissEntry, history: readonly PracticeEntry[]): SpacedAnswer[] {
  const later = history.filter((entry): entry is AnswerEntry => entry.type === 'answer' && entry.miss === miss.id);
  return [{ day: miss.day, right: false }, ...later.map(({ day, verdict }) => ({ day, right: isRight(verdict) }))];
}

function rightAtEnd(answers: readonly SpacedAnswer[]): number {
  const firsts = firstOfEachDay(answers);
  return firsts.length - 1 - firsts.findLastIndex(({ right }) => !right);
}
