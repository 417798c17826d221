import { type Random, shuffle } from '../base/random.ts';
import { type ExchangeState, givenTiles, PASS_SIZE } from '../exchange/state.ts';
import type { PassStep } from '../exchange/steps.ts';
import { JOKER, KIND_COUNT, type Kind, SET_SIZE } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import { playerAt, SEAT_COUNT, type Table } from './table.ts';

/** A moment of the exchange as its player knows it: a pass is due. */
export interface Position {
  /** 0 to 3 for East, South, West, North. */
  readonly seat: number;
  /** In the phase of giving. */
  readonly exchange: ExchangeState;
}

/** How many seats further on the giver of a step sits. */
const GIVER: Readonly<Record<PassStep, number>> = {
  right: 3,
  across: 2,
  left: 1,
  left2: 1,
  across2: 2,
  right2: 3,
  courtesy: 2,
};

/** What the user took in at a step. */
export interface KnownGift {
  readonly step: PassStep;
  readonly giver: number;
  readonly tiles: readonly Kind[];
  /**
   * Those of them that the giver has held since the deal. The others are tiles that the user had
   * given away before and that came back: the set holds no more copies.
   */
  readonly kept: readonly Kind[];
}

/** What a position says of the deal. */
export interface KnownDeal {
  readonly seat: number;
  readonly ownRack: Tiles;
  readonly gifts: readonly KnownGift[];
  /** By seat, how many tiles it is dealt besides those that it keeps for a known gift. */
  readonly dealt: readonly number[];
  /** All tiles that may lie anywhere else: other racks and the wall. */
  readonly pool: readonly Kind[];
}

export function knownDeal({ seat, exchange }: Position): KnownDeal {
  const received = exchange.passes.reduce((sum, pass) => sum.plus(pass.received), Tiles.none);
  const ownRack = exchange.rack.plus(givenTiles(exchange)).minus(received);
  const dealt = Array.from<unknown, number>({ length: SEAT_COUNT }, (_, other) => (other === 0 ? 14 : 13));
  let free = Tiles.fullSet.minus(ownRack);
  const gifts = exchange.passes.map(({ step, received: tiles }) => {
    const kept = tiles.toKinds().filter((kind, place, all) => place - all.indexOf(kind) < free.count(kind));
    free = free.minus(Tiles.of(kept));
    const giver = (seat + GIVER[step]) % SEAT_COUNT;
    dealt[giver] = (dealt[giver] as number) - kept.length;
    return { step, giver, tiles: tiles.toKinds(), kept };
  });
  dealt[seat] = 0;
  return { seat, ownRack, gifts, dealt, pool: free.toKinds() };
}

/**
 * Lays the table with a deal that agrees with what is known, every such deal equally likely. A seat
 * without three natural tiles could not have passed, so such a deal is drawn again.
 */
export function layKnownDeal(table: Table, { seat, ownRack, dealt, pool }: KnownDeal, random: Random): void {
  const tiles = [...pool];
  do shuffle(tiles, random);
  while (!allCanPass(tiles, dealt, seat));
  let next = 0;
  table.gone.fill(0);
  for (let other = 0; other < SEAT_COUNT; other += 1) {
    const { hand, given, likings } = playerAt(table, other);
    hand.clear();
    given.fill(0);
    for (let kind = 0; kind < KIND_COUNT; kind += 1) likings[kind] = random.fraction();
    const end = next + (dealt[other] as number);
    for (; next < end; next += 1) hand.add(tiles[next] as Kind);
    if (other === seat) for (const kind of ownRack.toKinds()) hand.add(kind);
  }
  table.next = SET_SIZE - (tiles.length - next);
  for (let place = table.next; place < SET_SIZE; place += 1) {
    table.wall[place] = tiles[next + place - table.next] as Kind;
  }
}

function allCanPass(tiles: readonly Kind[], dealt: readonly number[], seat: number): boolean {
  let next = 0;
  return dealt.every((count, other) => {
    const rack = tiles.slice(next, next + count);
    next += count;
    return other === seat || rack.filter((kind) => kind !== JOKER).length >= PASS_SIZE;
  });
}
