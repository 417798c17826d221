import { JOKER, type Kind } from '../tiles/kinds.ts';
import type { Policy, SeatView } from '../table/policy.ts';
import type { PassStep } from '../exchange/steps.ts';

/** What the person at the practice table decided at one step. */
export type OwnMove =
  | {
      readonly type: 'give';
      readonly step: PassStep;
      readonly tiles: readonly Kind[];
      /** Tiles handed on unseen, first left and second right only. */
      readonly blind?: number;
    }
  /** What the person is ready to exchange in the courtesy, what should go first in front. */
  | { readonly type: 'courtesy'; readonly tiles: readonly Kind[] }
  /** The person stops before the second round. */
  | { readonly type: 'stop' };

/** Told of the seat's view before each step. */
export type Look = (view: SeatView, step: PassStep) => void;

/**
 * Plays a person's seat from the moves made so far; `rest` decides what comes after them. The
 * table's other seats see no difference, and what happens up to the last move is the same whatever
 * comes after. A person who has made the first left pass goes on unless there is a stop.
 */
export function ownPolicy(moves: readonly OwnMove[], rest: Policy, look?: Look): Policy {
  return {
    ...bound(rest),
    pass(view, step, blind, out) {
      look?.(view, step);
      const move = moves.find((each) => each.type === 'give' && each.step === step);
      if (move?.type !== 'give') return rest.pass(view, step, blind, out);
      out.push(...move.tiles);
      return move.tiles.length;
    },
    goesOn(view) {
      if (moves.some(({ type }) => type === 'stop')) return false;
      return moves.some((each) => each.type === 'give' && each.step === 'left') || rest.goesOn(view);
    },
    courtesy(view, out) {
      look?.(view, 'courtesy');
      const move = moves.find(({ type }) => type === 'courtesy');
      if (move?.type !== 'courtesy') return rest.courtesy(view, out);
      const tiles = move.tiles.filter((kind) => kind !== JOKER);
      out.push(...tiles);
      return tiles.length;
    },
  };
}

/** A policy's methods as fields, since policies are objects of classes. */
function bound(policy: Policy): Policy {
  return {
    pass: (...given) => policy.pass(...given),
    goesOn: (...given) => policy.goesOn(...given),
    courtesy: (...given) => policy.courtesy(...given),
    discard: (...given) => policy.discard(...given),
    call: (...given) => policy.call(...given),
    swap: (...given) => policy.swap(...given),
  };
}
