import { type Rate, rateOf } from '../base/statistics.ts';
import type { GuessEntry, PracticeEntry } from './history-file.ts';
import { GUESSED, type Guessed } from './history.ts';

/** How sure one can say to be, from 0 to 1. */
export const SURENESS = [0.5, 0.7, 0.9, 0.99] as const;

/** A guessed reach is right within so much of the true one: five games in a hundred. */
const REACH_WITHIN = 0.05;

/**
 * Brier's score of forecasts (G. W. Brier, "Verification of forecasts expressed in terms of
 * probability", Monthly Weather Review 78 (1950), 1-3): the mean over the occasions of the sum over
 * the classes of (f - E)², where f is the chance that was forecast for a class and E is 1 for the
 * class that occurred and 0 for the others. 0 is perfect, 2 the worst. Null without forecasts.
 */
export function brierScore(
  forecasts: readonly { readonly chances: readonly number[]; readonly occurred: number }[],
): number | null {
  if (forecasts.length === 0) return null;
  const sum = forecasts.reduce((total, { chances, occurred }) => {
    return total + chances.reduce((part, chance, place) => part + (chance - (place === occurred ? 1 : 0)) ** 2, 0);
  }, 0);
  return sum / forecasts.length;
}

/** One step of sureness: how often guesses said to be so sure were right. */
interface SureStep {
  readonly sure: number;
  readonly rate: Rate;
}

/** How well the guesses of one sort, or of all, fit how sure one was. */
export interface Calibration {
  readonly what: Guessed | 'all';
  readonly guesses: number;
  /** Brier's score with the two classes right and wrong; null without guesses. */
  readonly score: number | null;
  readonly steps: readonly SureStep[];
}

/** The calibration of all guesses, then of each sort. */
export function calibrationsOf(history: readonly PracticeEntry[]): Calibration[] {
  const guesses = history.filter((entry): entry is GuessEntry => entry.type === 'guess');
  return [
    calibrationOf('all', guesses),
    ...GUESSED.map((what) =>
      calibrationOf(
        what,
        guesses.filter((each) => each.what === what),
      ),
    ),
  ];
}

function calibrationOf(what: Guessed | 'all', guesses: readonly GuessEntry[]): Calibration {
  const forecasts = guesses.map(({ sure, right }) => ({ chances: [sure, 1 - sure], occurred: right ? 0 : 1 }));
  const said = [...new Set([...SURENESS, ...guesses.map(({ sure }) => sure)])].sort((one, other) => one - other);
  const steps = said.map((sure) => {
    const mine = guesses.filter((guess) => guess.sure === sure);
    return { sure, rate: rateOf(mine.filter(({ right }) => right).length, mine.length) };
  });
  return {
    what,
    guesses: guesses.length,
    score: brierScore(forecasts),
    steps: steps.filter(({ rate }) => rate.of > 0),
  };
}

/** The course over time: the score of every `size` guesses in order, the last ones maybe fewer. */
export function scoreCourse(history: readonly PracticeEntry[], size = 10): number[] {
  const guesses = history.filter((entry): entry is GuessEntry => entry.type === 'guess');
  const scores: number[] = [];
  for (let from = 0; from < guesses.length; from += size) {
    scores.push(calibrationOf('all', guesses.slice(from, from + size)).score as number);
  }
  return scores;
}

/** The truth that a round of guesses is held against. */
export interface Truth {
  readonly away: number;
  /** Sections whose share of the lean is the largest; several when they tie. */
  readonly leaders: readonly string[];
  readonly reach: number;
}

export function isAwayRight(guess: number, { away }: Truth): boolean {
  return guess === away;
}

export function isLeanRight(section: string, { leaders }: Truth): boolean {
  return leaders.includes(section);
}

/** `guess` from 0 to 1. */
export function isReachRight(guess: number, { reach }: Truth): boolean {
  return Math.abs(guess - reach) <= REACH_WITHIN;
}
