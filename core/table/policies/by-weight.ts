import type { PassStep } from '../../exchange/steps.ts';
import { JOKER, KIND_COUNT, type Kind } from '../../tiles/kinds.ts';
import { NearWays } from '../near-ways.ts';
import type { Weigher } from '../weigher.ts';
import type { Offer, Policy, SeatView } from '../policy.ts';
import type { TableCard } from '../table-card.ts';
import { leastWorth } from './choose.ts';

/** How a policy looks at the near ways; see RULES.md, "The policies". */
export interface Outlook {
  readonly weigh: Weigher;
  /** How many tiles behind the nearest a way may be and still count. */
  readonly margin: number;
  /** Added to the worth of each tile that the heaviest way uses; 0 to follow no single way. */
  readonly targetBonus: number;
  /** A tile worth at most this share of all weights is idle: it may go in the courtesy, or not be missed. */
  readonly idleShare: number;
  /** Goes on with the second round unless giving three more tiles costs more than this share of all weights. */
  readonly stopShare: number;
  /** Told before each decision; `step` is there while tiles are passed. */
  readonly prepare?: (view: SeatView, step?: PassStep) => void;
}

/** A policy that gives away what costs the near ways the least weight. */
export class ByWeight implements Policy {
  readonly #outlook: Outlook;
  readonly #near: NearWays;
  readonly #worth = new Float64Array(KIND_COUNT);

  constructor(card: TableCard, outlook: Outlook) {
    this.#outlook = outlook;
    this.#near = new NearWays(card, outlook.weigh);
  }

  pass(view: SeatView, step: PassStep, blind: boolean, out: Kind[]): number {
    this.#outlook.prepare?.(view, step);
    this.#near.collect(view, this.#outlook.margin);
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
    this.#near.collect(view, this.#outlook.margin);
    const before = this.#near.total();
    for (let place = 0; place < 3; place += 1) this.#near.take(this.#leastUseful(view));
    return this.#near.total() >= before * (1 - this.#outlook.stopShare);
  }

  courtesy(view: SeatView, out: Kind[]): number {
    this.#outlook.prepare?.(view, 'courtesy');
    this.#near.collect(view, this.#outlook.margin);
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
    this.#near.collect(view, this.#outlook.margin);
    return this.#leastUseful(view);
  }

  call(view: SeatView, kind: Kind, offer: Offer): boolean {
    this.#outlook.prepare?.(view);
    const jokers = view.hand.counts[JOKER] as number;
    const own = view.hand.counts[kind] as number;
    let gathered = false;
    let best = 0;
    for (let size = 3; size <= Math.min(6, own + jokers + 1); size += 1) {
      if (!view.hand.mayExpose(kind, size)) continue;
      if (!gathered) {
        this.#near.collect(view, this.#outlook.margin);
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

  swap(view: SeatView, kind: Kind): boolean {
    this.#outlook.prepare?.(view);
    this.#near.collect(view, this.#outlook.margin);
    const place = this.#near.heaviest();
    return place < 0 || this.#near.plainNeed(place, kind) < (view.hand.counts[kind] as number);
  }

  #leastUseful(view: SeatView): Kind {
    const worth = this.#worth.fill(0);
    this.#near.addLosses(worth);
    this.#favourTarget(worth);
    return leastWorth(this.#near.counts, worth, view.likings);
  }

  #favourTarget(worth: Float64Array): void {
    const { targetBonus } = this.#outlook;
    const target = targetBonus > 0 ? this.#near.heaviest() : -1;
    if (target < 0) return;
    for (let kind = 0; kind < KIND_COUNT; kind += 1) {
      if (this.#near.uses(target, kind)) worth[kind] = (worth[kind] as number) + targetBonus;
    }
  }

  #isIdle(kind: Kind): boolean {
    return kind !== JOKER && (this.#worth[kind] as number) <= this.#outlook.idleShare * this.#near.total();
  }
}
