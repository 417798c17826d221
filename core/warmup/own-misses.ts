import { fingerprint } from '../base/fingerprint.ts';
import type { PassStep } from '../exchange/steps.ts';
import { type Decision, EQUAL_WITHIN } from '../review/decision.ts';

/** A pass of a game that cost something: what a miss is made of, once the kind of its rack is known. */
export interface OwnMiss {
  /** The same for the same decision, so that it is kept once. */
  readonly id: string;
  readonly rack: string;
  readonly step: PassStep;
  readonly cost: number;
}

/** The passes of a looked-back game that cost more than a tie; forced ones are none of the player's, and a second round is no pass. */
export function ownMisses(gameId: string, decisions: readonly Decision[]): OwnMiss[] {
  return decisions.flatMap(({ kind, step, rack, cost, forced, place }) =>
    step === null || kind === 'second-round' || forced || cost <= EQUAL_WITHIN
      ? []
      : [{ id: fingerprint(`${gameId} ${place}`), rack, step, cost }],
  );
}
