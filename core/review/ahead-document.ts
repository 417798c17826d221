import type { Seat } from '../exchange/steps.ts';
import type { GameState } from '../game/game-state.ts';
import { handView } from '../game/hand-view.ts';
import type { Choice } from '../table/future-seats.ts';
import { formatTiles } from '../tiles/text.ts';
import { Tiles } from '../tiles/tiles.ts';
import type { AheadRow } from './ahead.ts';
import type { AheadLoss } from './decision.ts';

/** What a look ahead needs to know of a game before a choice of the exchange, which comes after the deal. */
export function positionOf(before: GameState): { readonly rack: Tiles; readonly gone: Tiles; readonly seat: Seat } {
  return { rack: before.rack, gone: handView(before).gone, seat: before.seat as Seat };
}

/** A loss as plain data. */
export function aheadLoss({ loss, halfWidth }: AheadRow): AheadLoss {
  return { loss, halfWidth };
}

/** The tiles of a choice in canonical text; empty for none and for stopping. */
export function tilesOf(choice: Choice): string {
  return choice.type === 'stop' ? '' : formatTiles(Tiles.of(choice.tiles));
}
