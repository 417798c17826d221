import type { PassStep } from '../exchange/steps.ts';
import type { Kind } from '../tiles/kinds.ts';
import type { Exposure, HandView } from './hand-view.ts';
import type { TableCard } from './table-card.ts';

/** All that a seat may know (T21). Everything is live: read it, don't keep it. */
export interface SeatView {
  readonly card: TableCard;
  /** 0 to 3 for East, South, West, North. */
  readonly seat: number;
  readonly hand: HandView;
  /** The exposures of each seat. */
  exposuresOf(seat: number): readonly Exposure[];
  /** 36 counts of what lies face up: discards and exposures, jokers counted as jokers. */
  readonly gone: ArrayLike<number>;
  /** 36 counts of what this seat passed on; it may lie in another rack, or have been discarded. */
  readonly given: ArrayLike<number>;
  /** Tiles of a kind that this seat can't see: not in its rack, not face up. */
  unseen(kind: number): number;
  /** Tiles left in the wall. */
  readonly wallLeft: number;
  /** 36 random likings in [0, 1) that decide where a rule finds tiles equal (T23). */
  readonly likings: ArrayLike<number>;
}

/** A group that a player wants to lay down with the called tile. */
export interface Offer {
  /** 3 to 6, the called tile included. */
  size: number;
  /** How many of the others are jokers; the rest are natural tiles of the rack. */
  jokers: number;
}

/** What a player decides. A policy may hold scratch memory, but nothing that outlives a decision. */
export interface Policy {
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
  /** Whether to call `kind` for an exposure; if so the group is written into `offer`. */
  call(view: SeatView, kind: Kind, offer: Offer): boolean;
  /** Whether to give a natural `kind` of the rack for a joker in an exposure. */
  swap(view: SeatView, kind: Kind): boolean;
}

export type PolicyMaker = (card: TableCard) => Policy;
