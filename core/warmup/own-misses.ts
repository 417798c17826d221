import { fingerprint } from '../base/fingerprint.ts';
import type { PassStep } from '../exchange/steps.ts';
import { type Decision, isRight } from '../review/decision.ts';
import { judgementOf } from '../review/judgement.ts';

/** A pass of a game that cost something: what a miss is made of, once the kind of its rack is known. */
export interface OwnMiss {
  /** The same for the same decision, so that it is kept once. */
  readonly id: string;
  readonly rack: string;
  readonly step: PassStep;
  readonly cost: number;
  /** Half of the interval of the cost; null for an exact one. */
  readonly halfWidth: number | null;
}

/** The passes of a looked-back game that cost more than a tie; forced ones are none of the player's, and a second round is no pass. */
export function ownMisses(gameId: string, decisions: readonly Decision[]): OwnMiss[] {
  return decisions.flatMap((decision) => {
    const { kind, step, rack, forced, place } = decision;
    const { cost, halfWidth, verdict } = judgementOf(decision);
    if (step === null || kind === 'second-round' || forced || isRight(verdict)) return [];
    return [{ id: fingerprint(`${gameId} ${place}`), rack, step, cost, halfWidth }];
  });
}
