import { silent, type Steps } from '../base/steps.ts';
import { expectValue } from '../base/result.ts';
import { ownSizes, type PassSize, type PassStep, STEPS } from '../exchange/steps.ts';
import type { GaveEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import { handView } from '../game/hand-view.ts';
import { passReachSteps } from '../plan/pass-table.ts';
import type { Known } from '../reading/known.ts';
import { parseTiles } from '../tiles/text.ts';
import { Tiles } from '../tiles/tiles.ts';
import { type Choice, choiceOf, ranked } from './choices.ts';
import { type Decision, judge } from './decision.ts';
import { whyParted } from './why.ts';
import { type IncomingWeights, weightsOf } from '../table/incoming-rates.ts';
import { type Aim, worthOf, type Yardstick } from './yardstick.ts';

/** A pass that was due. */
interface DuePass {
  readonly step: PassStep;
  /** How many tiles were really given. */
  readonly given: number;
  /** What comes in; all tiles alike if null. */
  readonly rates: IncomingWeights | null;
}

/**
 * Every pass that is a choice at a step, best first by its exact mean worth: where tiles may be
 * handed on unseen all numbers of own tiles, in a courtesy only passes of the number agreed on.
 */
export function* passesDue(
  yardstick: Yardstick,
  before: GameState,
  { step, given, rates }: DuePass,
): Steps<undefined, readonly Choice[]> {
  const sizes = ownSizes(step).filter((size) => STEPS[step].size !== 'agreed' || size === given);
  const known = handView(before);
  const weights = rates === null ? null : weightsOf(rates, step, known);
  const choices: Choice[] = [];
  for (const size of sizes) choices.push(...(yield* passChoices(yardstick, known, size, weights)));
  return ranked(choices);
}

/** Every pass of `size` tiles, each with the exact mean worth of the hand over what may come in. */
function* passChoices(
  { compiled, model }: Yardstick,
  known: Known,
  size: PassSize,
  weights: ArrayLike<number> | null,
): Steps<undefined, Choice[]> {
  const { passes, reach } = yield* silent(passReachSteps(compiled, known, size, model, weights ?? undefined));
  return passes.map((kinds, place) => ({ tiles: Tiles.of(kinds), worth: reach[place] as number }));
}

/** Judges a pass on the rack before it; `choices`: all passes that were due, best first. */
export function judgePass(
  yardstick: Yardstick,
  before: GameState,
  event: GaveEvent,
  place: number,
  choices: readonly Choice[],
): Decision {
  const given = expectValue(parseTiles(event.tiles));
  return judge(
    {
      place,
      kind: event.step === 'courtesy' ? 'courtesy' : 'pass',
      step: event.step,
      rack: before.rack,
      why: (taken, best, verdict) =>
        whyParted(taken, best, verdict, { act: 'giving', rack: before.rack, aim: aimAfter(yardstick, before, best) }),
    },
    choices,
    choiceOf(choices, given) as Choice,
  );
}

/** What the rest of the hand aims at after a choice. */
export function aimAfter(yardstick: Yardstick, state: GameState, { tiles }: Pick<Choice, 'tiles'>): Aim | null {
  const view = handView(state);
  return worthOf(yardstick, { ...view, rack: view.rack.minus(tiles), gone: view.gone.plus(tiles) }).aim;
}
