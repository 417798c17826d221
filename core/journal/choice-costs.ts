import type { DecisionKind } from '../review/decision.ts';
import { judgementOf } from '../review/judgement.ts';
import type { Review } from '../review/review.ts';
import { type Mean, meanOf, sum } from './intervals.ts';
import { type Trend, trendOf } from './trend.ts';

/** One choice: its kind and what it gave up against the best. A forced choice, with nothing else to do, is no evidence. */
export interface ChoiceCost<Kind extends string> {
  readonly kind: Kind;
  /** By the end of the exchange where it was looked ahead, else as `now`. */
  readonly cost: number;
  /** Exact and for the one step; that of a second round is `cost`. */
  readonly now: number;
  readonly forced: boolean;
}

/** The costs of all choices of a game. */
export function choiceCosts({ decisions }: Review): ChoiceCost<DecisionKind>[] {
  return decisions.map((decision) => {
    const { kind, cost, forced } = decision;
    return { kind, cost: judgementOf(decision).cost, now: cost, forced };
  });
}

/** What choices of one kind cost on average. */
export interface CostRow<Kind extends string> {
  readonly kind: Kind;
  readonly cost: Mean;
  readonly now: Mean;
  /** What they cost together. */
  readonly total: number;
  readonly trend: Trend;
}

/** Cost by kind of choice, unforced ones only, choices oldest first. */
export function costRows<Kind extends string>(choices: readonly ChoiceCost<Kind>[]): CostRow<Kind>[] {
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
