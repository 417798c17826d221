import type { Figure } from '../plan/race.ts';

/** What is compared when the rest of the exchange is looked through: the chance to win and the least away when play begins. */
export const EXCHANGE_FIGURES: readonly Figure[] = [
  { name: 'chance', kind: 'mean', better: 'more' },
  { name: 'away', kind: 'mean', better: 'less' },
];

/** What is compared when whole games are played: games won, and the least away when play begins. */
export const GAME_FIGURES: readonly Figure[] = [
  { name: 'won', kind: 'share', better: 'more' },
  { name: 'away', kind: 'mean', better: 'less' },
];
