import { JOKER, type Kind, KINDS } from '../tiles/kinds.ts';
import { NearWays } from './near-ways.ts';
import { PLANNER_MARGIN, squaredReach } from './policies/planner.ts';
import type { Offer, SeatView } from './policy.ts';
import { byValue, type PlayAction, type PlayOption } from './play-option.ts';
import { SEAT_COUNT } from './table.ts';
import type { TableCard } from './table-card.ts';

/** What a discard of a kind leaves of a hand's worth, by what the others do with it: above 0, and 1 for a safe tile. */
export type DiscardRisks = (kind: Kind) => number;

const NO_RISKS: DiscardRisks = () => 1;
/** The worth of a reach of a thousandth: a hand with less plays safe. */
const LEAST_WORTH = 1e-6;

/** What choices of play are weighed by besides; nothing is risked, and swaps are allowed, unless given. */
interface PlayTerms {
  readonly risks?: DiscardRisks | undefined;
  /** Whether the house allows a swap now; of a discard on the table, between a call and the discard after it. */
  readonly maySwap?: boolean | undefined;
}

interface OfferedTerms extends PlayTerms {
  /** A call to list besides, whatever it shows. */
  readonly made?: Offer | undefined;
}

/**
 * Orders all that a seat can do in play by what its near hands are worth together afterwards, not by the best hand
 * alone. This is the order in which the window lists choices and the one by which simulated advisers play, so that
 * simulated games measure what a person is advised. The weights are the planner's.
 */
export class PlayRanking {
  readonly #near: NearWays;
  readonly #prepare: (view: SeatView) => void;
  /** Jokers in open groups that may be swapped for, by the kind they stand for. */
  readonly #open = new Uint8Array(KINDS.length);
  #risks: DiscardRisks = NO_RISKS;

  constructor(card: TableCard) {
    const { weights, prepare } = squaredReach(card);
    this.#near = new NearWays(card, weights);
    this.#prepare = prepare;
  }

  /** With a tile to discard: mah jongg, each swap, unless the house allows none now, and each discard, best first. */
  onTurn(view: SeatView, terms: PlayTerms = {}): PlayOption[] {
    this.#collect(view, terms);
    const options = this.#discards(view);
    const swaps = this.#swappable().map((kind) => option('swap', kind, this.#afterSwap(kind)));
    if (view.hand.least() === 0) options.push(option('win', null, Infinity));
    return [...options, ...swaps].sort(byValue(view));
  }

  /** With a tile to discard: each discard, best first. */
  discards(view: SeatView, terms: PlayTerms = {}): PlayOption[] {
    this.#collect(view, terms);
    return this.#discards(view).sort(byValue(view));
  }

  /**
   * With another's discard on the table: mah jongg, letting it go and a call with each group that some hand holds, never
   * with more jokers than it needs; best first. Empty if there is nothing but letting it go.
   */
  offered(view: SeatView, kind: Kind, { made, ...terms }: OfferedTerms = {}): PlayOption[] {
    if (kind === JOKER) return [];
    const groups = groupsFor(view, kind);
    const isListed = groups.some(({ size, jokers }) => size === made?.size && jokers === made.jokers);
    if (made !== undefined && !isListed) groups.push(made);
    const wins = view.hand.winsWith(kind);
    if (groups.length === 0 && !wins) return [];
    this.#collect(view, terms);
    const options = [option('let-go', kind, this.#near.total() * this.#safest())];
    if (wins) options.push(option('win', kind, Infinity));
    for (const group of groups) options.push(this.#called(view, kind, group, terms));
    return options.sort(byValue(view));
  }

  /** The way that weighs most of a waiting hand, and how far it is away; null when none is left. */
  aim(view: SeatView): { readonly way: number; readonly away: number } | null {
    this.#collect(view);
    const place = this.#near.heaviest();
    if (place < 0 || this.#near.weights[place] === 0) return null;
    const way = this.#near.ways[place] as number;
    return { way, away: view.hand.awayOf(way) };
  }

  #collect(view: SeatView, { risks = NO_RISKS, maySwap = true }: PlayTerms = {}): void {
    this.#risks = risks;
    this.#prepare(view);
    this.#open.fill(0);
    let openJokers = 0;
    for (let seat = 0; seat < SEAT_COUNT; seat += 1) {
      for (const { kind, jokers } of view.exposuresOf(seat)) {
        if (maySwap && !view.hand.isDead) this.#open[kind] = (this.#open[kind] as number) + jokers;
        openJokers += jokers;
      }
    }
    this.#near.collect(view, PLANNER_MARGIN, openJokers);
  }

  #called(view: SeatView, kind: Kind, group: Offer, terms: PlayTerms): PlayOption {
    this.#collect(view, terms);
    this.#near.openGroup(view, kind, group.size, group.jokers);
    return { ...option('call', kind, this.#bestOnTurn()), group, jokers: group.jokers };
  }

  #discards(view: SeatView): PlayOption[] {
    const { counts } = view.hand;
    const total = this.#near.total();
    const losses = this.#near.losses();
    return KINDS.filter((kind) => (counts[kind] as number) > 0).map((kind) => {
      const loss = kind === JOKER ? this.#near.jokerLoss() : (losses[kind] as number);
      return { ...option('discard', kind, this.#afterDiscard(kind, total - loss)), jokers: kind === JOKER ? 1 : 0 };
    });
  }

  /** What is left of a worth after a discard; of a dead hand something is left, too, so that the safest tile comes first. */
  #afterDiscard(kind: Kind, worth: number): number {
    return this.#risks === NO_RISKS ? worth : (worth + LEAST_WORTH) * this.#risks(kind);
  }

  /** What the safest tile of the rack leaves: a discard that is let go puts one's own off to the next turn. */
  #safest(): number {
    const { counts } = this.#near;
    let best = 0;
    for (const kind of KINDS) if ((counts[kind] as number) > 0) best = Math.max(best, this.#risks(kind));
    return best === 0 ? 1 : best;
  }

  /** Kinds of the trial rack that can be given for a joker. */
  #swappable(): Kind[] {
    return KINDS.filter((kind) => (this.#open[kind] as number) > 0 && (this.#near.counts[kind] as number) > 0);
  }

  /** What the trial rack is worth with a swap and the best that follows. */
  #afterSwap(kind: Kind): number {
    const jokers = this.#open[kind] as number;
    this.#near.swap(kind);
    this.#open[kind] = jokers - 1;
    const value = this.#bestOnTurn();
    this.#near.swap(kind, -1);
    this.#open[kind] = jokers;
    return value;
  }

  /** What the trial rack is worth with the best that can be done before the turn ends. */
  #bestOnTurn(): number {
    if (this.#near.isComplete()) return Infinity;
    const { counts } = this.#near;
    const losses = this.#near.losses();
    const total = this.#near.total();
    let best = -1;
    for (const kind of KINDS) {
      if ((counts[kind] as number) === 0) continue;
      const loss = kind === JOKER ? this.#near.jokerLoss() : (losses[kind] as number);
      best = Math.max(best, this.#afterDiscard(kind, total - loss));
    }
    for (const kind of this.#swappable()) best = Math.max(best, this.#afterSwap(kind));
    // All tiles lie open: there is nothing to discard.
    return best < 0 ? total : best;
  }
}

function option(action: PlayAction, kind: Kind | null, value: number): PlayOption {
  return { action, kind, group: null, jokers: 0, value };
}

/** The groups that some hand holds, each with as few jokers as its size needs. */
function groupsFor({ hand }: SeatView, kind: Kind): Offer[] {
  const own = hand.counts[kind] as number;
  const largest = Math.min(6, 1 + own + (hand.counts[JOKER] as number));
  const groups: Offer[] = [];
  for (let size = 3; size <= largest; size += 1) {
    if (hand.mayExpose(kind, size)) groups.push({ size, jokers: Math.max(0, size - 1 - own) });
  }
  return groups;
}
