import { WALL_AT_START } from '../tiles/deal.ts';
import { type ReachModel, reachModelOf, STAGE } from './reach-model.ts';

/**
 * When the game ends for a player who does not win herself, for each ten tiles drawn: `fitTerms` (core/table/reach-fit.ts)
 * on the demo card, 800 games of four soft players.
 */
const ENDS: readonly (readonly number[])[] = [
  [32.9, 51.3, 63.6, 75.6, 94.1],
  [23.3, 41.4, 53.7, 65.6, 84.2],
  [15, 31.9, 44, 55.9, 74.3],
  [10.2, 24.1, 35.6, 47, 64.8],
  [7.7, 18.3, 28.3, 39.3, 55.8],
  [4.7, 13.6, 21.8, 32.4, 47],
  [3.9, 10, 17, 27.7, 38.4],
  [3.1, 7.8, 15.2, 24.4, 29],
  [2.7, 7.7, 13.6, 18.9, 19],
  [2.8, 6.7, 9, 9, 9],
];

/** The terms of the base model, one for each ten tiles drawn. */
export const BASE_STAGES = ENDS.map((ends, stage) => ({
  ends,
  wallLeft: WALL_AT_START - stage * STAGE,
  source: 'how soon others win: as with the demo card',
}));

/**
 * One model of reach for every card, at each stage of play. The chance reads best reach by it (core/chance/CHANCE.md,
 * CH-6), and the reach of a hand is made from it at the level of the card (hand-model.ts): a card's own terms bring
 * nothing once games with the card say how often it is won, and do harm on odd cards. It stays as it is: all that is
 * fitted to what it says would have to be fitted anew.
 */
export const BASE_MODELS: readonly ReachModel[] = BASE_STAGES.map(reachModelOf);

/** The place in `BASE_MODELS` once `drawn` tiles have been drawn by all seats. */
export function baseStageAt(drawn: number): number {
  return Math.min(BASE_STAGES.length - 1, Math.floor(drawn / STAGE));
}
