import { expectValue } from '../base/result.ts';
import { blindLimit, type ExchangeState, PASS_SIZE } from '../exchange/state.ts';
import type { PassStep } from '../exchange/steps.ts';
import type { PassSize } from '../plan/passes.ts';
import type { GaveEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import { handView } from '../game/hand-view.ts';
import { parseTiles } from '../tiles/text.ts';
import { type Choice, choiceOf, ranked } from './choices.ts';
import { type Decision, judge } from './decision.ts';
import { passChoices } from './pass-choices.ts';
import { whyParted } from './why.ts';
import { type Engine, worthOf } from './worth.ts';

const PASS_SIZES: readonly PassSize[] = [0, 1, 2, 3];

/**
 * Judges a pass on the rack before it. Where tiles may be handed on unseen, all numbers of own
 * tiles are choices; in a courtesy only passes of the number agreed on.
 */
export function judgePass(engine: Engine, before: GameState, event: GaveEvent, place: number): Decision {
  const given = expectValue(parseTiles(event.tiles));
  const choices = passesDue(engine, before, event.step, given.size);
  return judge(
    {
      place,
      kind: event.step === 'courtesy' ? 'courtesy' : 'pass',
      step: event.step,
      rack: before.rack,
      why: (taken, best, verdict) =>
        whyParted(engine.compiled, taken, best, verdict, targetAfter(engine, before, best)),
    },
    choices,
    choiceOf(choices, given) as Choice,
  );
}

/** Every pass that is a choice at a step, best first by its exact mean worth; `given`: how many were really given. */
export function passesDue(engine: Engine, before: GameState, step: PassStep, given: number): Choice[] {
  return ranked(sizesOf(before, step, given).flatMap((size) => passChoices(engine, handView(before), size)));
}

function sizesOf({ exchange }: GameState, step: PassStep, given: number): PassSize[] {
  if (step === 'courtesy') return PASS_SIZES.filter((size) => size === given);
  const blind = blindLimit(exchange as ExchangeState);
  return PASS_SIZES.filter((size) => size >= PASS_SIZE - blind);
}

/** The way that the rest of the hand aims at after a choice. */
export function targetAfter(engine: Engine, state: GameState, { tiles }: Pick<Choice, 'tiles'>): number | null {
  const view = handView(state);
  return worthOf(engine, { ...view, hand: view.hand.minus(tiles), gone: view.gone.plus(tiles) }).way;
}
