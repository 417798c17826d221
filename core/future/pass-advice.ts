import { silent, type Steps } from '../base/steps.ts';
import { ownSizes, PASS_SIZE, type PassSize, STEPS } from '../exchange/steps.ts';
import { passReachSteps } from '../plan/pass-table.ts';
import { type RaceRule, USUAL_RULE } from '../plan/race.ts';
import { type RaceResult, raceSteps, rankedPlaces, type Standing } from '../plan/race-run.ts';
import type { Known } from '../reading/known.ts';
import { FIRST_REACH_MODEL, type ReachModel } from '../reading/reach-model.ts';
import { weightsOf } from '../table/incoming-rates.ts';
import type { TableCard } from '../table/table-card.ts';
import type { Kind } from '../tiles/kinds.ts';
import { exchangeContest } from './exchange-futures.ts';
import type { Position } from './known-deal.ts';
import { rivalSteps } from './rival-steps.ts';
import type { PassChoice } from './rivals.ts';
import type { ExchangeTerms } from './terms.ts';

/** A decision of the exchange for which advice is asked. */
export interface AdviceTask {
  readonly card: TableCard;
  readonly position: Position;
  readonly known: Known;
  readonly terms: ExchangeTerms;
  readonly model?: ReachModel;
  /** A choice that is judged, whether it is among the best or not. */
  readonly chosen?: PassChoice;
  /** False where going on with the second round was decided before. */
  readonly mayStop?: boolean;
  readonly rule?: RaceRule;
}

/** One choice of the list. */
export interface AdvisedChoice {
  readonly choice: PassChoice;
  /** The chance to win when play begins. */
  readonly chance: number;
  /** What it costs against the first of the list, in whole games of a hundred; 0 for what is about the same. */
  readonly costs: number;
  /** The standard error of that difference, in games of a hundred. */
  readonly error: number;
  readonly verdict: Standing['verdict'];
}

/**
 * Advice on a step, as the window shows it: the best passes of the exact table, where they compete other numbers of
 * tiles and the stop, compared by the rest of the exchange. One list, the recommended choice first.
 */
export function* passAdviceSteps(task: AdviceTask): Steps<undefined, AdvisedChoice[]> {
  const { card, position, known, terms, model = FIRST_REACH_MODEL, chosen = null, mayStop = true } = task;
  const { step } = position.exchange;
  if (step === null) throw new Error('advice where no pass is due');
  const { rates } = terms;
  const weights = rates && weightsOf(rates, step, known);
  const sizes: readonly PassSize[] = STEPS[step].size === 'agreed' ? ownSizes(step) : [PASS_SIZE];
  const ranked: { readonly tiles: readonly Kind[]; readonly reach: number }[] = [];
  for (const size of sizes) {
    const { passes, reach } = yield* silent(passReachSteps(card.compiled, known, size, model, weights));
    ranked.push(...passes.map((tiles, place) => ({ tiles, reach: reach[place] as number })));
  }
  ranked.sort((one, other) => other.reach - one.reach);
  const request = { step, passes: ranked.map(({ tiles }) => tiles), chosen, mayStop };
  const choices = yield* rivalSteps({ compiled: card.compiled, known, model, rates }, request);
  const result = yield* silent(raceSteps(exchangeContest(card, position, choices, terms), task.rule ?? USUAL_RULE));
  return adviceOf(choices, result);
}

/** The list that a race of choices makes: the best first, then what is a tie with it, then the others by what they cost. */
function adviceOf(choices: readonly PassChoice[], result: RaceResult): AdvisedChoice[] {
  return rankedPlaces(result).map((place) => {
    const { deciding, verdict } = result.standings[place] as Standing;
    const costs = verdict === 'costs' ? Math.round(100 * deciding.loss.mean) : 0;
    const { mean: chance } = deciding.value;
    return { choice: choices[place] as PassChoice, chance, costs, error: 100 * deciding.loss.error, verdict };
  });
}
