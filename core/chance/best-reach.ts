import { BASE_MODELS, baseStageAt } from '../reading/base-model.ts';
import { type Deficits, emptyDeficits, fillDeficits } from '../reading/deficits.ts';
import { DirectReach } from '../reading/direct-reach.ts';
import type { SeatHand } from '../table/policy.ts';
import type { TableCard } from '../table/table-card.ts';
import { JOKER } from '../tiles/kinds.ts';

/**
 * What a missing tile counts when near ways are sought: one of a single or a pair, which no call before the last and no
 * joker helps, more than one of a larger group. Ways up to `MARGIN` behind the nearest by this count are read, of those
 * up to `AWAY_MARGIN` farther away than the nearest.
 */
const PLAIN_COST = 3;
const WILD_COST = 2;
const MARGIN = 4;
const AWAY_MARGIN = 3;

const READERS = BASE_MODELS.map((model) => new DirectReach(model));

/**
 * The largest reach over the near ways that a hand can still become: exposed groups fill their places first, the rest is
 * read from the concealed tiles; ways that don't hold the exposed groups, and concealed ones after an exposure, are out.
 * All ways are read where no near one lives. 1 for a complete hand, 0 for a dead one.
 *
 * @param unseen 36 counts of the tiles that may still come
 * @param drawn tiles drawn from the wall by all seats
 */
export function bestReach(card: TableCard, hand: SeatHand, unseen: Uint8Array, drawn: number): number {
  const least = hand.least();
  if (least === 0) return 1;
  if (hand.isDead) return 0;
  const reader = READERS[baseStageAt(drawn)] as DirectReach;
  const jokers = hand.counts[JOKER] as number;
  let nearest = Infinity;
  for (let way = hand.nextWithin(least, 0); way >= 0; way = hand.nextWithin(least, way + 1)) {
    nearest = Math.min(nearest, costOf(hand, way, jokers));
  }
  // Farther than this each way costs too much.
  const limit = Math.min(FARTHEST, least + AWAY_MARGIN, Math.floor((nearest + MARGIN) / WILD_COST));
  let length = 0;
  for (let way = hand.nextWithin(limit, 0); way >= 0; way = hand.nextWithin(limit, way + 1)) {
    const cost = costOf(hand, way, jokers);
    if (cost < nearest) nearest = cost;
    if (cost > nearest + MARGIN) continue;
    if (length === NEAR.length) grow();
    NEAR[length] = way;
    COSTS[length] = cost;
    length += 1;
  }
  let best = 0;
  for (let place = 0; place < length; place += 1) {
    if ((COSTS[place] as number) > nearest + MARGIN) continue;
    best = Math.max(best, rawOfWay(card, NEAR[place] as number, hand, unseen, reader, best));
  }
  if (best > 0) return reader.reachOf(best);
  for (let way = hand.nextWithin(FARTHEST, 0); way >= 0; way = hand.nextWithin(FARTHEST, way + 1)) {
    best = Math.max(best, rawOfWay(card, way, hand, unseen, reader, best));
  }
  return reader.reachOf(best);
}

function costOf(hand: SeatHand, way: number, jokers: number): number {
  const wild = Math.max(0, (hand.wildShort[way] as number) - jokers);
  return PLAIN_COST * (hand.awayOf(way) - wild) + WILD_COST * wild;
}

/** The away of a hand of which nothing is there. */
const FARTHEST = 14;
/** The near ways of the hand read last, with what each counts. */
let NEAR = new Int32Array(1024);
let COSTS = new Uint8Array(1024);

function grow(): void {
  const [near, costs] = [NEAR, COSTS];
  NEAR = new Int32Array(2 * near.length);
  COSTS = new Uint8Array(2 * near.length);
  NEAR.set(near);
  COSTS.set(costs);
}

const DEFICITS: Deficits = emptyDeficits();

/** The raw chance of a way if it is more than `least`, otherwise some number that is not. */
function rawOfWay(
  card: TableCard,
  way: number,
  hand: SeatHand,
  unseen: Uint8Array,
  reader: DirectReach,
  least: number,
): number {
  const { compiled } = card;
  fillDeficits(compiled, way, hand.counts, unseen, DEFICITS, hand.exposed);
  return reader.rawAbove(DEFICITS, unseen[JOKER] as number, compiled.concealed[way] === 1, least);
}
