import { JOKER, KIND_COUNT, type Kind } from '../tiles/kinds.ts';
import type { SeatHand, ShownGroup } from './policy.ts';
import { groupCode, holdsGroups } from './table-card.ts';
import { TableRack } from './table-rack.ts';

/**
 * Added to the away of a way that a hand can no longer become, whatever it draws. The shortages of
 * such a way are no longer kept exact, so ask `isOpen`, not for equality.
 */
const BARRED = 64;
/** The largest away of a way that is not barred. */
const FARTHEST = BARRED / 2 - 1;

/** Whether an away belongs to a way that the exposures still fit. */
export function isOpen(away: number): boolean {
  return away <= FARTHEST;
}

/** One seat's rack and exposures; the ways that the exposures don't fit are barred. */
export class Hand extends TableRack implements SeatHand {
  readonly exposedGroups = new Uint8Array(KIND_COUNT);
  exposures: ShownGroup[] = [];

  get isDead(): boolean {
    return !isOpen(this.least());
  }

  /** Back to an empty rack without exposures. */
  override clear(): void {
    super.clear();
    this.exposed.fill(0);
    this.exposedGroups.fill(0);
    this.exposures = [];
  }

  /** Whether `kind` as the 14th tile makes a hand; a joker, which no group asks for by itself, is not looked at. */
  winsWith(kind: Kind): boolean {
    if (this.least() !== 1) return false;
    const { users, userStarts } = this.card.compiled;
    const end = userStarts[kind + 1] as number;
    for (let place = userStarts[kind] as number; place < end; place += 1) {
      if (this.aways[users[place] as number] === 1 && this.#helps(place, kind)) return true;
    }
    return false;
  }

  /** The way of most points that the 14 tiles make; -1 if they make none. */
  completed(): number {
    const { points } = this.card;
    let best = -1;
    for (let way = this.nextWithin(0, 0); way >= 0; way = this.nextWithin(0, way + 1)) {
      if (best < 0 || (points[way] as number) > (points[best] as number)) best = way;
    }
    return best;
  }

  mayExpose(kind: Kind, size: number, within = FARTHEST): boolean {
    const { compiled, groups, openGroups } = this.card;
    const { users, userStarts, concealed } = compiled;
    const aways = this.aways;
    const wanted = (this.exposedGroups[kind] as number) + groupCode(size);
    if (!holdsGroups(openGroups[kind] as number, wanted)) return false;
    const end = userStarts[kind + 1] as number;
    for (let place = userStarts[kind] as number; place < end; place += 1) {
      const way = users[place] as number;
      if ((aways[way] as number) > within || concealed[way] !== 0) continue;
      if (holdsGroups(groups[way * KIND_COUNT + kind] as number, wanted)) return true;
    }
    return false;
  }

  /** Lays down a group: `called` is the discard among it, `jokers` of the rest are jokers, all others natural. */
  expose(kind: Kind, size: number, jokers: number): void {
    const naturals = size - 1 - jokers;
    this.counts[kind] = (this.counts[kind] as number) - naturals;
    this.counts[JOKER] = (this.counts[JOKER] as number) - jokers;
    this.size -= naturals + jokers;
    this.exposures = [...this.exposures, { kind, size, jokers }];
    this.exposed[kind] = (this.exposed[kind] as number) + size;
    this.exposedGroups[kind] = (this.exposedGroups[kind] as number) + groupCode(size);
    this.#barAllBut(kind);
  }

  /** Puts a natural tile in the place of a joker of an exposure; the joker is taken by whoever swaps. */
  giveUpJoker(place: number): void {
    this.exposures = this.exposures.map((each, at) => (at === place ? { ...each, jokers: each.jokers - 1 } : each));
  }

  #helps(place: number, kind: Kind): boolean {
    const count = this.counts[kind] as number;
    const plain = this.card.userPlain[place] as number;
    if (count < plain) return true;
    const wild = (this.card.userWild[place] as number) - (this.exposed[kind] as number);
    const way = this.card.compiled.users[place] as number;
    return count - plain < wild && (this.wildShort[way] as number) > (this.counts[JOKER] as number);
  }

  #barAllBut(kind: Kind): void {
    const { compiled, groups } = this.card;
    const { users, userStarts, concealed } = compiled;
    const aways = this.aways;
    const wanted = this.exposedGroups[kind] as number;
    const end = userStarts[kind + 1] as number;
    const fitting: number[] = [];
    for (let place = userStarts[kind] as number; place < end; place += 1) {
      const way = users[place] as number;
      const held = groups[way * KIND_COUNT + kind] as number;
      if (isOpen(aways[way] as number) && concealed[way] === 0 && holdsGroups(held, wanted)) fitting.push(way);
    }
    aways.fill(BARRED, 0, compiled.wayCount);
    for (const way of fitting) this.recount(way);
    // The called tile brings a way nearer by one; what it bars goes farther.
    this.lowerLeast(-1);
  }
}
