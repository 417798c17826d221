import type { PassPlan } from '../../core/plan/plan.ts';
import type { IncomingRates } from '../../core/table/incoming-rates.ts';
import type { PlanView } from './calls.ts';

export function planView({ step, options }: PassPlan, rates: IncomingRates | null = null): PlanView {
  return {
    step,
    options: options.map(({ gift, ...option }) => ({ ...option, gift: gift.mean, giftError: gift.error })),
    rates,
  };
}
