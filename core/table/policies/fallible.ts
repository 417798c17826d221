import { type Random, randomFromSeed } from '../../base/random.ts';
import type { PassStep } from '../../exchange/steps.ts';
import { KIND_COUNT, type Kind } from '../../tiles/kinds.ts';
import { HeldBack } from '../held-back.ts';
import type { Failings } from '../kinds.ts';
import type { LikelyDiscard, Offer, Policy, PolicyMaker, SeatView } from '../policy.ts';
import type { TableCard } from '../table-card.ts';
import { wrongGroup } from '../wrong-group.ts';
import { type ByWeight, softWithin } from './by-weight.ts';

/** A soft player with failings. */
export function fallible(failings: Failings): PolicyMaker {
  return (card) => new Fallible(card, failings);
}

/** Decides as another does, but overlooks some of it, and holds back what others seem to want. */
class Fallible implements Policy {
  readonly failings: Failings;
  readonly #policy: ByWeight;
  readonly #heldBack: HeldBack;
  readonly #held = new Uint8Array(KIND_COUNT);
  #random: Random = randomFromSeed(0);

  constructor(card: TableCard, failings: Failings) {
    this.#policy = softWithin(card, failings.lines);
    this.#heldBack = new HeldBack(card);
    this.failings = failings;
  }

  begin(random: Random): void {
    this.#random = randomFromSeed(random.bits());
  }

  pass(view: SeatView, step: PassStep, blind: boolean, out: Kind[]): number {
    return this.#policy.pass(view, step, blind, out);
  }

  goesOn(view: SeatView): boolean {
    return this.#happens(this.chanceToGoOn(view));
  }

  chanceToGoOn(view: SeatView): number {
    return this.#policy.goesOn(view) ? 1 - this.failings.stops : this.failings.goesOn;
  }

  courtesy(view: SeatView, out: Kind[]): number {
    return this.#policy.courtesy(view, out);
  }

  discard(view: SeatView): Kind {
    const best = this.#bestDiscard(view);
    return this.#happens(this.failings.secondBest) ? this.#secondDiscard(view, best) : best;
  }

  likelyDiscards(view: SeatView): readonly LikelyDiscard[] {
    const best = this.#bestDiscard(view);
    const slip = this.failings.secondBest;
    return [
      { kind: best, share: 1 - slip },
      { kind: this.#secondDiscard(view, best), share: slip },
    ];
  }

  #bestDiscard(view: SeatView): Kind {
    if (this.failings.holdsBack) this.#heldBack.mark(view, this.#held);
    else this.#held.fill(0);
    const best = this.#policy.discard(view);
    return this.#held[best] === 0 ? best : (this.#policy.nextDiscard(view, this.#held, true) ?? best);
  }

  /** The next one after `best`, which has just been chosen. */
  #secondDiscard(view: SeatView, best: Kind): Kind {
    this.#held[best] = 1;
    return this.#policy.nextDiscard(view, this.#held) ?? best;
  }

  get unfailing(): Policy {
    return this.#policy;
  }

  callsWrongly(view: SeatView, kind: Kind, offer: Offer): boolean {
    return this.#happens(this.failings.wrongCalls) && wrongGroup(view, kind, offer);
  }

  call(view: SeatView, kind: Kind, offer: Offer): boolean {
    return this.#policy.call(view, kind, offer) && !this.#happens(this.failings.missedCalls);
  }

  swap(view: SeatView, kind: Kind): boolean {
    return this.#policy.swap(view, kind) && !this.#happens(this.failings.missedSwaps);
  }

  seesWin(): boolean {
    return !this.#happens(this.failings.missedWins);
  }

  #happens(chance: number): boolean {
    return this.#random.fraction() < chance;
  }
}
