import type { Kind } from '../tiles/kinds.ts';
import type { Offer, SeatView } from './policy.ts';

/** What a seat can do in play; of equal worth the first of this order is preferred. */
const PLAY_ACTIONS = ['win', 'let-go', 'call', 'discard', 'swap'] as const;
export type PlayAction = (typeof PLAY_ACTIONS)[number];

/** One thing that a seat can do now. */
export interface PlayOption {
  readonly action: PlayAction;
  /** The discard called, won by or let go, the tile discarded, or the one given for a joker; null for a win with the 14 tiles in hand. */
  readonly kind: Kind | null;
  /** The group laid open by a call; null for all else. */
  readonly group: Readonly<Offer> | null;
  /** Jokers that leave the rack and don't come back. */
  readonly jokers: number;
  /**
   * Its worth for the order: what the near ways weigh after it, each by its reach squared, once the best that follows in
   * the same turn is done, too (after a swap and a call the best discard). Infinite for a win. No chance.
   */
  readonly value: number;
}

/** Values are sums of many terms: what differs by less than this is equal but for rounding. */
const ROUNDING = 1e-12;

/** Whether two options are of the same worth but for rounding. */
export function sameValue(one: Pick<PlayOption, 'value'>, other: Pick<PlayOption, 'value'>): boolean {
  return steps(one) === steps(other);
}

function steps({ value }: Pick<PlayOption, 'value'>): number {
  return Math.round(value / ROUNDING);
}

/** Best first; of equals what spends fewer jokers, then by the order of actions, then by the seat's likings (TB-23). */
export function byValue({ likings }: SeatView): (one: PlayOption, other: PlayOption) => number {
  const liking = ({ kind }: PlayOption): number => (kind === null ? 0 : (likings[kind] as number));
  return (one, other) => {
    const [a, b] = [steps(one), steps(other)];
    if (a !== b) return b > a ? 1 : -1;
    if (one.jokers !== other.jokers) return one.jokers - other.jokers;
    const order = PLAY_ACTIONS.indexOf(one.action) - PLAY_ACTIONS.indexOf(other.action);
    return order || liking(one) - liking(other) || (one.kind ?? 0) - (other.kind ?? 0);
  };
}
