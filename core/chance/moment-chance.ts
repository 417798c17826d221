import { agreed, mayBeBlind, PASS_SIZES, PASS_STEPS, type PassStep } from '../exchange/steps.ts';
import { chanceToGoOn, type Offer } from '../table/policy.ts';
import { layExposure, playerAt, SEAT_COUNT, showTile, type Table, wallLeft } from '../table/table.ts';
import { WALL_AT_START } from '../tiles/deal.ts';
import { JOKER, type Kind, KIND_COUNT } from '../tiles/kinds.ts';
import type { CardChance } from './card-chance.ts';
import { chanceOf } from './fit.ts';
import { layHand } from './lay.ts';
import { stateAt } from './sampler.ts';

/** Tiles in a rack, at most, while others wait. */
const RACK = 13;

/** What the steady player does at a moment, and the chance that it leaves. */
export interface SteadyChoice {
  /** Tiles given, discarded or laid open; none for letting a discard go or stopping. */
  readonly tiles: readonly Kind[];
  readonly chance: number;
}

/**
 * The chance to win of a seat as it stands at a table: the value of a state after a decision by the card's fit, and of a
 * state before one that which the steady player's own choice leaves (CHANCE.md). Tiles are given, discarded and exposed
 * for trial, and lie as before afterwards.
 */
export class MomentChance {
  readonly #fit: CardChance;
  readonly #table: Table;
  readonly #unseen = new Uint8Array(KIND_COUNT);
  /** 0 to 3 for East, South, West, North. */
  seat = 0;

  constructor(table: Table, fit: CardChance) {
    this.#table = table;
    this.#fit = fit;
  }

  /** After giving at a step, with `coming` tiles still to come in; none after a pass that was handed on unseen. */
  afterGiving(step: PassStep, coming: number): number {
    if (coming > 0) return this.#value({ step, coming, drawn: 0, before: 0 });
    const next = PASS_STEPS[PASS_STEPS.indexOf(step) + 1];
    return next === undefined ? this.beforePlay() : this.beforePass(next);
  }

  /** Before a step that is due: what the steady player's own choice leaves. */
  beforePass(step: PassStep): number {
    return step === 'left2' ? this.beforeSecondRound() : this.steadyGift(step).chance;
  }

  /**
   * In play with 13 tiles, `before` other seats to play first; 0 once the wall is empty, since nobody draws any more. A
   * joker lying open that the player can take at the next turn counts as far as it is likely to lie there still.
   */
  waiting(before: number): number {
    if (wallLeft(this.#table) === 0) return 0;
    const value = (): number => this.#value({ step: null, coming: 0, drawn: this.#drawn, before });
    const left = value();
    const swap = this.#steadySwap();
    if (swap === null) return left;
    const taken = this.#swapped(swap.owner, swap.kind, value);
    return left + this.#staysOpen(swap.kind, before) * Math.max(0, taken - left);
  }

  /** The chance that none of the seats that play before holds a tile to take a joker with: a hypergeometric law. */
  #staysOpen(kind: Kind, before: number): number {
    const { view } = playerAt(this.#table, this.seat);
    const hidden = wallLeft(this.#table) + (SEAT_COUNT - 1) * RACK;
    let none = 1;
    for (let copy = 0; copy < view.unseen(kind); copy += 1) none *= Math.max(0, 1 - (before * RACK) / (hidden - copy));
    return none;
  }

  /** After a gift from the rack as laid; tiles of the rack. */
  afterGift(step: PassStep, tiles: readonly Kind[]): number {
    return this.#without(tiles, true, () => this.afterGiving(step, tiles.length));
  }

  /** After a discard from a rack of 14. */
  afterDiscard(kind: Kind): number {
    return this.#without([kind], false, () => this.waiting(SEAT_COUNT - 1));
  }

  /** What the steady player gives at a step that is due. */
  steadyGift(step: PassStep): SteadyChoice {
    const { policy, view } = playerAt(this.#table, this.seat);
    const tiles: Kind[] = [];
    if (step === 'courtesy') {
      tiles.length = policy.courtesy(view, tiles);
      return { tiles, chance: this.afterAsking(tiles) };
    }
    tiles.length = policy.pass(view, step, mayBeBlind(step), tiles);
    return { tiles, chance: this.afterGift(step, tiles) };
  }

  /** After asking for a courtesy of these tiles, the first of them going first; not knowing what the other asks for. */
  afterAsking(tiles: readonly Kind[]): number {
    let sum = 0;
    for (const offered of PASS_SIZES) {
      const share = this.#fit.table.offers[offered] as number;
      if (share > 0) sum += share * this.afterGift('courtesy', tiles.slice(0, agreed(tiles.length, offered)));
    }
    return sum;
  }

  /** Before the second round: what the steady player's going on or stopping leaves, weighed by how often each happens. */
  beforeSecondRound(): number {
    const { policy, view } = playerAt(this.#table, this.seat);
    return this.#secondRound(chanceToGoOn(policy, view));
  }

  /** After going on with the second round, which another may still stop. */
  goingOn(): number {
    return this.#secondRound(1);
  }

  /** Where this seat goes on by a chance, and the others as they do at the card's games. */
  #secondRound(goesOn: number): number {
    const happens = goesOn * (1 - this.#fit.table.othersStop);
    const stopped = this.steadyGift('courtesy').chance;
    return happens === 0 ? stopped : (1 - happens) * stopped + happens * this.steadyGift('left2').chance;
  }

  /** After the exchange: East has 14 tiles and discards, the others wait for East. */
  beforePlay(): number {
    return this.seat === 0 ? this.onTurn().chance : this.waiting(this.seat);
  }

  /** Whether some way still holds the own exposed groups: in a dead hand there is nothing to choose. */
  get isAlive(): boolean {
    return !playerAt(this.#table, this.seat).hand.isDead;
  }

  /**
   * With 14 tiles: 1 for a complete hand, else what the steady player's swaps and discard leave, weighed by how often a
   * player of this kind of table slips.
   */
  onTurn(): SteadyChoice {
    const { hand, policy, view } = playerAt(this.#table, this.seat);
    if (hand.least() === 0) return { tiles: [], chance: 1 };
    if (!this.isAlive) return { tiles: [], chance: 0 };
    const discards = policy.likelyDiscards?.(view) ?? [{ kind: policy.discard(view), share: 1 }];
    let chance = 0;
    for (const { kind, share } of discards) chance += share * this.afterDiscard(kind);
    const swap = this.#steadySwap();
    if (swap !== null) {
      const made = 1 - (policy.failings?.missedSwaps ?? 0);
      chance = made * this.afterSwap(swap.owner, swap.kind) + (1 - made) * chance;
    }
    return { tiles: discards.slice(0, 1).map(({ kind }) => kind), chance };
  }

  /** The swap that the steady player would make now. */
  #steadySwap(): { readonly owner: number; readonly kind: Kind } | null {
    const { hand, policy, view } = playerAt(this.#table, this.seat);
    const { swap } = policy.unfailing ?? policy;
    for (let owner = 0; owner < SEAT_COUNT; owner += 1) {
      const found = playerAt(this.#table, owner).hand.exposures.find(
        ({ kind, jokers }) =>
          jokers > 0 && (hand.counts[kind] as number) > 0 && swap.call(policy.unfailing ?? policy, view, kind),
      );
      if (found !== undefined) return { owner, kind: found.kind };
    }
    return null;
  }

  /** After giving a tile for a joker in an exposure of a seat, with the discard still to come. */
  afterSwap(owner: number, kind: Kind): number {
    return this.#swapped(owner, kind, () => this.onTurn().chance);
  }

  /** The value with a joker taken. */
  #swapped(owner: number, kind: Kind, value: () => number): number {
    const { hand } = playerAt(this.#table, this.seat);
    const owners = playerAt(this.#table, owner).hand;
    const kept = owners.exposures;
    const place = kept.findIndex((each) => each.kind === kind && each.jokers > 0);
    if (place < 0) throw new Error('a swap for a joker that is not there');
    owners.giveUpJoker(place);
    hand.remove(kind);
    hand.add(JOKER);
    showTile(this.#table, kind, 1);
    showTile(this.#table, JOKER, -1);
    const chance = value();
    hand.remove(JOKER);
    hand.add(kind);
    showTile(this.#table, kind, -1);
    showTile(this.#table, JOKER, 1);
    owners.exposures = kept;
    return chance;
  }

  /** With 13 tiles and a discard that may be called: what the steady player's win, call or letting go leaves. */
  offered(kind: Kind, before: number): SteadyChoice {
    const { hand, policy, view } = playerAt(this.#table, this.seat);
    if (kind !== JOKER && hand.winsWith(kind)) return { tiles: [kind], chance: 1 };
    const letGo = this.waiting(before);
    if (!this.isAlive) return { tiles: [], chance: letGo };
    const offer: Offer = { size: 0, jokers: 0 };
    const calls = (hand.counts[kind] as number) + (hand.counts[JOKER] as number) >= 2 && kind !== JOKER;
    if (!calls || !(policy.unfailing ?? policy).call(view, kind, offer)) return { tiles: [], chance: letGo };
    const made = 1 - (policy.failings?.missedCalls ?? 0);
    const called = this.afterCall(kind, offer.size, offer.jokers);
    return { tiles: groupOf(kind, offer), chance: made * called + (1 - made) * letGo };
  }

  /** After a call and the discard that the steady player then makes. */
  afterCall(kind: Kind, size: number, jokers: number): number {
    const { hand } = playerAt(this.#table, this.seat);
    const kept = { rack: hand.counts.slice(), exposures: hand.exposures };
    layExposure(this.#table, this.seat, kind, size, jokers);
    const { chance } = this.onTurn();
    layHand(hand, kept.rack, kept.exposures);
    this.#table.gone[kind] = (this.#table.gone[kind] as number) - (size - 1 - jokers);
    this.#table.gone[JOKER] = (this.#table.gone[JOKER] as number) - jokers;
    return chance;
  }

  get #drawn(): number {
    return WALL_AT_START - wallLeft(this.#table);
  }

  #value(at: { step: PassStep | null; coming: number; drawn: number; before: number }): number {
    return chanceOf(stateAt(this.#table, this.seat, at, this.#unseen), this.#fit);
  }

  /** The value with some tiles out of the rack, given away or thrown. */
  #without(tiles: readonly Kind[], isGift: boolean, value: () => number): number {
    const { hand, given } = playerAt(this.#table, this.seat);
    const where = isGift ? given : this.#table.gone;
    for (const kind of tiles) {
      hand.remove(kind);
      where[kind] = (where[kind] as number) + 1;
    }
    const chance = value();
    for (const kind of tiles) {
      hand.add(kind);
      where[kind] = (where[kind] as number) - 1;
    }
    return chance;
  }
}

function groupOf(kind: Kind, { size, jokers }: Offer): Kind[] {
  return Array.from({ length: size }, (_, place) => (place < size - jokers ? kind : JOKER));
}
