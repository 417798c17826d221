import { JOKER, type Kind } from '../tiles/kinds.ts';
import type { ShownGroup, Offer } from './policy.ts';
import { drawTile, layExposure, playerAt, SEAT_COUNT, showTile, type Table, wallLeft } from './table.ts';

/** How a game ended. */
export interface GameEnd {
  /** 0 to 3, or -1 for a wall game. */
  readonly winner: number;
  /** Who discarded the last tile; -1 for an own draw or a wall game. */
  readonly from: number;
  /** The way that was made, a number on the compiled card; -1 for a wall game. */
  readonly way: number;
  /** Tiles drawn from the wall by all seats. */
  readonly draws: number;
  /** Discards by all seats. */
  readonly discards: number;
}

/** Called at a moment of a seat's turn, with the tiles drawn so far by all seats; for those who gather figures. */
type TurnWatcher = (table: Table, seat: number, draws: number) => void;

/** The moments of play at which those who gather figures may look on. */
export interface PlayWatcher {
  /** A seat is about to draw from the wall, which is not empty. */
  readonly beforeDraw?: TurnWatcher;
  /** A seat is about to discard. */
  readonly beforeDiscard?: TurnWatcher;
  /** A seat has discarded, and nobody has claimed the tile yet. */
  readonly afterDiscard?: TurnWatcher;
}

/** Where play goes on: a seat has one tile too many or, with `discarded`, has just discarded that tile. */
export interface PlayStart {
  readonly seat: number;
  readonly discarded: Kind | null;
}

/** East, with the 14th tile of the deal. */
const FIRST_TURN: PlayStart = { seat: 0, discarded: null };

/** Plays from the first discard, or from a later moment, to a win or the end of the wall (TB-9 to TB-18). */
export function playOut(table: Table, watcher: PlayWatcher = {}, from: PlayStart = FIRST_TURN): GameEnd {
  const start = wallLeft(table);
  const offer: Offer = { size: 0, jokers: 0 };
  let discards = 0;
  const ended = (winner: number, from: number, way: number): GameEnd => {
    const draws = start - wallLeft(table);
    return { winner, from, way, draws, discards };
  };
  let { seat, discarded } = from;
  let called = true;
  for (;;) {
    if (discarded === null) {
      if (!called && wallLeft(table) > 0) watcher.beforeDraw?.(table, seat, start - wallLeft(table));
      if (!called && !takeTurnDraw(table, seat)) return ended(-1, -1, announceWallGame(table));
      if (winsNow(table, seat)) return ended(seat, -1, announceWin(table, seat));
      watcher.beforeDiscard?.(table, seat, start - wallLeft(table));
      discarded = discard(table, seat);
      discards += 1;
      watcher.afterDiscard?.(table, seat, start - wallLeft(table));
    }
    const tile = discarded;
    discarded = null;
    const winner = tile === JOKER ? -1 : firstClaim(seat, (other) => claimsWin(table, other, tile));
    if (winner >= 0) return ended(winner, seat, announceWin(table, winner, seat, tile));
    const caller = tile === JOKER ? -1 : firstClaim(seat, (other) => wantsExposure(table, other, tile, offer));
    called = caller >= 0;
    if (called) callTile(table, seat, caller, tile, offer);
    seat = called ? caller : (seat + 1) % SEAT_COUNT;
  }
}

/** The first of the other seats in turn order that claims (TB-13); -1 if none does. */
function firstClaim(seat: number, claims: (other: number) => boolean): number {
  for (let step = 1; step < SEAT_COUNT; step += 1) {
    const other = (seat + step) % SEAT_COUNT;
    if (claims(other)) return other;
  }
  return -1;
}

function claimsWin(table: Table, seat: number, tile: Kind): boolean {
  return playerAt(table, seat).hand.winsWith(tile) && seesWin(table, seat);
}

/** Everybody does but those whom chance makes overlook it (TB-26). */
function seesWin(table: Table, seat: number): boolean {
  return playerAt(table, seat).policy.seesWin?.() ?? true;
}

function takeTurnDraw(table: Table, seat: number): boolean {
  if (wallLeft(table) === 0) return false;
  const tile = drawTile(table);
  playerAt(table, seat).hand.add(tile);
  table.trace?.push({ type: 'drew', seat, tile });
  return true;
}

/** Whether the tiles before a discard make a hand, after as many swaps as the player wants (TB-10, TB-17). */
function winsNow(table: Table, seat: number): boolean {
  const { hand } = playerAt(table, seat);
  while (hand.least() > 0) if (!swapOnce(table, seat)) return false;
  return seesWin(table, seat);
}

function swapOnce(table: Table, seat: number): boolean {
  const { hand, policy, view } = playerAt(table, seat);
  if (hand.isDead) return false;
  for (let owner = 0; owner < SEAT_COUNT; owner += 1) {
    const exposures = playerAt(table, owner).hand.exposures;
    const place = exposures.findIndex(
      ({ kind, jokers }) => jokers > 0 && (hand.counts[kind] as number) > 0 && policy.swap(view, kind),
    );
    if (place < 0) continue;
    const { kind } = exposures[place] as ShownGroup;
    playerAt(table, owner).hand.giveUpJoker(place);
    hand.remove(kind);
    hand.add(JOKER);
    showTile(table, kind, 1);
    showTile(table, JOKER, -1);
    table.trace?.push({ type: 'swapped', seat, owner, tile: kind });
    return true;
  }
  return false;
}

function discard(table: Table, seat: number): Kind {
  const { hand, thrown, policy, view } = playerAt(table, seat);
  const tile = policy.discard(view);
  if (hand.counts[tile] === 0) throw new Error('a discard of a tile that is not in the rack');
  hand.remove(tile);
  thrown.push(tile);
  showTile(table, tile, 1);
  table.trace?.push({ type: 'discarded', seat, tile });
  return tile;
}

/** Whether the player wants to expose with the discard; the policy's offer is checked against TB-11, TB-14 and TB-15. */
function wantsExposure(table: Table, seat: number, tile: Kind, offer: Offer): boolean {
  const { hand, policy, view } = playerAt(table, seat);
  const own = hand.counts[tile] as number;
  const jokers = hand.counts[JOKER] as number;
  // Who overlooked that the tile wins does not call it for less.
  if (own + jokers < 2 || hand.isDead || hand.winsWith(tile)) return false;
  const isWrong = policy.callsWrongly?.(view, tile, offer) ?? false;
  if (!isWrong && !policy.call(view, tile, offer)) return false;
  const naturals = offer.size - 1 - offer.jokers;
  if (offer.size < 3 || offer.jokers < 0 || naturals < 0) throw new Error('an exposure that is no group');
  if (naturals > own || offer.jokers > jokers) throw new Error('an exposure of tiles that are not in the rack');
  if (!isWrong && !hand.mayExpose(tile, offer.size))
    throw new Error('an exposure that no open hand of the player holds (TB-15)');
  return true;
}

function callTile(table: Table, from: number, seat: number, tile: Kind, { size, jokers }: Offer): void {
  layExposure(table, seat, tile, size, jokers);
  const group = Array.from({ length: size }, (_, place) => (place < size - jokers ? tile : JOKER));
  table.trace?.push({ type: 'called', seat, from, tile, group });
}

function announceWin(table: Table, seat: number, from?: number, tile?: Kind): number {
  const { hand } = playerAt(table, seat);
  if (tile !== undefined) hand.add(tile);
  const way = hand.completed();
  table.trace?.push(
    from === undefined || tile === undefined ? { type: 'won', seat, way } : { type: 'won', seat, from, tile, way },
  );
  return way;
}

function announceWallGame(table: Table): number {
  table.trace?.push({ type: 'wallGame' });
  return -1;
}
