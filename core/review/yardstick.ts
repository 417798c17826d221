import { likelyDrawn } from '../game/stage.ts';
import type { GameState } from '../game/game-state.ts';
import type { HandView } from '../game/hand-view.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import { exposedCard } from '../reading/exposed.ts';
import { FIRST_TERMS, type ReachModel, reachModelOf, STAGE, type StageTerms, termsAt } from '../reading/reach-model.ts';
import { readKnown } from '../reading/reading.ts';

/** What a hand is measured with: a card and a model of reach. */
export interface Yardstick {
  readonly compiled: CompiledCard;
  readonly model: ReachModel;
}

/**
 * What a whole game is measured with: one card, and the terms of reach for every stage of play, as
 * at the Table. `at` gives the yardstick that holds in a state.
 */
export interface GameYardstick {
  readonly compiled: CompiledCard;
  readonly stages: StageTerms;
  /** Where the terms come from, in words. */
  readonly source: string;
  readonly at: (state: GameState) => Yardstick;
}

/** The terms that hold for any card until its own games have been simulated: the same at every stage. */
export const FIRST_STAGES: StageTerms = [FIRST_TERMS];

/** The yardstick of games with a card, by terms for its stages (at least one). */
export function gameYardstick(compiled: CompiledCard, stages: StageTerms): GameYardstick {
  const at = (state: GameState): Yardstick => ({
    compiled,
    model: reachModelOf(termsAt(stages, STAGE * Math.floor(likelyDrawn(state) / STAGE))),
  });
  return { compiled, stages, source: termsAt(stages, 0).source, at };
}

/** A way of a card, and how far away it is. */
export interface Aim {
  /** The card's ways that hold the groups laid open, with what they still need. */
  readonly compiled: CompiledCard;
  /** Its number in `compiled`. */
  readonly way: number;
  readonly away: number;
}

/** What a hand is worth: the reach of its best way. */
export interface Worth {
  /** From 0 to 1. */
  readonly value: number;
  /** That way; null when no way is left. */
  readonly aim: Aim | null;
}

/** The worth of a hand as one player knows it. */
export function worthOf({ compiled, model }: Yardstick, { exposed, ...known }: HandView): Worth {
  const left = exposedCard(compiled, exposed);
  const { reaches, aways } = readKnown(left, known, 0, model);
  let best = -1;
  let value = 0;
  for (let way = 0; way < left.wayCount; way += 1) {
    const reach = reaches[way] as number;
    if (reach <= value) continue;
    value = reach;
    best = way;
  }
  return { value, aim: best < 0 ? null : { compiled: left, way: best, away: aways[best] as number } };
}
