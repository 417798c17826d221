import type { PassStep } from '../exchange/steps.ts';
import type { GameState } from '../game/game-state.ts';
import { handView } from '../game/hand-view.ts';
import { legalEvents } from '../game/legal.ts';
import { formatTiles } from '../tiles/text.ts';
import type { WarmUpItem } from './item.ts';

/** A moment of a game as a problem: the pass that is due, or one that is named; null where none is. */
export function itemOfMoment(state: GameState, step?: PassStep | null): WarmUpItem | null {
  const due = step === undefined ? (legalEvents(state).give?.step ?? null) : step;
  if (due === null || state.seat === null) return null;
  const { rack, gone } = handView(state);
  return { rack: formatTiles(rack), gone: formatTiles(gone), step: due, seat: state.seat };
}
