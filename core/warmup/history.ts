import type { PassStep } from '../exchange/steps.ts';
import type { Verdict } from '../review/decision.ts';
import type { DealKind } from './deal-kinds.ts';

/**
 * What is kept of practice, one entry a line, oldest first (see FORMAT.md); all that the window
 * says about progress is computed from these.
 */
export type PracticeEntry = MissEntry | AnswerEntry | GuessEntry;

interface Entry {
  /** Different for every entry, so that one that is sent twice is kept once. */
  readonly id: string;
  /** Whole local days since 1970. */
  readonly day: number;
}

/** An own decision that cost something and is to come back. */
export interface MissEntry extends Entry {
  readonly type: 'miss';
  readonly kind: DealKind;
  readonly step: PassStep;
  /** Reach given up, 0 to 1: by the end of the exchange, or of the pass alone where there is no interval. */
  readonly cost: number;
  /** Half of the interval of the cost. */
  readonly halfWidth?: number;
  /** Where it was made: a game's id, or `warm-up`. */
  readonly source: string;
}

/** A decision made in practice. */
export interface AnswerEntry extends Entry {
  readonly type: 'answer';
  /** The miss that it repeats; null for a problem of another kind. */
  readonly miss: string | null;
  readonly kind: DealKind;
  readonly step: PassStep;
  /** As of a miss. */
  readonly cost: number;
  readonly halfWidth?: number;
  readonly verdict: Verdict;
  /** Seconds that it took, when the clock was on. */
  readonly seconds?: number;
}

/** What can be guessed before it is shown. */
export const GUESSED = ['away', 'lean', 'reach'] as const;
export type Guessed = (typeof GUESSED)[number];

/** A guess: how sure the person was of it, from 0 to 1, and whether it came true. */
export interface GuessEntry extends Entry {
  readonly type: 'guess';
  readonly what: Guessed;
  readonly sure: number;
  readonly right: boolean;
}

/** What kind of decision it was: passes that feel alike are one kind. */
export const PHASES = ['first', 'middle', 'last', 'courtesy'] as const;
export type Phase = (typeof PHASES)[number];

export function phaseOf(step: PassStep): Phase {
  if (step === 'right') return 'first';
  if (step === 'courtesy') return 'courtesy';
  return step === 'left' || step === 'right2' ? 'last' : 'middle';
}

/** Decisions with the same key are of one kind: the same phase, on the same kind of rack. */
export function decisionKey({ step, kind }: { readonly step: PassStep; readonly kind: DealKind }): string {
  return `${phaseOf(step)} ${kind}`;
}
