import { legalEvents } from '../../../../core/game/legal.ts';
import type { GameState } from '../../../../core/game/game-state.ts';
import { handSize } from '../../../../core/game/seen.ts';

/** True when the user's next move is a discard: 14 tiles in hand, no pass due, no result. */
export function isDiscardDue(state: GameState): boolean {
  const { discard, give, receive } = legalEvents(state);
  return discard.length > 0 && give === null && receive === null && handSize(state) === 14;
}

/** True once the Table shows play instead of the exchange. */
export function isPlayShown({ playing, result, exchange }: GameState): boolean {
  return playing || result !== null || exchange?.phase === 'over';
}
