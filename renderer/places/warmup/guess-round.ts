import { isAwayRight, isLeanRight, isReachRight, type Truth } from '../../../core/warmup/estimate.ts';
import { GUESSED, type GuessEntry, type Guessed } from '../../../core/warmup/history.ts';
import { warmUpWords } from '../../words/warmup.ts';
import { today } from './answers.ts';

const words = warmUpWords.guess;
const MOST_AWAY = 14;

/** What was guessed of a deal, as typed, and how sure one is of each, 0 to 1. */
export interface GuessRound {
  readonly guesses: Readonly<Partial<Record<Guessed, string>>>;
  readonly sure: Readonly<Partial<Record<Guessed, number>>>;
}

export const NO_GUESSES: GuessRound = { guesses: {}, sure: {} };

/** What is missing or can't be, in a sentence; empty when the truth may be shown. */
export function guessTrouble({ guesses, sure }: GuessRound): string {
  const complete = GUESSED.every((what) => (guesses[what] ?? '').trim() !== '' && sure[what] !== undefined);
  if (!complete) return words.missing;
  const [away, reach] = [Number(guesses.away), Number(guesses.reach)];
  if (!Number.isInteger(away) || away < 0 || away > MOST_AWAY) return words.awayRange;
  return reach >= 0 && reach <= 100 ? '' : words.reachRange;
}

export function isGuessRight({ guesses }: GuessRound, what: Guessed, truth: Truth): boolean {
  const guess = guesses[what] ?? '';
  if (what === 'lean') return isLeanRight(guess, truth);
  return what === 'away' ? isAwayRight(Number(guess), truth) : isReachRight(Number(guess) / 100, truth);
}

/** What the history keeps of a round. */
export function guessEntries(round: GuessRound, truth: Truth): GuessEntry[] {
  return GUESSED.map((what) => ({
    type: 'guess',
    id: crypto.randomUUID(),
    day: today(),
    what,
    sure: round.sure[what] ?? 0,
    right: isGuessRight(round, what, truth),
  }));
}
