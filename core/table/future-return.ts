import { JOKER, type Kind, KINDS } from '../tiles/kinds.ts';
import type { KnownGift } from './future-world.ts';
import { playerAt, type Table } from './table.ts';

/**
 * Gives the giver of a gift the tiles of it that the user had given away before and that came back: each from
 * whoever has it by now, other than the user's seat `own`, for another tile that is no part of the gift and no joker.
 */
export function fetchReturned(table: Table, own: number, { giver, tiles }: KnownGift): void {
  const taker = playerAt(table, giver).hand;
  for (const [place, kind] of tiles.entries()) {
    const wanted = place + 1 - tiles.indexOf(kind);
    if ((taker.counts[kind] as number) < wanted) fetchTile(table, own, giver, kind, tiles);
  }
}

function fetchTile(table: Table, own: number, giver: number, wanted: Kind, gift: readonly Kind[]): void {
  const taker = playerAt(table, giver).hand;
  const owner = table.players.find(
    ({ hand }, seat) => seat !== giver && seat !== own && (hand.counts[wanted] as number) > 0,
  );
  const spare = KINDS.find((kind) => kind !== JOKER && (taker.counts[kind] as number) > 0 && !gift.includes(kind));
  if (owner === undefined || spare === undefined) throw new Error('a tile that came back lies in no other rack');
  owner.hand.remove(wanted);
  owner.hand.add(spare);
  taker.remove(spare);
  taker.add(wanted);
}
