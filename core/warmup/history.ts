import { mayBeBlind, type PassStep } from '../exchange/steps.ts';
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
