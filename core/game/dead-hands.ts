import type { Card } from '../card/card.ts';
import { type Seat, SEATS } from '../exchange/steps.ts';
import { allowsGroups } from '../reading/exposed.ts';
import type { Exposure, GameState } from './game-state.ts';
import { exposedGroups } from './hand-view.ts';

/**
 * The seats whose groups no line of the card allows beside each other (LG-4): their hands are dead. A dead hand can't
 * win, and pays the winner like the others (LG-5).
 */
export function deadSeats(card: Card, state: Pick<GameState, 'exposures'>): Seat[] {
  return SEATS.filter((seat) => !allowsGroups(card, exposedGroups(state, seat)));
}

/** Whether a group more would make a hand dead that is not dead yet. */
export function wouldDie(card: Card, { exposures }: Pick<GameState, 'exposures'>, group: Exposure): boolean {
  const isDead = (laid: readonly Exposure[]): boolean => deadSeats(card, { exposures: laid }).includes(group.seat);
  return !isDead(exposures) && isDead([...exposures, group]);
}
