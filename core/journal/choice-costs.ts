import { type DecisionKind, judgementOf } from '../review/decision.ts';
import type { Review } from '../review/review.ts';
import type { ChoiceCost } from './findings.ts';
import { type Mean, meanOf, sum, type Trend, trendOf } from '../base/intervals.ts';

/** The costs of all choices of a game. */
export function choiceCosts({ decisions }: Review): ChoiceCost[] {
  return decisions.map((decision) => {
    const { kind, cost, forced } = decision;
    return { kind, cost: judgementOf(decision).cost, now: cost, forced };
  });
}

/** What choices of one kind cost on average. */
export interface CostRow {
  readonly kind: DecisionKind;
  readonly cost: Mean;
  readonly now: Mean;
  /** What they cost together. */
  readonly total: number;
  readonly trend: Trend;
}

/** Cost by kind of choice, unforced ones only, choices oldest first. */
export function costRows(choices: readonly ChoiceCost[]): CostRow[] {
  const free = choices.filter(({ forced }) => !forced);
  const kinds = [...new Set(free.map(({ kind }) => kind))];
  return kinds.map((kind) => {
    const some = free.filter((choice) => choice.kind === kind);
    const costs = some.map(({ cost }) => cost);
    return {
      kind,
      cost: meanOf(costs),
      now: meanOf(some.map(({ now }) => now)),
      total: sum(costs),
      trend: trendOf(costs),
    };
  });
}
