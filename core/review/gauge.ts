import { likelyDrawn } from '../game/drawn.ts';
import type { GameState } from '../game/game-state.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import { FIRST_TERMS, reachModelFor } from '../reading/reach-model.ts';
import { STAGE, type StageTerms, termsAt } from '../reading/stage-terms.ts';
import { fitTerms } from '../table/reach-fit.ts';
import type { Engine } from './worth.ts';

/**
 * What a whole game is measured with: one card, and the terms of reach for every stage of play, as
 * at the Table. `at` gives the engine that holds in a state.
 */
export interface Gauge {
  readonly compiled: CompiledCard;
  readonly stages: StageTerms;
  /** Where the terms come from, in words. */
  readonly source: string;
  readonly at: (state: GameState) => Engine;
}

/** The terms that hold for any card before its own games have told: the same at every stage. */
export const FIRST_STAGES: StageTerms = [FIRST_TERMS];

/** The gauge of a card with terms for its stages (at least one). */
export function gaugeOf(compiled: CompiledCard, stages: StageTerms): Gauge {
  const engines = new Map<number, Engine>();
  const at = (state: GameState): Engine => {
    const stage = Math.min(stages.length - 1, Math.floor(likelyDrawn(state) / STAGE));
    const engine = engines.get(stage) ?? { compiled, model: reachModelFor(termsAt(stages, stage * STAGE)) };
    engines.set(stage, engine);
    return engine;
  };
  return { compiled, stages, source: termsAt(stages, 0).source, at };
}

/** The gauge of a card by its own simulated games: a second or two of counting, the part done with each step. */
export function* ownGaugeSteps(compiled: CompiledCard): Generator<number, Gauge, void> {
  return gaugeOf(compiled, yield* fitTerms(compiled));
}
