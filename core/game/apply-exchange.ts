import { expectValue, type Result, success } from '../base/result.ts';
import { give, type OwnPass, receive, stop } from '../exchange/moves.ts';
import { type ExchangeState, startExchange } from '../exchange/state.ts';
import type { Kind } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import type { DealtEvent, GaveEvent, ReceivedEvent, StoppedEvent } from './events.ts';
import type { GameState } from './game-state.ts';
import { type GameProblem, refuse, tileListField, tilesField } from './tile-fields.ts';

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
  const fix = missing > 0 ? `add ${missing} ${tiles}` : `take ${-missing} ${tiles} away`;
  return `${seat} is dealt ${due} tiles, but these are ${count}: ${fix}.`;
}

type Applied = Result<GameState, GameProblem>;

export function applyGave(state: GameState, event: GaveEvent): Applied {
  const exchange = openExchange(state);
  if (!exchange.ok) return exchange;
  const tiles = tilesField(event.tiles);
  if (!tiles.ok) return tiles;
  const moved = give(exchange.value, ownPassOf(event, tiles.value));
  return moved.ok ? success(withExchange(state, moved.value, withoutTiles(state.arrival, tiles.value))) : moved;
}

export function applyReceived(state: GameState, event: ReceivedEvent): Applied {
  const exchange = openExchange(state);
  if (!exchange.ok) return exchange;
  const list = tileListField(event.tiles);
  if (!list.ok) return list;
  const moved = receive(exchange.value, event.step, Tiles.of(list.value));
  return moved.ok ? success(withExchange(state, moved.value, [...state.arrival, ...list.value])) : moved;
}

export function applyStopped(state: GameState, event: StoppedEvent): Applied {
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

function ownPassOf(event: GaveEvent, tiles: Tiles): OwnPass {
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
