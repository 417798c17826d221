import type { ReachTerms } from './reach-model.ts';

/** For each ten tiles drawn from the wall the terms of the model that holds from then on. */
export type StageTerms = readonly ReachTerms[];

/** Tiles drawn in a stage of play. */
export const STAGE = 10;

/** The terms that hold once so many tiles have been drawn from the wall by all seats. */
export function termsAt(stages: StageTerms, drawn: number): ReachTerms {
  return stages[Math.min(stages.length - 1, Math.floor(drawn / STAGE))] as ReachTerms;
}
