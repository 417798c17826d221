import { silent, type Steps } from '../base/steps.ts';
import { ownSizes, STEPS } from '../exchange/steps.ts';
import { connection, giftSteps } from '../plan/gift.ts';
import { bestOfSizes } from '../plan/pass-table.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import type { Known } from '../reading/known.ts';
import type { ReachModel } from '../reading/reach-model.ts';
import { type IncomingWeights, weightsOf } from '../table/incoming-rates.ts';
import type { Kind } from '../tiles/kinds.ts';
import { type PassChoice, type RivalsRequest, rivalsOf } from './rivals.ts';

/** What the choices of a step are found by. */
export interface RivalTerms {
  readonly compiled: CompiledCard;
  readonly known: Known;
  readonly model: ReachModel;
  /** What comes in; all tiles alike if left out. */
  readonly rates?: IncomingWeights | undefined;
}

/**
 * The choices of a step in the order in which equals stand: first what helps the receiver least, then what is least
 * connected, then as the exact table has them. Numbers of tiles that `passes` leaves out are added where they compete.
 */
export function* rivalSteps(
  { compiled, known, model, rates }: RivalTerms,
  request: RivalsRequest,
): Steps<undefined, PassChoice[]> {
  const { step, passes } = request;
  const missing = STEPS[step].mayBeBlind
    ? ownSizes(step).filter((size) => !passes.some(({ length }) => length === size))
    : [];
  const weights = rates && weightsOf(rates, step, known);
  const others = bestOfSizes(compiled, known, model, missing, weights);
  yield undefined;
  const choices = rivalsOf({ ...request, passes: [...passes, ...others] });
  const given = choices.map((choice) => (choice.type === 'give' ? choice.tiles : []));
  const gifts = yield* silent(giftSteps(compiled, known, given));
  const helps = gifts.map(({ mean }) => Math.round(mean / SAME_GIFT));
  return choices
    .map((choice, place) => ({ choice, place, help: helps[place] as number, tied: connection(given[place] as Kind[]) }))
    .sort((one, other) => one.help - other.help || one.tied - other.tied || one.place - other.place)
    .map(({ choice }) => choice);
}

/** Gifts that differ by less, in tiles, help their receivers alike. */
const SAME_GIFT = 0.05;
