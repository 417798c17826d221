import { failure, type Result, success } from '../base/result.ts';
import type { GameEvent } from './events.ts';
import type { GameState } from './game-state.ts';

/** Whether a joker may be swapped for between a call and the discard after it, unless a house says otherwise (LG-2). */
export const USUAL_SWAP_AFTER_CALL = true;

/** Whether the user may swap for a joker now, by the rule of the house. */
export function maySwapNow({ seat, caller }: Pick<GameState, 'seat' | 'caller'>, swapAfterCall: boolean): boolean {
  return swapAfterCall || seat === null || caller !== seat;
}

/**
 * Refuses what the rules of the house forbid the user (LG-3). Asked as an event is entered, never of a game that is read:
 * what was logged stays.
 */
export function houseAllows(state: GameState, event: GameEvent, swapAfterCall: boolean): Result<null> {
  const isOwnSwap = event.type === 'swapped' && event.seat === state.seat;
  if (!isOwnSwap || maySwapNow(state, swapAfterCall)) return success(null);
  return failure('house-rule', 'At your table no joker is swapped for right after a call: discard first.');
}
