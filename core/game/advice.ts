/**
 * When advice is shown at the Table, from the least aid to the most: not at all, once the player has chosen,
 * or at once.
 */
export const ADVICE_TIMES = ['none', 'after-choice', 'at-once'] as const;
export type AdviceTime = (typeof ADVICE_TIMES)[number];

/** What holds until a person chooses. */
export const USUAL_ADVICE: AdviceTime = 'at-once';

/** The one with more aid. */
export function moreAdvice(one: AdviceTime, other: AdviceTime): AdviceTime {
  return ADVICE_TIMES.indexOf(one) > ADVICE_TIMES.indexOf(other) ? one : other;
}
