import { mayBeBlind, type PassStep } from '../exchange/steps.ts';
import { isRight, type Judgement } from '../review/decision.ts';
import type { DealKind } from './deal-kinds.ts';

/** What can be guessed before it is shown. */
export const GUESSED = ['away', 'lean', 'reach'] as const;
export type Guessed = (typeof GUESSED)[number];

/** What kind of decision it was: passes that feel alike are one kind. */
const PHASES = ['first', 'middle', 'last', 'courtesy'] as const;
export type Phase = (typeof PHASES)[number];

export function phaseOf(step: PassStep): Phase {
  if (step === 'right') return 'first';
  if (step === 'courtesy') return 'courtesy';
  return mayBeBlind(step) ? 'last' : 'middle';
}

/** Decisions with the same key are of one kind: the same phase, on the same kind of rack. */
export function decisionKey({ step, kind }: { readonly step: PassStep; readonly kind: DealKind }): string {
  return `${phaseOf(step)} ${kind}`;
}

/**
 * What an answer gave up: nothing where it is as good as the best. The futures that it was judged by fell one way or the
 * other, but they can't tell it from the best.
 */
export function givenUp({ verdict, cost }: Pick<Judgement, 'verdict' | 'cost'>): number {
  return isRight(verdict) ? 0 : cost;
}
