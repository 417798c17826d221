import { type Result, success } from '../base/result.ts';
import { give, type Giving, receive, stop } from '../exchange/moves.ts';
import type { ExchangeState } from '../exchange/state.ts';
import type { Kind } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import type { GaveEvent, ReceivedEvent, StoppedEvent } from './events.ts';
import { type GameProblem, refuse } from './problems.ts';
import type { GameState } from './game-state.ts';
import { tileListField, tilesField } from './tile-fields.ts';

type Outcome = Result<GameState, GameProblem>;

export function applyGave(state: GameState, event: GaveEvent): Outcome {
  const exchange = openExchange(state);
  if (!exchange.ok) return exchange;
  const tiles = tilesField(event.tiles);
  if (!tiles.ok) return tiles;
  const moved = give(exchange.value, givingOf(event, tiles.value));
  return moved.ok ? success(withExchange(state, moved.value, withoutTiles(state.arrival, tiles.value))) : moved;
}

export function applyReceived(state: GameState, event: ReceivedEvent): Outcome {
  const exchange = openExchange(state);
  if (!exchange.ok) return exchange;
  const list = tileListField(event.tiles);
  if (!list.ok) return list;
  const moved = receive(exchange.value, event.step, Tiles.of(list.value));
  return moved.ok ? success(withExchange(state, moved.value, [...state.arrival, ...list.value])) : moved;
}

export function applyStopped(state: GameState, event: StoppedEvent): Outcome {
  const exchange = openExchange(state);
  if (!exchange.ok) return exchange;
  const moved = stop(exchange.value, event.before);
  return moved.ok ? success(withExchange(state, moved.value, state.arrival)) : moved;
}

/** The arrival order less some tiles; of equal tiles the one that came last goes. */
export function withoutTiles(arrival: readonly Kind[], tiles: Tiles): Kind[] {
  const kept = [...arrival];
  for (const kind of tiles.toKinds()) kept.splice(kept.lastIndexOf(kind), 1);
  return kept;
}

function openExchange(state: GameState): Result<ExchangeState, GameProblem> {
  if (state.exchange === null) return refuse('not-dealt', 'No deal is logged yet: enter the tiles dealt first.');
  if (state.playing) return refuse('play-begun', 'Play has begun, so the passes are over: undo the play to go back.');
  return success(state.exchange);
}

function givingOf(event: GaveEvent, tiles: Tiles): Giving {
  const { step, blind, asked, offered } = event;
  return {
    step,
    tiles,
    ...(blind === undefined ? {} : { blind }),
    ...(asked === undefined ? {} : { asked }),
    ...(offered === undefined ? {} : { offered }),
  };
}

function withExchange(state: GameState, exchange: ExchangeState, arrival: readonly Kind[]): GameState {
  return { ...state, exchange, rack: exchange.rack, arrival };
}
