import { type Result, success } from '../base/result.ts';
import type { EndedEvent, NotedEvent } from './events.ts';
import { type GameProblem, type Refusal, refuse } from './problems.ts';
import type { GameState } from './game-state.ts';
import { tileField } from './tile-fields.ts';

/** The result; may come at any time, even with nothing else logged. */
export function applyEnded(state: GameState, event: EndedEvent): Result<GameState, GameProblem> {
  const refused = event.result === 'won' ? winRefused(event) : noWinRefused(event);
  if (refused) return refused;
  if (state.seat !== null && event.seat !== undefined && event.seat !== state.seat) {
    return refuse('bad-result', `You sat ${state.seat} in this game, so the result can't seat you ${event.seat}.`);
  }
  return success({ ...state, result: event, seat: state.seat ?? event.seat ?? null });
}

/** A note; may come at any time, also after the result. */
export function applyNoted(state: GameState, event: NotedEvent): Result<GameState, GameProblem> {
  const { about } = event;
  if (event.text.trim() === '') return refuse('bad-note', 'The note is empty: write some words, or leave it out.');
  if (about !== undefined && !(Number.isInteger(about) && about >= 0 && about < state.length)) {
    return refuse('bad-note', `The note speaks of event ${about + 1}, but only ${state.length} are logged.`);
  }
  return success({ ...state, notes: [...state.notes, event] });
}

function winRefused({ winner, by, from, tile, points }: EndedEvent): Refusal | undefined {
  if (winner === undefined) return refuse('bad-result', 'Somebody won, but nobody is named: say which seat won.');
  if (by === 'draw' && from !== undefined) {
    return refuse('bad-result', 'A win by own draw has no discarder: leave the discarder out.');
  }
  if (from === winner) return refuse('bad-result', 'Nobody wins by an own discard: name another discarder.');
  if (points !== undefined && !(Number.isFinite(points) && points >= 0)) {
    return refuse('bad-result', 'The points must be a number of 0 or more.');
  }
  if (tile === undefined) return undefined;
  const named = tileField(tile);
  return named.ok ? undefined : named;
}

function noWinRefused({ winner, by, from, lineId, jokerless, tile, points }: EndedEvent): Refusal | undefined {
  if ([winner, by, from, lineId, jokerless, tile, points].every((field) => field === undefined)) return undefined;
  return refuse('bad-result', 'Nobody won this game, so it has no winner and no winning hand: leave these out.');
}
