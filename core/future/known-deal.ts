import { type Random, shuffle } from '../base/random.ts';
import { type ExchangeState, givenTiles } from '../exchange/state.ts';
import { mayBePassed, PASS_SIZE, type PassStep, type Seat, SEATS, STEPS } from '../exchange/steps.ts';
import { KIND_COUNT, type Kind, KINDS, SET_SIZE } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import { beginGame, playerAt, SEAT_COUNT, type Table } from '../table/table.ts';

/** A moment of the exchange as its player knows it: a pass is due. */
export interface Position {
  /** 0 to 3 for East, South, West, North. */
  readonly seat: number;
  /** In the phase of giving. */
  readonly exchange: ExchangeState;
}

/** Where a pass is due whose earlier ones are not known one by one: all tiles given so far, `gone`, count as one pass. */
export function positionBefore(rack: Tiles, gone: Tiles, seat: Seat, step: PassStep): Position {
  const passes = gone.size === 0 ? [] : [{ step: 'right' as const, given: gone, blind: 0, received: Tiles.none }];
  return { seat: SEATS.indexOf(seat), exchange: { rack, phase: 'giving', step, toCome: 0, passes, stops: [] } };
}

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
    const giver = (seat + STEPS[step].from) % SEAT_COUNT;
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
  beginGame(table, random);
}

function allCanPass(tiles: readonly Kind[], dealt: readonly number[], seat: number): boolean {
  let next = 0;
  return dealt.every((count, other) => {
    const rack = tiles.slice(next, next + count);
    next += count;
    return other === seat || rack.filter(mayBePassed).length >= PASS_SIZE;
  });
}

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
  const spare = KINDS.find((kind) => mayBePassed(kind) && (taker.counts[kind] as number) > 0 && !gift.includes(kind));
  if (owner === undefined || spare === undefined) throw new Error('a tile that came back lies in no other rack');
  owner.hand.remove(wanted);
  owner.hand.add(spare);
  taker.remove(spare);
  taker.add(wanted);
}
