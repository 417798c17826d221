/**
 * When to ask again. After a miss, or a first answer, the next day; after one, two, three right
 * answers on different days 10, 20, 30 % of the horizon, and no more. A plain rule without tuning.
 *
 * "10 to 30 %" is our own reading of Cepeda, Vul, Rohrer, Wixted and Pashler, "Spacing effects in
 * learning: a temporal ridgeline of optimal retention", Psychological Science 19 (2008), 1095-1102.
 * Its best gap falls from 20 to 40 % of a week to 5 to 10 % of a year; three months lie between.
 */
export interface SpacedAnswer {
  /** Whole days since any fixed day. */
  readonly day: number;
  readonly right: boolean;
}

/** The default horizon: "my next 3 months". */
export const HORIZON_DAYS = 90;

/** Days until the next question by the number of right answers in a row, the first answer not counted. */
export function gapAfter(rightInARow: number, horizonDays: number = HORIZON_DAYS): number {
  const tenths = Math.min(rightInARow, 3);
  return tenths === 0 ? 1 : Math.max(1, Math.round((horizonDays * tenths) / 10));
}

/** The day on which an item is due; undefined if it was never asked. Only the first answer of a day counts. */
export function dueDay(answers: readonly SpacedAnswer[], horizonDays: number = HORIZON_DAYS): number | undefined {
  const firsts = firstOfEachDay(answers);
  const last = firsts.at(-1);
  if (last === undefined) return undefined;
  const miss = firsts.findLastIndex(({ right }) => !right);
  return last.day + gapAfter(firsts.length - 1 - Math.max(miss, 0), horizonDays);
}

/** The first answer of each day, oldest first: only these show what was remembered. */
export function firstOfEachDay(answers: readonly SpacedAnswer[]): SpacedAnswer[] {
  const inOrder = [...answers].sort((one, other) => one.day - other.day);
  return inOrder.filter(({ day }, index) => inOrder[index - 1]?.day !== day);
}
