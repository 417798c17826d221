import type { Verdict } from '../../core/review/decision.ts';
import type { DealKind } from '../../core/warmup/deal-kinds.ts';
import type { Guessed } from '../../core/warmup/history.ts';
import { differenceInGames } from './numbers.ts';

/** Words of the Warm-up. */
export const warmUpWords = {
  title: 'Warm-up',
  views: { practise: 'Practise', throw: 'Throw', guess: 'Guess', sheets: 'Sheets', progress: 'Progress' },
  viewsLabel: 'Ways to practise',
  failed: 'This could not be worked out.',
  badAddress: 'This link names no problem: start one here instead.',
  card: (title: string) => `Card: ${title}`,

  kinds: {
    any: 'Any deal',
    pair: 'With a pair',
    pung: 'With a pung',
    scattered: 'Nothing repeats',
    'no-joker': 'No joker',
    'one-joker': 'One joker',
    'two-jokers': 'Two jokers',
    'three-jokers': 'Three jokers',
    'four-jokers': 'Four jokers',
    flowers: 'Three flowers or more',
    'two-ways': 'Could go two ways',
    close: 'A close decision',
  } satisfies Record<DealKind, string>,

  /** What a choice costs, in words: its size, or that it was right. */
  verdict: (verdict: Verdict, cost: number) => {
    if (verdict === 'best') return 'Nothing is better';
    return verdict === 'equal' ? 'As good as the best' : `About ${differenceInGames(cost)}`;
  },

  /** A cost with half of its interval. */
  within: (points: string, half: string) => `${points}, give or take ${half}`,

  run: {
    gone: 'Given away before',
    rack: 'Your rack',
  },

  ahead: { cell: (points: string, half: string) => `${points} ± ${half}` },

  answer: {
    waiting: '…',
    lean: 'Lean',
    blindNote: (count: number) => `and ${count} unseen`,
  },

  ledger: {
    title: 'The exchange in figures',
    lead: 'Your chance to win, about, in games of a hundred. The parts add up to the end. Choices count against those of a steady player.',
    start: 'A deal on average',
    end: 'At the end of the exchange',
    pending: 'Adding it up…',
    passes: 'Your choices',
    stopped: 'stopped',
  },

  guess: {
    lead: 'Guess before you look. Then you see how often you are right when you feel sure.',
    start: 'Deal',
    away: 'How many tiles away is the nearest hand?',
    lean: 'Which section leads?',
    reach: 'How many games of a hundred does the best hand win?',
    reachHint: 'Right within five.',
    sure: 'How sure are you?',
    said: (guess: string, sure: string) => `You said ${guess}, sure: ${sure}.`,
    sureWords: (sure: number) => (sure === 0.5 ? 'Half' : `${Math.round(sure * 100)} %`),
    show: 'Show',
    missing: 'Answer all three, and how sure you are.',
    awayRange: 'Tiles away are a whole number from 0 to 14.',
    reachRange: 'Games of a hundred are a number from 0 to 100.',
    right: 'Right',
    wrong: 'Not quite',
    truthAway: (away: number) => `The nearest hand is ${away} away.`,
    truthLean: (names: string) => `${names} leads.`,
    truthReach: (percent: string) => `The best hand has a reach of ${percent}.`,
    another: 'Another one',
  },

  progress: {
    title: 'Progress',
    firsts: 'First answers after a day or more',
    none: 'Nothing to show yet. It counts from your second day of practice on.',
    right: (hits: number, of: number) => `${hits} of ${of} right`,
    interval: (low: string, high: string) => `The true share is most likely between ${low} and ${high}.`,
    halves: (older: string, newer: string) => `Older half ${older}, newer half ${newer}.`,
    noTrend: 'No change is stated on fewer than 30 answers.',
    kinds: 'What costs you most',
    kindsNone: 'Practise a few problems first.',
    kind: 'Kind of decision',
    decisions: 'Decisions',
    rate: 'Right after a day',
    guesses: 'Your guesses',
    guessesNone: 'Guess a few deals first.',
    sure: 'Said to be sure',
    came: 'Came true',
    what: { all: 'All', away: 'Away', lean: 'Lean', reach: 'Reach' } satisfies Record<Guessed | 'all', string>,
    sort: 'Guess',
    score: (score: string) => `Your score is ${score}. 0 is perfect, 0.5 is tossing a coin, 2 is the worst.`,
    scoreSource: 'It is the rule of Brier, 1950: being sure and wrong costs most.',
    course: 'Score of every ten guesses, oldest first',
    due: (count: number) =>
      `${count === 1 ? '1 of your own decisions comes' : `${count} of your own decisions come`} back today.`,
  },
};
