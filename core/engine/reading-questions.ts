import { failure, type Result, success } from '../base/result.ts';
import type { Steps } from '../base/steps.ts';
import type { MarkedCard } from '../card/mark.ts';
import type { Seat } from '../exchange/steps.ts';
import { deadSeats, wouldDie } from '../game/dead-hands.ts';
import type { EndedEvent } from '../game/events.ts';
import type { Exposure } from '../game/game-state.ts';
import type { PointRules } from '../game/point-rules.ts';
import { isPairsOnly, type Payments, paymentsOf } from '../game/points.ts';
import { optionFor, type PlanBy, planSteps } from '../plan/plan.ts';
import { DEFAULT_DRAWS, readKnown } from '../reading/reading.ts';
import { playChoices } from '../review/play-choices.ts';
import { weightsOf } from '../table/incoming-rates.ts';
import { Tiles } from '../tiles/tiles.ts';
import { readyCard } from './cards.ts';
import {
  type AdviceDocument,
  adviceDocument,
  type PlanDocument,
  planDocument,
  type ReadingDocument,
  readingDocument,
  type TilesDocument,
  tilesDocument,
  type WayList,
} from './documents.ts';
import { type Counts, type Moment, openMoment } from './moment.ts';

/*
 * The questions of a hand: what it can become, what to pass and to discard. They are loaded with
 * the first worker, since a person waits for them.
 */

export interface ReadRequest extends Moment {
  /** Draws that draw reach looks ahead; 20, or as many as are unseen. */
  readonly draws?: number;
  /** Lists ways instead of the best of each line. */
  readonly list?: WayList;
}

/** The hands come first, as progress; what each tile is worth is the answer. */
export function* read(request: ReadRequest): Steps<ReadingDocument, Result<TilesDocument>> {
  const moment = openMoment(request);
  if (!moment.ok) return moment;
  const { ways, known, hands } = moment.value;
  const draws = Math.min(request.draws ?? DEFAULT_DRAWS, known.unseen.size);
  const reading = readKnown(ways, known, draws, hands);
  yield readingDocument(reading, request.list);
  return success(tilesDocument(reading));
}

export interface PlanRequest extends Moment {
  /** What passes are ranked by; reach unless given. */
  readonly by?: PlanBy;
  /** Plans this pass alone; refused where it can't be made. */
  readonly give?: Counts;
}

/** Every pass of the step that is due; progress is the part done, 0 to 1. */
export function* plan(request: PlanRequest): Steps<number, Result<PlanDocument>> {
  const moment = openMoment(request);
  if (!moment.ok) return moment;
  const { card, known, hands: model, step, said } = moment.value;
  if (step === null) return failure('no-pass', 'No pass is due here: there is nothing to plan.');
  const { blind = 0, rates = null } = said;
  const weights = rates === null ? {} : { weights: weightsOf(rates, step, known) };
  const by = request.by ?? 'reach';
  const passes = yield* planSteps(card.compiled, known, step, { blind, model, by, ...weights });
  if (request.give === undefined) return success(planDocument(step, passes.options, rates));
  const option = optionFor(passes, known, Tiles.fromCounts(request.give));
  return option.ok ? success(planDocument(step, [option.value], rates)) : option;
}

/** All that can be done now in play, in the order of the ranking; what each thing costs is for `playGames` to tell. */
export function* advise(request: Moment): Steps<undefined, Result<AdviceDocument>> {
  const moment = openMoment(request);
  if (!moment.ok) return moment;
  const { card, chance, state, said } = moment.value;
  if (state === null || !('events' in request.at)) {
    return failure('no-game', 'Advice on a discard needs the game so far: enter its events.');
  }
  const measure = { table: card.table, chance, swapAfterCall: said.swapAfterCall };
  return success(adviceDocument(yield* playChoices(measure, state, request.at.events), chance));
}

export interface DeadRequest {
  readonly card: MarkedCard;
  readonly exposures: readonly Exposure[];
}

/** The seats whose hands are dead by the groups that they have laid open. */
export function* dead({ card, exposures }: DeadRequest): Steps<undefined, Result<readonly Seat[]>> {
  yield undefined;
  const ready = readyCard(card);
  return ready.ok ? success(deadSeats(ready.value.file.card, { exposures })) : ready;
}

export interface DeadlyRequest extends DeadRequest {
  /** What is to be laid open. */
  readonly group: Exposure;
}

/** Whether laying a group open makes that seat's hand dead. */
export function* deadly({ card, exposures, group }: DeadlyRequest): Steps<undefined, Result<boolean>> {
  yield undefined;
  const ready = readyCard(card);
  return ready.ok ? success(wouldDie(ready.value.file.card, { exposures }, group)) : ready;
}

/** A line as it is named in a result. */
export interface LineDocument {
  readonly id: string;
  readonly name: string;
  readonly section: string;
  readonly points: number;
  /** True for a hand of only singles and pairs, which holds no joker. */
  readonly pairsOnly: boolean;
}

/** The lines of a card, for a result. */
export function* lines({ card }: { readonly card: MarkedCard }): Steps<undefined, Result<readonly LineDocument[]>> {
  yield undefined;
  const ready = readyCard(card);
  if (!ready.ok) return ready;
  return success(
    ready.value.compiled.lines.map((line) => {
      const { id, name, section, points } = line;
      return { id, name, section, points, pairsOnly: isPairsOnly(line) };
    }),
  );
}

export interface SettleRequest {
  readonly card: MarkedCard;
  readonly result: EndedEvent;
  readonly rules: PointRules;
}

/** Who pays what. */
export function* settle({ card, result, rules }: SettleRequest): Steps<undefined, Result<Payments>> {
  yield undefined;
  const ready = readyCard(card);
  return ready.ok ? paymentsOf(result, ready.value.file.card, rules) : ready;
}
