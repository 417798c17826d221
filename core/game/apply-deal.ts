import { expectValue, type Result, success } from '../base/result.ts';
import { startExchange } from '../exchange/state.ts';
import { Tiles } from '../tiles/tiles.ts';
import type { DealtEvent } from './events.ts';
import { type GameProblem, refuse } from './problems.ts';
import type { GameState } from './game-state.ts';
import { tileListField } from './tile-fields.ts';

/** The deal: the first thing of a game, save for notes. */
export function applyDealt(state: GameState, event: DealtEvent): Result<GameState, GameProblem> {
  if (state.seat !== null) return refuse('already-dealt', 'The deal is already logged: undo it, or begin a new game.');
  const list = tileListField(event.tiles);
  if (!list.ok) return list;
  const due = event.seat === 'East' ? 14 : 13;
  const count = list.value.length;
  if (count !== due) return refuse('wrong-count', dealCount(event.seat, count, due));
  const rack = Tiles.of(list.value);
  const exchange = expectValue(startExchange(rack));
  return success({ ...state, seat: event.seat, rack, arrival: list.value, exchange });
}

function dealCount(seat: string, count: number, due: number): string {
  const missing = due - count;
  const tiles = Math.abs(missing) === 1 ? 'tile' : 'tiles';
  const mend = missing > 0 ? `add ${missing} ${tiles}` : `take ${-missing} ${tiles} away`;
  return `${seat} is dealt ${due} tiles, but these are ${count}: ${mend}.`;
}
