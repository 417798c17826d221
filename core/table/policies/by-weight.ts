import type { PassStep } from '../../exchange/steps.ts';
import { JOKER, KIND_COUNT, type Kind } from '../../tiles/kinds.ts';
import { NearWays, type Weigher } from '../near-ways.ts';
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

  pass(view: SeatView, _step: PassStep, blind: boolean, out: Kind[]): number {
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
    this.#near.collect(view, this.#outlook.margin);
    for (let idle = 0; idle < 3; idle += 1) {
      const kind = this.#leastUseful(view);
      if (!this.#isIdle(kind)) return false;
      this.#near.take(kind);
    }
    return true;
  }

  courtesy(view: SeatView, out: Kind[]): number {
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
    this.#near.collect(view, this.#outlook.margin);
    return this.#leastUseful(view);
  }

  call(view: SeatView, kind: Kind, offer: Offer): boolean {
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
      const after = this.#near.totalAfterCall(view, kind, size);
      if (after <= best) continue;
      best = after;
      offer.size = size;
      offer.jokers = Math.max(0, size - 1 - own);
    }
    return gathered && best > this.#near.total();
  }

  swap(view: SeatView, kind: Kind): boolean {
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
