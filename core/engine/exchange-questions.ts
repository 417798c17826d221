import { failure, type Result, success } from '../base/result.ts';
import { silent, type Steps } from '../base/steps.ts';
import type { MarkedCard } from '../card/mark.ts';
import { mayBeBlind, PASS_SIZES } from '../exchange/steps.ts';
import { exchangeContest } from '../future/exchange-futures.ts';
import { gamesContest } from '../future/game-futures.ts';
import type { Position } from '../future/known-deal.ts';
import { passAdviceSteps } from '../future/pass-advice.ts';
import { rivalSteps } from '../future/rival-steps.ts';
import type { GiveChoice, PassChoice, RivalsRequest } from '../future/rivals.ts';
import { type ExchangeTerms, USUAL_GAME } from '../future/terms.ts';
import { passReasons } from '../plan/pass-reasons.ts';
import { optionFor, type PassPlan, planSteps } from '../plan/plan.ts';
import { type BlockSums, blockSteps, type Contest } from '../plan/race.ts';
import { weightsOf } from '../table/incoming-rates.ts';
import type { Known } from '../reading/known.ts';
import type { StageTerms } from '../reading/reach-model.ts';
import { readKnown } from '../reading/reading.ts';
import { targetsOf } from '../reading/targets.ts';
import type { Kind } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import { fitTerms } from '../table/reach-fit.ts';
import { readyCard } from './cards.ts';
import { type PassAdviceDocument, passAdviceDocument } from './documents.ts';
import { type Counts, type Moment, openMoment, type OpenMoment, positionOf } from './moment.ts';

/* The questions of a look ahead from the pass that is due, and what simulated games show of a card. */

export interface RivalsQuestion extends Moment, Pick<RivalsRequest, 'chosen' | 'size'> {
  /** Every pass of one number of tiles by the exact table, best first; where numbers compete, of all of them. */
  readonly passes: readonly (readonly Kind[])[];
}

/** The choices of the step that is due, which a race then compares, in the order in which equals stand. */
export function* rivals(request: RivalsQuestion): Steps<undefined, Result<readonly PassChoice[]>> {
  yield undefined;
  const moment = openMoment(request);
  if (!moment.ok) return moment;
  const { card, known, hands: model, said, step } = moment.value;
  if (step === null) return NO_PASS;
  const { passes, chosen = null, size } = request;
  const terms = { compiled: card.compiled, known, model, rates: said.rates ?? undefined };
  return success(yield* rivalSteps(terms, { step, passes, chosen, ...(size === undefined ? {} : { size }) }));
}

export interface ReasonsQuestion extends Moment {
  readonly choices: readonly PassChoice[];
}

/** Why each of some passes stands where it does, in sentences; none for a stop. See `passReasons`. */
export function* passReasonsFor(request: ReasonsQuestion): Steps<undefined, Result<readonly (readonly string[])[]>> {
  yield undefined;
  const moment = openMoment(request);
  if (!moment.ok) return moment;
  const { card, known, hands } = moment.value;
  const targets = targetsOf(readKnown(card.compiled, known, 0, hands));
  const { rack } = known;
  return success(
    request.choices.map((choice) => {
      if (choice.type === 'stop') return [];
      return passReasons({ give: choice.tiles.toSorted((one, other) => one - other), rack, targets, cost: 0 });
    }),
  );
}

export interface PassAdviceRequest extends Moment {
  /** A pass that is judged beside the best ones; refused where it can't be made. */
  readonly give?: Counts;
}

/** Advice on the pass that is due, as the window shows it: one list, the recommended choice first. */
export function* advisePass(request: PassAdviceRequest): Steps<undefined, Result<PassAdviceDocument>> {
  yield undefined;
  const moment = openMoment(request);
  if (!moment.ok) return moment;
  const position = positionOf(moment.value);
  if (!position.ok) return position;
  const { card, known, hands, chance: fit, said, step } = moment.value;
  if (step === null) return NO_PASS;
  const { rates = fit.table.incoming } = said;
  const weights = rates === null ? {} : { weights: weightsOf(rates, step, known) };
  const plans = [];
  for (const blind of mayBeBlind(step) ? PASS_SIZES : PASS_SIZES.slice(0, 1)) {
    plans.push(yield* silent(planSteps(card.compiled, known, step, { model: hands, blind, ...weights })));
  }
  const chosen = request.give === undefined ? null : givenIn(plans, known, Tiles.fromCounts(request.give));
  if (chosen?.ok === false) return chosen;
  const task = { card: card.table, position: position.value, known, model: hands, terms: termsOf(moment.value) };
  const list = yield* passAdviceSteps(chosen === null ? task : { ...task, chosen: chosen.value });
  return success(passAdviceDocument(step, list, plans, stoppedNow(moment.value)));
}

/** The pass in whichever plan holds it. */
function givenIn(plans: readonly PassPlan[], known: Known, give: Tiles): Result<GiveChoice> {
  const found = plans.map((plan) => optionFor(plan, known, give));
  const option = found.find(({ ok }) => ok) ?? found[0];
  if (option === undefined) throw new Error('a step without a plan');
  return option.ok ? success({ type: 'give', tiles: option.value.give }) : option;
}

/** The exact numbers of a rack that gives nothing and gets nothing. */
function stoppedNow({ card, known, hands }: OpenMoment): { readonly away: number; readonly reach: number } {
  const { away, reaches } = readKnown(card.compiled, known, 0, hands);
  return { away, reach: reaches.reduce((best, next) => Math.max(best, next), 0) };
}

const NO_PASS = failure('no-pass', 'No pass is due here: nothing is given next.');

/** How far a future goes: to the end of the exchange, or to the end of the game. */
export type Depth = 'exchange' | 'game';

export interface FuturesRequest extends Moment {
  readonly depth: Depth;
  readonly choices: readonly PassChoice[];
  readonly seed: number;
  readonly blockSize: number;
  readonly blocks: readonly number[];
  /** Places of the choices that are still in the race. */
  readonly alive: readonly number[];
}

/**
 * Futures of some blocks of a race, which any worker may count; progress is the number of futures
 * counted so far, of each choice.
 */
export function* futures(request: FuturesRequest): Steps<number | undefined, Result<readonly BlockSums[]>> {
  const moment = openMoment(request);
  if (!moment.ok) return moment;
  const position = positionOf(moment.value);
  if (!position.ok) return position;
  const contest = contestOf(moment.value, position.value, request);
  const sums: BlockSums[] = [];
  for (const block of request.blocks) {
    sums.push(yield* blockSteps(contest, request, block, request.alive));
    yield sums.length * request.blockSize;
  }
  return success(sums);
}

function contestOf(moment: OpenMoment, position: Position, { depth, choices }: FuturesRequest): Contest {
  const { card, said } = moment;
  if (depth === 'exchange') return exchangeContest(card.table, position, choices, termsOf(moment));
  const { offered = null } = said;
  const known = offered === null ? {} : { offered };
  return gamesContest(card.table, position, choices, { ...USUAL_GAME, ...known });
}

/** What is assumed of the rest of the exchange: the card's own rates, unless others are said. */
function termsOf({ chance: fit, said }: OpenMoment): ExchangeTerms {
  const { rates = fit.table.incoming, offered = null } = said;
  return { fit, ...(rates === null ? {} : { rates }), ...(offered === null ? {} : { offered }) };
}

/** Simulates games with a card, to learn how soon others win with it; progress is the part done, 0 to 1. */
export function* fit({ card }: { readonly card: MarkedCard }): Steps<number, Result<StageTerms>> {
  const ready = readyCard(card);
  if (!ready.ok) return ready;
  ready.value.stages ??= yield* fitTerms(ready.value.compiled);
  return success(ready.value.stages);
}
