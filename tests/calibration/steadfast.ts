import { type Random, randomFromSeed } from '../../core/base/random.ts';
import type { PassStep } from '../../core/exchange/steps.ts';
import type { Failings } from '../../core/table/kinds.ts';
import { leastWorth } from '../../core/table/policies/by-weight.ts';
import type { Offer, Policy, SeatView } from '../../core/table/policy.ts';
import { groupCode, holdsGroups, type TableCard } from '../../core/table/table-card.ts';
import { JOKER, type Kind, KIND_COUNT } from '../../core/tiles/kinds.ts';

const WILD_USE = 1;
const PLAIN_USE = 2;

/**
 * Plays one way to the end of the game and no other: keeps what it uses, lays a group open whenever
 * that brings it nearer, never leaves it. Before play it decides as another policy does, and errs in play as often as
 * that one. This is whom a reach speaks of (core/reading/MODEL.md, MD-C1).
 */
export class Steadfast implements Policy {
  readonly #card: TableCard;
  readonly #before: Policy;
  readonly #worth = new Float64Array(KIND_COUNT);
  readonly #failings: Failings | undefined;
  #random: Random = randomFromSeed(0);
  #way = 0;

  constructor(card: TableCard, before: Policy) {
    this.#card = card;
    this.#before = before;
    this.#failings = before.failings;
  }

  begin(random: Random): void {
    if (this.#failings !== undefined) this.#random = randomFromSeed(random.bits());
  }

  /** Aims at a way number from now on; to be said when play begins, anew for each game. */
  aimAt(way: number): void {
    this.#way = way;
  }

  pass(view: SeatView, step: PassStep, blind: boolean, out: Kind[]): number {
    return this.#before.pass(view, step, blind, out);
  }

  goesOn(view: SeatView): boolean {
    return this.#before.goesOn(view);
  }

  courtesy(view: SeatView, out: Kind[]): number {
    return this.#before.courtesy(view, out);
  }

  discard(view: SeatView): Kind {
    for (let kind = 0; kind < KIND_COUNT; kind += 1) this.#worth[kind] = this.#use(view, kind);
    const best = this.#leastUseful(view);
    if (!this.#errs('secondBest')) return best;
    this.#worth[best] = Infinity;
    const second = this.#leastUseful(view);
    return this.#worth[second] === Infinity ? best : second;
  }

  #leastUseful(view: SeatView): Kind {
    const kind = leastWorth(view.hand.counts, this.#worth, view.likings);
    // When all that is left serves singles and pairs, a joker too many is the idle tile.
    return this.#worth[kind] === PLAIN_USE && (view.hand.counts[JOKER] as number) > 0 ? JOKER : kind;
  }

  seesWin(): boolean {
    return !this.#errs('missedWins');
  }

  #errs(by: 'missedWins' | 'missedCalls' | 'missedSwaps' | 'secondBest'): boolean {
    return this.#failings !== undefined && this.#random.fraction() < this.#failings[by];
  }

  call(view: SeatView, kind: Kind, offer: Offer): boolean {
    return this.#wantsCall(view, kind, offer) && !this.#errs('missedCalls');
  }

  #wantsCall(view: SeatView, kind: Kind, offer: Offer): boolean {
    const { compiled, groups } = this.#card;
    const { counts, exposedGroups, wildShort } = view.hand;
    const jokers = counts[JOKER] as number;
    if (compiled.concealed[this.#way] === 1 || (wildShort[this.#way] as number) <= jokers) return false;
    const own = Math.max(0, (counts[kind] as number) - this.#plainNeed(kind));
    if (own >= this.#wildNeed(view, kind)) return false;
    const held = groups[this.#way * KIND_COUNT + kind] as number;
    for (let size = 3; size <= Math.min(6, own + jokers + 1); size += 1) {
      if (!holdsGroups(held, (exposedGroups[kind] as number) + groupCode(size))) continue;
      offer.size = size;
      offer.jokers = Math.max(0, size - 1 - own);
      return true;
    }
    return false;
  }

  swap(view: SeatView, kind: Kind): boolean {
    return (view.hand.counts[kind] as number) > this.#plainNeed(kind) && !this.#errs('missedSwaps');
  }

  /**
   * What one tile of a kind is to the way. If none is idle, the rack holds a joker too many, which
   * can take the place of a tile of a larger group.
   */
  #use(view: SeatView, kind: number): number {
    const over = (view.hand.counts[kind] as number) - this.#plainNeed(kind);
    if (over <= 0) return PLAIN_USE;
    return over > this.#wildNeed(view, kind) ? 0 : WILD_USE;
  }

  /** Tiles of a kind that the way wants in groups of one and two. */
  #plainNeed(kind: number): number {
    return this.#card.compiled.plain[this.#way * KIND_COUNT + kind] as number;
  }

  /** Tiles of a kind that the way still wants in groups of three and more, those laid open left out. */
  #wildNeed(view: SeatView, kind: number): number {
    const wanted = this.#card.compiled.wild[this.#way * KIND_COUNT + kind] as number;
    return wanted - (view.hand.exposed[kind] as number);
  }
}
