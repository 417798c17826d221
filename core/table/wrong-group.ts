import { JOKER, type Kind } from '../tiles/kinds.ts';
import type { Offer, SeatView } from './policy.ts';
import { groupCode, holdsGroups } from './table-card.ts';

/** Tiles of the kind in the rack without which nobody takes a discard for part of a group. */
const PAIR = 2;

/**
 * Finds a group that a player with an exposure could lay down by mistake with a discard, from a pair at least: some hand
 * of the card has such a group, but none that the player may still make open (TB-32), and a tile stays to be discarded.
 * The smallest is written into `offer`, with as few jokers as it needs.
 */
export function wrongGroup({ card, hand }: SeatView, kind: Kind, offer: Offer): boolean {
  const own = hand.counts[kind] as number;
  if (hand.exposures.length === 0 || own < PAIR) return false;
  const largest = Math.min(6, own + (hand.counts[JOKER] as number) + 1, hand.size);
  for (let size = 3; size <= largest; size += 1) {
    if (!holdsGroups(card.anyGroups[kind] as number, groupCode(size)) || hand.mayExpose(kind, size)) continue;
    offer.size = size;
    offer.jokers = Math.max(0, size - 1 - own);
    return true;
  }
  return false;
}
