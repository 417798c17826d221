import { type Deficits, emptyDeficits, fillDeficits } from '../reading/deficits.ts';
import { readerOf, reachOfDeficits } from '../reading/reader.ts';
import type { ReachModel } from '../reading/reach-model.ts';
import { JOKER } from '../tiles/kinds.ts';
import type { HandView } from './hand-view.ts';
import type { TableCard } from './table-card.ts';

/**
 * Ways so many tiles behind the nearest are looked at first; the others only when nothing can
 * become of these. A tile less divides a reach by three or more, so that a farther way does not lead.
 */
const MARGIN = 3;

/** The largest reach over the ways of a card for a rack before play. */
export class BestReach {
  readonly #card: TableCard;
  readonly #model: ReachModel;
  readonly #deficits: Deficits = emptyDeficits();

  constructor(card: TableCard, model: ReachModel) {
    this.#card = card;
    this.#model = model;
  }

  /** `counts` and `unseen`: 36 counts each; `hand` holds the same rack. */
  of(hand: HandView, counts: Uint8Array, unseen: Uint8Array): number {
    const near = this.#bestUpTo(hand, hand.least() + MARGIN, counts, unseen);
    return near > 0 ? near : this.#bestUpTo(hand, Infinity, counts, unseen);
  }

  #bestUpTo(hand: HandView, limit: number, counts: Uint8Array, unseen: Uint8Array): number {
    const { compiled } = this.#card;
    const { reach } = readerOf(this.#model);
    const jokers = unseen[JOKER] as number;
    let best = 0;
    for (let way = 0; way < compiled.wayCount; way += 1) {
      if (hand.awayOf(way) > limit) continue;
      fillDeficits(compiled, way, counts, unseen, this.#deficits);
      best = Math.max(best, reachOfDeficits(reach, this.#deficits, jokers, compiled.concealed[way] === 1));
    }
    return best;
  }
}
