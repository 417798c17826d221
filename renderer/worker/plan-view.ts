import type { PassPlan } from '../../core/plan/plan.ts';
import type { PlanView } from './calls.ts';

export function planView({ step, options }: PassPlan): PlanView {
  return {
    step,
    options: options.map(({ gift, ...option }) => ({ ...option, gift: gift.mean, giftError: gift.error })),
  };
}
