import type { PassStep } from '../exchange/steps.ts';
import { codeOf, type KindCode } from '../tiles/kinds.ts';
import type { PassOption, PassPlan } from './plan.ts';

/** A pass plan as plain data, the document that the command `pass` answers with. */
export interface PlanDocument {
  readonly step: PassStep;
  readonly options: readonly PassDocument[];
  /** Expected away and reach are exact means, not samples. */
  readonly exact: true;
}

export interface PassDocument {
  readonly give: readonly KindCode[];
  readonly expectedAway: number;
  readonly reach: number;
  readonly cost: number;
  readonly gift: number;
}

/** `top` 0 gives all options of the plan. */
export function planDocument(plan: PassPlan, top = 10): PlanDocument {
  return optionsDocument(plan.step, top === 0 ? plan.options : plan.options.slice(0, top));
}

export function optionsDocument(step: PassStep, options: readonly PassOption[]): PlanDocument {
  return {
    step,
    options: options.map(({ give, expectedAway, reach, cost, gift }) => ({
      give: give.map(codeOf),
      expectedAway,
      reach,
      cost,
      gift: gift.mean,
    })),
    exact: true,
  };
}
