import { playerAt, type Table, wallLeft } from '../table/table.ts';
import { JOKER, type Kind, KIND_COUNT } from '../tiles/kinds.ts';

/**
 * How far the tile that a seat is about to draw differs from the mean of all that the wall still holds. On average it is
 * nought whatever the hand, so that what it explains of a game's luck can be taken away without any bias (a control
 * variate).
 */
export interface DrawSurprise {
  /** How many tiles the nearest ways are away. */
  readonly away: number;
  /** 1 for a tile that brings one of the nearest ways nearer, otherwise 0, less the share of such tiles in the wall. */
  readonly helpful: number;
  /** The same for jokers. */
  readonly joker: number;
}

const HELPS = new Uint8Array(KIND_COUNT);

/** The surprise of the next tile of the wall for a seat about to draw it. */
export function drawSurprise(table: Table, seat: number): DrawSurprise {
  const away = markHelpful(table, seat);
  let helpful = 0;
  let jokers = 0;
  for (let place = table.next; place < table.wall.length; place += 1) {
    const kind = table.wall[place] as Kind;
    helpful += HELPS[kind] as number;
    if (kind === JOKER) jokers += 1;
  }
  const next = table.wall[table.next] as Kind;
  const left = wallLeft(table);
  return {
    away,
    helpful: (HELPS[next] as number) - helpful / left,
    joker: (next === JOKER ? 1 : 0) - jokers / left,
  };
}

/** Marks the kinds that bring one of the nearest ways nearer, and returns how far these are. */
function markHelpful(table: Table, seat: number): number {
  const { hand } = playerAt(table, seat);
  const { starts, needKind, needPlain, needWild } = table.card.compiled;
  const jokers = hand.counts[JOKER] as number;
  const least = hand.least();
  HELPS.fill(0);
  for (let way = hand.nextWithin(least, 0); way >= 0; way = hand.nextWithin(least, way + 1)) {
    const needsWild = (hand.wildShort[way] as number) > jokers;
    if (needsWild) HELPS[JOKER] = 1;
    const end = starts[way + 1] as number;
    for (let place = starts[way] as number; place < end; place += 1) {
      const kind = needKind[place] as number;
      const over = (hand.counts[kind] as number) - (needPlain[place] as number);
      const wild = (needWild[place] as number) - (hand.exposed[kind] as number);
      if (over < 0 || (needsWild && over < wild)) HELPS[kind] = 1;
    }
  }
  return least;
}
