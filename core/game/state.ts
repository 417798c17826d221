import { type Result, success } from '../base/result.ts';
import { applyDealt, applyGave, applyReceived, applyStopped } from './apply-exchange.ts';
import { applyCalled, applyDiscarded, applyDrew, applySwapped } from './apply-play.ts';
import type { EndedEvent, GameEvent, NotedEvent } from './events.ts';
import { type GameState, NEW_GAME } from './game-state.ts';
import { type GameProblem, type Refusal, refuse, tileField } from './tile-fields.ts';

/** The state after one more event, or why the event is illegal. The state given is left as it is. */
export function applyEvent(state: GameState, event: GameEvent): Result<GameState, GameProblem> {
  if (state.result !== null && event.type !== 'noted') {
    return refuse('ended', 'This game has ended: undo the result to go on with it.');
  }
  const next = applyByType(state, event);
  return next.ok ? success({ ...next.value, length: state.length + 1 }) : next;
}

/**
 * The state after all events. A refused event is named by its place: `problem.at` counts from 0,
 * the sentence from 1.
 */
export function stateOf(events: readonly GameEvent[]): Result<GameState, GameProblem> {
  const { state, problem } = replay(events);
  return problem === null ? success(state) : { ok: false, problem };
}

/** The states before each event and, at the end, after all of them. */
export function statesOf(events: readonly GameEvent[]): Result<readonly GameState[], GameProblem> {
  const states = [NEW_GAME];
  for (const [place, event] of events.entries()) {
    const next = applyEvent(states[place] as GameState, event);
    if (!next.ok) return { ok: false, problem: eventProblem(next.problem, place) };
    states.push(next.value);
  }
  return success(states);
}

/** The state up to the first refused event, and that event's problem, null if there is none. */
export function replay(events: readonly GameEvent[]): { state: GameState; problem: GameProblem | null } {
  let state = NEW_GAME;
  for (const [place, event] of events.entries()) {
    const next = applyEvent(state, event);
    if (!next.ok) return { state, problem: eventProblem(next.problem, place) };
    state = next.value;
  }
  return { state, problem: null };
}

function eventProblem({ code, message }: GameProblem, place: number): GameProblem {
  return { code, message: `Event ${place + 1} is not possible: ${message}`, at: place };
}

function applyByType(state: GameState, event: GameEvent): Result<GameState, GameProblem> {
  switch (event.type) {
    case 'dealt':
      return applyDealt(state, event);
    case 'gave':
      return applyGave(state, event);
    case 'received':
      return applyReceived(state, event);
    case 'stopped':
      return applyStopped(state, event);
    case 'drew':
      return applyDrew(state, event);
    case 'discarded':
      return applyDiscarded(state, event);
    case 'called':
      return applyCalled(state, event);
    case 'swapped':
      return applySwapped(state, event);
    case 'ended':
      return applyEnded(state, event);
    case 'noted':
      return applyNoted(state, event);
  }
}

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
