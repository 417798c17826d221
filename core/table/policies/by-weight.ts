import type { PassStep } from '../../exchange/steps.ts';
import { JOKER, type Kind, KIND_COUNT } from '../../tiles/kinds.ts';
import { NearWays } from '../near-ways.ts';
import type { Offer, Policy, PolicyMaker, SeatView } from '../policy.ts';
import type { TableCard } from '../table-card.ts';
import { powersOf, ShortageWeights, THIRDS, type Weigher } from '../weights.ts';

/**
 * The kind of the rack with the smallest worth, jokers last of all; equals are decided by the
 * seat's likings (TB-23). The rack must not be empty.
 */
export function leastWorth(counts: ArrayLike<number>, worth: ArrayLike<number>, likings: ArrayLike<number>): Kind {
  let best = JOKER;
  for (let kind = JOKER + 1; kind < KIND_COUNT; kind += 1) {
    if (counts[kind] === 0) continue;
    const difference = best === JOKER ? -1 : (worth[kind] as number) - (worth[best] as number);
    const less = difference < 0 || (difference === 0 && (likings[kind] as number) < (likings[best] as number));
    if (less) best = kind as Kind;
  }
  return best;
}

/** How a policy weighs the near ways; see core/RULES.md, "The policies". */
export interface Outlook {
  readonly weights: Weigher | ShortageWeights;
  /** How many tiles behind the nearest a way may be and still count. */
  readonly margin: number;
  /** How many lines of the card count, those with the heaviest ways; all if left out. */
  readonly lines?: number;
  /** Added to the worth of each tile that the heaviest way uses; 0 to follow no single way. */
  readonly targetBonus: number;
  /** A tile worth at most this share of all weights is idle: it may go in the courtesy, or not be missed. */
  readonly idleShare: number;
  /** Goes on with the second round unless giving three more tiles costs more than this share of all weights. */
  readonly stopShare: number;
  /** Called before each decision; `step` is there while tiles are passed. */
  readonly prepare?: (view: SeatView, step?: PassStep) => void;
}

/** A policy that gives away what costs the near ways the least weight. */
export class ByWeight implements Policy {
  readonly #outlook: Outlook;
  readonly #near: NearWays;
  readonly #worth = new Float64Array(KIND_COUNT);
  readonly #free = new Uint8Array(KIND_COUNT);

  constructor(card: TableCard, outlook: Outlook) {
    this.#outlook = outlook;
    this.#near = new NearWays(card, outlook.weights);
  }

  pass(view: SeatView, step: PassStep, blind: boolean, out: Kind[]): number {
    this.#outlook.prepare?.(view, step);
    this.#collect(view);
    for (let place = 0; place < 3; place += 1) {
      const kind = this.#leastUseful(view);
      if (kind === JOKER) return place;
      if (blind && !this.#isIdle(kind)) return place;
      out[place] = kind;
      this.#near.take(kind);
    }
    return 3;
  }

  goesOn(view: SeatView): boolean {
    this.#outlook.prepare?.(view, 'left2');
    this.#collect(view);
    const before = this.#near.total();
    for (let place = 0; place < 3; place += 1) this.#near.take(this.#leastUseful(view));
    return this.#near.total() >= before * (1 - this.#outlook.stopShare);
  }

  courtesy(view: SeatView, out: Kind[]): number {
    this.#outlook.prepare?.(view, 'courtesy');
    this.#collect(view);
    for (let place = 0; place < 3; place += 1) {
      const kind = this.#leastUseful(view);
      if (!this.#isIdle(kind)) return place;
      out[place] = kind;
      this.#near.take(kind);
    }
    return 3;
  }

  discard(view: SeatView): Kind {
    this.#outlook.prepare?.(view);
    this.#collect(view);
    return this.#leastUseful(view);
  }

  /** After a discard was chosen: the next best one that is not held back; undefined if there is none, or none idle where it must be. */
  nextDiscard(view: SeatView, held: Uint8Array, mustBeIdle = false): Kind | undefined {
    for (let kind = 0; kind < KIND_COUNT; kind += 1) {
      this.#free[kind] = held[kind] === 0 ? (this.#near.counts[kind] as number) : 0;
    }
    const kind = leastWorth(this.#free, this.#worth, view.likings);
    return kind === JOKER || (mustBeIdle && !this.#isIdle(kind)) ? undefined : kind;
  }

  call(view: SeatView, kind: Kind, offer: Offer): boolean {
    this.#outlook.prepare?.(view);
    const jokers = view.hand.counts[JOKER] as number;
    const own = view.hand.counts[kind] as number;
    const largest = Math.min(6, own + jokers + 1);
    if (!this.#mayGain(view, kind, largest)) return false;
    let gathered = false;
    let best = 0;
    for (let size = 3; size <= largest; size += 1) {
      if (!view.hand.mayExpose(kind, size)) continue;
      if (!gathered) {
        this.#collect(view);
        best = this.#near.total();
        gathered = true;
      }
      const needed = Math.max(0, size - 1 - own);
      const after = this.#near.totalAfterCall(view, kind, size, needed);
      if (after <= best) continue;
      best = after;
      offer.size = size;
      offer.jokers = needed;
    }
    return gathered && best > this.#near.total();
  }

  /** The way that a waiting hand works for, the heaviest; -1 for a dead hand. */
  aim(view: SeatView): number {
    this.#outlook.prepare?.(view);
    this.#collect(view);
    const place = this.#near.heaviest();
    return place < 0 ? -1 : (this.#near.ways[place] as number);
  }

  swap(view: SeatView, kind: Kind): boolean {
    this.#outlook.prepare?.(view);
    this.#collect(view);
    const place = this.#near.heaviest();
    return place < 0 || this.#near.plainNeed(place, kind) < (view.hand.counts[kind] as number);
  }

  #collect(view: SeatView): void {
    this.#near.collect(view, this.#outlook.margin);
    if (this.#outlook.lines !== undefined) this.#near.keepLines(this.#outlook.lines);
  }

  /** Whether one of the ways that would be gathered may hold a group of the kind: asked first, because it is quick. */
  #mayGain(view: SeatView, kind: Kind, largest: number): boolean {
    const limit = view.hand.least() + this.#outlook.margin;
    let isOpen = false;
    for (let size = 3; size <= largest; size += 1) {
      if (view.hand.mayExpose(kind, size, limit)) return true;
      isOpen ||= view.hand.mayExpose(kind, size);
    }
    return isOpen && !this.#near.someLives(view, limit);
  }

  #leastUseful(view: SeatView): Kind {
    this.#worth.set(this.#near.losses());
    this.#favourTarget(this.#worth);
    return leastWorth(this.#near.counts, this.#worth, view.likings);
  }

  #favourTarget(worth: Float64Array): void {
    const { targetBonus } = this.#outlook;
    const target = targetBonus > 0 ? this.#near.heaviest() : -1;
    if (target < 0) return;
    for (let kind = 0; kind < KIND_COUNT; kind += 1) {
      if (this.#near.counts[kind] !== 0 && this.#near.uses(target, kind))
        worth[kind] = (worth[kind] as number) + targetBonus;
    }
  }

  #isIdle(kind: Kind): boolean {
    return kind !== JOKER && (this.#worth[kind] as number) <= this.#outlook.idleShare * this.#near.total();
  }
}

/** More than all weights together can be worth, so that the target's tiles always stay. */
const ABOVE_ALL = 1e6;

/** Works for the nearest living hand alone; other near hands only decide between idle tiles. */
export const nearest: PolicyMaker = (card) =>
  new ByWeight(card, {
    weights: DISTANCE_WEIGHTS,
    margin: 2,
    targetBonus: ABOVE_ALL,
    idleShare: 0.001,
    stopShare: 0.4,
  });

/** They fall so steeply with away that the nearest way outweighs any number of farther ones. */
const DISTANCES = powersOf(1 / 256);
const DISTANCE_WEIGHTS = new ShortageWeights(
  (plainShort, wildShort) => (DISTANCES[plainShort] as number) * (DISTANCES[wildShort] as number),
);

/** What missing tiles leave of a hand's weight: a third for each. */
const WILD_FACTORS = THIRDS;
/** The same for tiles of a single or a pair, which no joker and no call helps: a quarter. */
const PLAIN_FACTORS = powersOf(1 / 4);

/** Weighs every near hand softly and gives away the tile whose loss costs the least weight in all. */
export const soft: PolicyMaker = (card) => new ByWeight(card, SOFT);

/** The same player, who looks at so many lines of the card only, the best ones. */
export function softWithin(card: TableCard, lines: number): ByWeight {
  return new ByWeight(card, { ...SOFT, lines });
}

/** 1 for a whole hand. */
const SOFT_WEIGHTS = new ShortageWeights(
  (plainShort, wildShort) => (PLAIN_FACTORS[plainShort] as number) * (WILD_FACTORS[wildShort] as number),
);

const SOFT: Outlook = { weights: SOFT_WEIGHTS, margin: 2, targetBonus: 0, idleShare: 0.1, stopShare: 0.4 };
