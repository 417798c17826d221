import type { Random } from '../base/random.ts';
import type { PassStep } from '../exchange/steps.ts';
import type { Kind } from '../tiles/kinds.ts';
import type { Failings } from './kinds.ts';
import type { TableCard } from './table-card.ts';

/** A group laid down on the table: `jokers` of its `size` tiles are jokers. */
export interface ShownGroup {
  readonly kind: Kind;
  readonly size: number;
  readonly jokers: number;
}

/** What may be read of a hand by its own player. Arrays are live: don't keep them. */
export interface SeatHand {
  /** The rack's 36 counts, without exposures. */
  readonly counts: ArrayLike<number>;
  /** Tiles in the rack. */
  readonly size: number;
  readonly exposures: readonly ShownGroup[];
  /** Tiles of each kind in own exposures, jokers counted as what they stand for. */
  readonly exposed: ArrayLike<number>;
  /** For each kind the groups exposed, as the sum of their `groupCode`. */
  readonly exposedGroups: ArrayLike<number>;
  /** For each way that the exposures fit: what is missing in groups of three and more that are not exposed, before jokers. */
  readonly wildShort: ArrayLike<number>;
  /** What is missing for a way that the exposures fit in groups of one and two. */
  plainShortOf(way: number): number;
  /** Tiles missing for a way, jokers used; not `isOpen` if the exposures don't fit it. */
  awayOf(way: number): number;
  /** Lists the ways at most `limit` away, a number of open ways, into a list with room for all and one more; returns how many. */
  listWithin(limit: number, into: Int32Array): number;
  /** The first way from `from` on that is at most `limit` away, a number of open ways; -1 if there is none. */
  nextWithin(limit: number, from: number): number;
  /**
   * Whether a group of `size` tiles of `kind` may be laid down: some open way holds it beside all exposures
   * (TB-14, TB-15); with `within` only ways at most so far away are asked.
   */
  mayExpose(kind: Kind, size: number, within?: number): boolean;
  /** The smallest away over all ways; not `isOpen` for a dead hand. */
  least(): number;
  /** Whether no way fits the exposures (TB-33), or the card has none. */
  readonly isDead: boolean;
  /** Whether `kind` as the 14th tile makes a hand; no joker. */
  winsWith(kind: Kind): boolean;
}

/** Which ways the tiles that don't lie face up can still make. */
export interface PossibleWays {
  /** Follows what lies face up, 36 counts, to now; to be called before `includes`. */
  follow(gone: ArrayLike<number>): void;
  includes(way: number): boolean;
}

/** All that a seat may know (TB-21). Everything is live: read it, don't keep it. */
export interface SeatView {
  readonly card: TableCard;
  /** 0 to 3 for East, South, West, North. */
  readonly seat: number;
  readonly hand: SeatHand;
  /** The exposures of each seat. */
  exposuresOf(seat: number): readonly ShownGroup[];
  /** What a seat has discarded, oldest first, called tiles among them. */
  thrownBy(seat: number): readonly Kind[];
  /** What came from a seat in the passes; of tiles handed on unseen, from whoever handed them on. */
  passedBy(seat: number): readonly Kind[];
  /** 36 counts of what lies face up: discards and exposures, jokers counted as jokers. */
  readonly gone: ArrayLike<number>;
  /** 36 counts of what this seat passed on; it may lie in another rack, or have been discarded. */
  readonly given: ArrayLike<number>;
  /** For a seat with nothing open; only a view of a running game has it, because it is there for speed. */
  readonly stillPossible?: PossibleWays;
  /** Tiles of a kind that this seat can't see: not in its rack, not face up. */
  unseen(kind: number): number;
  /** Tiles left in the wall. */
  readonly wallLeft: number;
  /** 36 random likings in [0, 1) that decide where a rule finds tiles equal (TB-23). */
  readonly likings: ArrayLike<number>;
}

/** A group that a player wants to lay down with the called tile. */
export interface Offer {
  /** 3 to 6, the called tile included. */
  size: number;
  /** How many of the others are jokers; the rest are natural tiles of the rack. */
  jokers: number;
}

/** What a player decides. A policy may hold scratch memory, but nothing that outlives a decision other than its chance. */
export interface Policy {
  /** Called when a game is laid, for a player by whose chance something is overlooked; takes of `random` what it needs. */
  begin?(random: Random): void;
  /** Asked when the player's tiles make a hand, with the last discard or without it: whether that is noticed; always if left out. */
  seesWin?(): boolean;
  /**
   * Chooses what to give at a step, no jokers: writes kinds into `out` and returns how many, three
   * unless `blind` is allowed, when the rest of the three is handed on unseen.
   */
  pass(view: SeatView, step: PassStep, blind: boolean, out: Kind[]): number;
  /** Whether to go on with the second round. */
  goesOn(view: SeatView): boolean;
  /** Writes up to three kinds for the courtesy into `out`, first what should go first; returns how many. */
  courtesy(view: SeatView, out: Kind[]): number;
  /** The kind to discard from a rack that holds one tile too many. */
  discard(view: SeatView): Kind;
  /**
   * Asked before `call`, for a player by whose chance it happens: whether a group is laid down that no open hand of the
   * player holds (TB-32); if so it is written into `offer`. Never if left out.
   */
  callsWrongly?(view: SeatView, kind: Kind, offer: Offer): boolean;
  /** Whether to call `kind` for an exposure; if so the group is written into `offer`. */
  call(view: SeatView, kind: Kind, offer: Offer): boolean;
  /** Whether to give a natural `kind` of the rack for a joker in an exposure. */
  swap(view: SeatView, kind: Kind): boolean;
  /** For a player whom chance makes err: what it may discard, the likeliest first; the shares are positive and sum to one. */
  likelyDiscards?(view: SeatView): readonly LikelyDiscard[];
  /** For a player whom chance makes err: the chance that `goesOn` says yes. */
  chanceToGoOn?(view: SeatView): number;
  /** For a player whom chance makes err: how, and the same player without it, whose answers are to be asked of one decision at a time. */
  readonly failings?: Failings;
  readonly unfailing?: Policy;
}

/** A discard, and the chance that it is made. */
export interface LikelyDiscard {
  readonly kind: Kind;
  readonly share: number;
}

export type PolicyMaker = (card: TableCard) => Policy;

/** The chance that a player goes on with the second round: 0 or 1 for one who decides by rule alone. */
export function chanceToGoOn(policy: Policy, view: SeatView): number {
  return policy.chanceToGoOn?.(view) ?? Number(policy.goesOn(view));
}
