import type { PassStep } from '../../exchange/steps.ts';
import { type Face, faceOf, FLOWER, JOKER, KIND_COUNT, type Kind, KINDS, numberKind } from '../../tiles/kinds.ts';
import type { Offer, Policy, PolicyMaker, SeatView } from '../policy.ts';
import { leastWorth, nearest } from './by-weight.ts';

/** Tiles left in the wall, after about three turns each, when the beginner begins to look at the card. */
const AIM_FROM = 87;
/** What a tile is worth for each fellow in the rack, by the rule of thumb; the numbers only set the order. */
const REPEATED = 100;
const FLOWER_WORTH = 60;
const NEIGHBOUR = 8;
const NEXT_BUT_ONE = 4;
const OTHER_HONOUR = 5;
/** Tiles below this are idle: they stand alone but for their suit. */
const IDLE_BELOW = 20;

/** Keeps what repeats and what stands beside it; picks its hand late. */
export const beginner: PolicyMaker = (card) => new Beginner(nearest(card));

class Beginner implements Policy {
  readonly #aimed: Policy;
  readonly #counts = new Uint8Array(KIND_COUNT);
  readonly #worth = new Float64Array(KIND_COUNT);

  constructor(aimed: Policy) {
    this.#aimed = aimed;
  }

  pass(view: SeatView, _step: PassStep, blind: boolean, out: Kind[]): number {
    return this.#giveUp(view, out, blind);
  }

  goesOn(view: SeatView): boolean {
    return this.#giveUp(view, [], true) === 3;
  }

  courtesy(view: SeatView, out: Kind[]): number {
    return this.#giveUp(view, out, true);
  }

  discard(view: SeatView): Kind {
    if (view.wallLeft <= AIM_FROM) return this.#aimed.discard(view);
    this.#lookAt(view);
    return leastWorth(this.#counts, this.#worth, view.likings);
  }

  call(view: SeatView, kind: Kind, offer: Offer): boolean {
    return view.wallLeft <= AIM_FROM && this.#aimed.call(view, kind, offer);
  }

  swap(view: SeatView, kind: Kind): boolean {
    return view.wallLeft > AIM_FROM ? view.hand.counts[kind] === 1 : this.#aimed.swap(view, kind);
  }

  /** Three tiles by the rule of thumb, fewer if only idle ones may go. */
  #giveUp(view: SeatView, out: Kind[], onlyIdle: boolean): number {
    this.#lookAt(view);
    for (let place = 0; place < 3; place += 1) {
      const kind = leastWorth(this.#counts, this.#worth, view.likings);
      if (kind === JOKER || (onlyIdle && (this.#worth[kind] as number) >= IDLE_BELOW)) return place;
      out[place] = kind;
      this.#counts[kind] = (this.#counts[kind] as number) - 1;
      this.#judge();
    }
    return 3;
  }

  #lookAt(view: SeatView): void {
    for (let kind = 0; kind < KIND_COUNT; kind += 1) this.#counts[kind] = view.hand.counts[kind] as number;
    this.#judge();
  }

  #judge(): void {
    for (const kind of KINDS) {
      this.#worth[kind] = this.#counts[kind] === 0 ? 0 : this.#worthOf(kind);
    }
  }

  #worthOf(kind: Kind): number {
    const repeats = ((this.#counts[kind] as number) - 1) * REPEATED;
    if (kind === FLOWER) return repeats + FLOWER_WORTH;
    const face = FACES[kind] as Face;
    if (face.class === 'number') return repeats + this.#beside(face.number, face.suit) + this.#sameSuit(kind);
    return repeats + OTHER_HONOUR * this.#otherHonours(kind, face.class);
  }

  #beside(number: number, suit: 'bam' | 'crak' | 'dot'): number {
    let sum = 0;
    for (let other = Math.max(1, number - 2); other <= Math.min(9, number + 2); other += 1) {
      if (other === number || this.#counts[numberKind(other, suit)] === 0) continue;
      sum += Math.abs(other - number) === 1 ? NEIGHBOUR : NEXT_BUT_ONE;
    }
    return sum;
  }

  #sameSuit(kind: Kind): number {
    const first = kind - ((kind - FIRST_NUMBER) % 9);
    let sum = 0;
    for (let other = first; other < first + 9; other += 1) sum += this.#counts[other] as number;
    return sum - 1;
  }

  #otherHonours(kind: Kind, kindClass: Face['class']): number {
    let sum = 0;
    for (let other = FLOWER + 1; other < FIRST_NUMBER; other += 1) {
      if (other !== kind && (FACES[other] as Face).class === kindClass)
        sum += Math.min(1, this.#counts[other] as number);
    }
    return sum;
  }
}

const FIRST_NUMBER = numberKind(1, 'bam');
const FACES: readonly Face[] = KINDS.map(faceOf);
