import type { Random } from '../base/random.ts';
import { playerAt, type Table } from '../table/table.ts';
import type { Kind } from '../tiles/kinds.ts';

/** Draws after which a rack that has not come near is taken as it is. */
const MOST_DRAWS = 60;

/**
 * Fills a seat's rack, which may hold jokers, out of the hidden tiles that are none, as such a seat would have it: from
 * random tiles it draws and throws back by its own policy until it is as near to a hand as wanted. Racks of random tiles
 * would be rubbish that nobody holds late in a game, unless the hand is dead.
 */
export function shapeRack(
  table: Table,
  seat: number,
  size: number,
  hidden: Kind[],
  away: number,
  random: Random,
): void {
  const { hand, policy, view } = playerAt(table, seat);
  const steady = policy.unfailing ?? policy;
  for (let count = hand.size; count < size; count += 1) hand.add(takeAny(hidden, random));
  for (let draws = 0; !hand.isDead && hand.least() > away && draws < MOST_DRAWS; draws += 1) {
    const place = random.below(hidden.length);
    hand.add(hidden[place] as Kind);
    const thrown = steady.discard(view);
    hand.remove(thrown);
    hidden[place] = thrown;
  }
}

function takeAny(tiles: Kind[], random: Random): Kind {
  const place = random.below(tiles.length);
  const taken = tiles[place] as Kind;
  tiles[place] = tiles.at(-1) as Kind;
  tiles.pop();
  return taken;
}
