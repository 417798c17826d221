import { scaled } from '../base/steps.ts';
import { mayBeBlind, PASS_SIZES, type PassSize, type PassStep } from '../exchange/steps.ts';
import { type PassLesson, passLesson } from '../plan/pass-reasons.ts';
import { type PassOption, planSteps } from '../plan/plan.ts';
import type { Known } from '../reading/known.ts';
import { DEFAULT_DRAWS, type Reading, readKnown } from '../reading/reading.ts';
import { type Target, targetsOf } from '../reading/targets.ts';
import { type TileVerdict, tileVerdicts } from '../reading/verdicts.ts';
import { type Verdict, verdictOf } from '../review/decision.ts';
import type { Yardstick } from '../review/yardstick.ts';
import { type Turn, turnOf } from './turn.ts';

/** A pass, with how many of its three go unseen. */
export interface JudgedOption extends PassOption, PassLesson {
  readonly blind: PassSize;
  readonly verdict: Verdict;
}

/** The answer to one decision, as far as it is exact; what choices cost is for a race to tell. */
export interface Answer {
  readonly reading: Reading;
  /** Every pass, the most reach after it first. */
  readonly options: readonly JudgedOption[];
  /** What every tile of the rack is to the reading. */
  readonly tiles: readonly TileVerdict[];
  /** What else the rack could become. */
  readonly turn: Turn;
}

export interface AnswerRequest {
  readonly known: Known;
  readonly step: PassStep;
  /** What comes in; all tiles alike if left out. */
  readonly weights?: ArrayLike<number>;
}

/** Answers a decision in steps of a few milliseconds; yields the part done, 0 to 1. */
export function* answerSteps(yardstick: Yardstick, request: AnswerRequest): Generator<number, Answer> {
  const { known } = request;
  const reading = readKnown(yardstick.compiled, known, Math.min(DEFAULT_DRAWS, known.unseen.size), yardstick.model);
  const options = yield* optionSteps(yardstick, request, targetsOf(reading));
  return {
    reading,
    options,
    tiles: tileVerdicts(reading),
    turn: turnOf(reading),
  };
}

/** Where tiles may go unseen, every number of own tiles is a choice. */
function* optionSteps(
  { compiled, model }: Yardstick,
  { known, step, weights }: AnswerRequest,
  targets: readonly Target[],
): Generator<number, JudgedOption[]> {
  const blinds = mayBeBlind(step) ? PASS_SIZES : PASS_SIZES.slice(0, 1);
  const all: (PassOption & { blind: PassSize })[] = [];
  for (const [place, blind] of blinds.entries()) {
    const steps = planSteps(compiled, known, step, { model, blind, ...(weights === undefined ? {} : { weights }) });
    const plan = yield* scaled(steps, place / blinds.length, 1 / blinds.length);
    all.push(...plan.options.map((option) => ({ ...option, blind })));
  }
  const best = all.reduce((most, { reach }) => Math.max(most, reach), 0);
  return all
    .map((option) => ({
      ...option,
      ...passLesson({ give: option.give, rack: known.rack, targets }),
      cost: best - option.reach,
      verdict: verdictOf(best - option.reach),
    }))
    .sort((one, other) => one.cost - other.cost);
}
