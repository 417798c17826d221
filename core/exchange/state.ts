import { failure, type Problem, type Result, success } from '../base/result.ts';
import { Tiles } from '../tiles/tiles.ts';
import { mayBeBlind, PASS_SIZE, PASS_STEPS, type PassSize, type PassStep, type Stop, STOPS } from './steps.ts';

/** A pass, possibly unfinished. */
export interface Pass {
  readonly step: PassStep;
  /** Tiles given from the own rack; those handed on unseen are not among them. */
  readonly given: Tiles;
  /** Tiles handed on unseen, 0 to 3. */
  readonly blind: number;
  /** Tiles that have come in so far. */
  readonly received: Tiles;
}

/**
 * The exchange as one player sees it. Steps come in the order of `PASS_STEPS`; each is a giving,
 * then a receiving, tile by tile if the player likes. See core/RULES.md for the numbered rules.
 */
export interface ExchangeState {
  readonly rack: Tiles;
  readonly phase: 'giving' | 'receiving' | 'over';
  /** The step now due; null when the exchange is over. */
  readonly step: PassStep | null;
  /** Tiles of this step that are still to come in; 0 unless receiving. */
  readonly toCome: number;
  readonly passes: readonly Pass[];
  /** What was stopped, oldest first. */
  readonly stops: readonly Stop[];
}

export type ExchangeCode =
  | 'wrong-count'
  | 'wrong-step'
  | 'still-to-come'
  | 'nothing-to-come'
  | 'joker-passed'
  | 'not-in-rack'
  | 'no-blind'
  | 'courtesy-count'
  | 'not-in-set'
  | 'no-stop'
  | 'stopped'
  | 'over';
export type ExchangeProblem = Problem<ExchangeCode>;

/** The exchange before its first pass; the dealer has 14 tiles, the others 13 (EX-1). */
export function startExchange(rack: Tiles): Result<ExchangeState, ExchangeProblem> {
  if (rack.size !== 13 && rack.size !== 14) {
    return failure('wrong-count', `These are ${rack.size} tiles, but a deal has 13, or 14 for East.`);
  }
  return success({ rack, phase: 'giving', step: 'right', toCome: 0, passes: [], stops: [] });
}

/** How many tiles may be handed on unseen at the step now due: 3 on the last pass of a round, else 0 (EX-6). */
export function blindLimit(state: ExchangeState): PassSize {
  return state.phase === 'giving' && mayBeBlind(state.step) ? PASS_SIZE : 0;
}

/**
 * The tiles given that are not among those still to come in this step: all of this pass, unless
 * they may be handed on unseen right round the table (EX-10).
 */
export function outOfReach(state: ExchangeState): Tiles {
  if (state.phase !== 'receiving' || mayBeBlind(state.step)) return Tiles.none;
  return (state.passes.at(-1) as Pass).given;
}

/** What may be stopped now, or null: the second round or the courtesy, before its first tile moves (EX-7, EX-8). */
export function stopDue(state: ExchangeState): Stop | null {
  if (state.phase !== 'giving') return null;
  return STOPS.find((stop) => stop === state.step) ?? null;
}

/** The step that follows; null after the courtesy. */
export function stepAfter(step: PassStep): PassStep | null {
  return PASS_STEPS[PASS_STEPS.indexOf(step) + 1] ?? null;
}

/** All tiles given so far from the own rack. */
export function givenTiles(state: ExchangeState): Tiles {
  return state.passes.reduce((sum, pass) => sum.plus(pass.given), Tiles.none);
}

/** The state with its current step ended and the next one due. */
export function advance(state: ExchangeState, next: PassStep | null): ExchangeState {
  return { ...state, phase: next === null ? 'over' : 'giving', step: next, toCome: 0 };
}
