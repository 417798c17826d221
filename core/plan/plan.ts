import { failure, type Problem, type Result, success } from '../base/result.ts';
import { finish } from '../base/steps.ts';
import { mayBePassed, ownSizes, PASS_SIZE, type PassSize, type PassStep, STEPS } from '../exchange/steps.ts';
import { NEVER_PASSED } from '../exchange/words.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import type { Known } from '../reading/known.ts';
import { FIRST_REACH_MODEL, type ReachModel } from '../reading/reach-model.ts';
import { readKnown } from '../reading/reading.ts';
import { targetsOf } from '../reading/targets.ts';
import { codeOf, type Kind } from '../tiles/kinds.ts';
import { nameOf } from '../tiles/names.ts';
import { Tiles } from '../tiles/tiles.ts';
import { type Gift, giftSteps } from './gift.ts';
import { passReasons } from './pass-reasons.ts';
import { type PassTable, passTableSteps } from './pass-table.ts';

/** Exact means over what may come in. */
export interface PassNumbers {
  /** The mean of the smallest away after giving and receiving. */
  readonly expectedAway: number;
  /** The mean of the best reach after giving and receiving. */
  readonly reach: number;
  /** Reach given up against the best pass; 0 for the best. */
  readonly cost: number;
}

/** One way to pass, with its exact numbers. */
export interface PassOption extends PassNumbers {
  /** Kinds rising. */
  readonly give: readonly Kind[];
  /** Its numbers if all unseen tiles were as likely to come in; the same ones where they are. */
  readonly even: PassNumbers;
  /** How much the pass is expected to help its receiver, in tiles. */
  readonly gift: Gift;
  /** Why, for a player; short sentences. */
  readonly reasons: readonly string[];
}

/** All passes of one step, ranked. */
export interface PassPlan {
  readonly step: PassStep;
  readonly options: readonly PassOption[];
}

export type PlanBy = 'reach' | 'expectedAway';
export type PlanCode = 'not-in-rack' | 'joker-passed' | 'pass-size';

export interface PlanOptions {
  readonly model?: ReachModel;
  readonly by?: PlanBy;
  /** Tiles handed on blind, so that fewer are given and received by choice; 0 to 3. */
  readonly blind?: PassSize;
  /** 36 weights of what comes in, such as incoming rates; all tiles alike if left out. */
  readonly weights?: ArrayLike<number>;
  readonly giftRacks?: number;
}

/** The plan of one step, in one go; see `planSteps`. */
export function planPass(compiled: CompiledCard, known: Known, step: PassStep, options: PlanOptions = {}): PassPlan {
  return finish(planSteps(compiled, known, step, options));
}

/**
 * Plans a step, a few milliseconds at a time; yields the part done, 0 to 1. Three tiles, less the
 * blind ones, are given and as many come in; in the courtesy every number from none to three is
 * an option. Ranked by reach (then expected away, the smaller gift, canonical order), or by
 * expected away (then reach, and so on).
 */
export function* planSteps(
  compiled: CompiledCard,
  known: Known,
  step: PassStep,
  { model = FIRST_REACH_MODEL, by = 'reach', blind = 0, weights, giftRacks }: PlanOptions = {},
): Generator<number, PassPlan> {
  const sizes = STEPS[step].size === 'agreed' ? ownSizes(step) : [(PASS_SIZE - blind) as PassSize];
  const tables = [];
  for (const size of sizes) tables.push(yield* passTableSteps(compiled, known, size, model, undefined, weights));
  const passes = tables.flatMap((table) => table.passes);
  const gifts = yield* giftSteps(compiled, known, passes, giftRacks === undefined ? {} : { racks: giftRacks });
  const numbers = numbersOf(tables);
  const even = numbersOf(tables.map((table) => table.even));
  const targets = targetsOf(readKnown(compiled, known, 0, model));
  const options = passes.map((give, place) => ({
    give,
    ...(numbers[place] as PassNumbers),
    even: even[place] as PassNumbers,
    gift: gifts[place] as Gift,
    reasons: passReasons({ give, rack: known.rack, targets, cost: numbers[place]?.cost ?? 0 }),
  }));
  return { step, options: options.sort(by === 'reach' ? compareReach : compareAway) };
}

/** The numbers of all passes of some tables, with what each costs against the best of them. */
function numbersOf(tables: readonly PassTable['even'][]): PassNumbers[] {
  const numbers = tables.flatMap(({ expectedAway, reach }) =>
    Array.from(reach, (each, place) => ({ expectedAway: expectedAway[place] as number, reach: each })),
  );
  const best = numbers.reduce((most, { reach }) => Math.max(most, reach), 0);
  return numbers.map((each) => ({ ...each, cost: best - each.reach }));
}

/** The place of one pass in a plan; refused when the rack can't give these tiles at this step. */
export function optionFor(plan: PassPlan, known: Known, give: Tiles): Result<PassOption, Problem<PlanCode>> {
  if (!give.distinct().every(mayBePassed)) return failure('joker-passed', NEVER_PASSED);
  const missing = give.minus(known.rack).distinct()[0];
  if (missing !== undefined) {
    return failure('not-in-rack', `The rack has too few ${codeOf(missing)} (${nameOf(missing)}) to give that.`);
  }
  const found = plan.options.find((option) => Tiles.of(option.give).equals(give));
  if (found !== undefined) return success(found);
  const size =
    STEPS[plan.step].size === 'agreed' ? `at most ${PASS_SIZE}` : (plan.options[0] as PassOption).give.length;
  return failure('pass-size', `This pass takes ${size} tiles, but ${give.size} are given.`);
}

function compareReach(one: PassOption, other: PassOption): number {
  return other.reach - one.reach || one.expectedAway - other.expectedAway || compareRest(one, other);
}

function compareAway(one: PassOption, other: PassOption): number {
  return one.expectedAway - other.expectedAway || other.reach - one.reach || compareRest(one, other);
}

function compareRest(one: PassOption, other: PassOption): number {
  const byGift = one.gift.mean - other.gift.mean || one.give.length - other.give.length;
  if (byGift !== 0) return byGift;
  for (const [place, kind] of one.give.entries()) {
    const difference = kind - (other.give[place] as number);
    if (difference !== 0) return difference;
  }
  return 0;
}
