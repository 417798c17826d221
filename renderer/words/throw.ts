import type { ThrowProgress } from '../../core/warmup/progress.ts';
import { differenceAlone, percent } from './numbers.ts';

/** Words of problems of play: what to throw while another has laid groups open. */
export const throwWords = {
  lead: 'A moment of a game: somebody has laid two groups open, and you have a tile to discard. What do you throw?',
  start: 'Show me a moment',
  finding: 'Playing games until there is such a moment…',
  failed: 'No such moment could be found.',
  question: 'What do you throw?',
  about: (seat: string, drawn: number) => `You sit ${seat}. ${drawn} tiles of the wall are drawn.`,
  others: 'Laid open',
  rack: 'Your rack',
  throwIt: 'Throw it',
  chooseFirst: 'Choose a tile',
  throwing: (tile: string) => `Throw the ${tile}`,
  working: 'Playing on from here to see what each tile costs…',
  right: 'No other tile was better.',
  costs: (games: string) => `That gave up about ${games} in 100.`,
  slips: {
    joker: 'That spent a joker.',
    heat: 'You win as often with it, but it was hotter than need be.',
  },
  thrown: (tile: string) => `You threw the ${tile}.`,
  list: 'What each tile costs',
  other: 'another choice',
  next: 'Another moment',
  done: (right: number, of: number) => `So far you threw as well as the best in ${right} of ${of}.`,
  progress: 'Tiles thrown',
  progressNone: 'No problem of play has been answered yet.',
  progressWords: ({ rate, meanCost }: ThrowProgress) =>
    `${rate.hits} of ${rate.of} were as good as the best (${percent(rate.low)} to ${percent(rate.high)}, 19 times in 20). On average each gave up ${differenceAlone(meanCost)} in 100.`,
};
