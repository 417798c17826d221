import { type Result, success } from '../base/result.ts';
import { applyDealt } from './apply-deal.ts';
import { applyEnded, applyNoted } from './apply-end.ts';
import { applyGave, applyReceived, applyStopped } from './apply-pass.ts';
import { applyCalled, applyDiscarded, applyDrew, applySwapped } from './apply-play.ts';
import type { GameEvent } from './events.ts';
import { type GameState, NEW_GAME } from './game-state.ts';
import { type GameProblem, refuse } from './problems.ts';

/** The state after one more event, or why the event can't be. The state given is left as it is. */
export function applyEvent(state: GameState, event: GameEvent): Result<GameState, GameProblem> {
  if (state.result !== null && event.type !== 'noted') {
    return refuse('ended', 'This game has ended: undo the result to go on with it.');
  }
  const next = applyByType(state, event);
  return next.ok ? success({ ...next.value, length: state.length + 1 }) : next;
}

/**
 * The state after all events. A refused event is told by its place: `problem.at` counts from 0,
 * the sentence from 1.
 */
export function stateOf(events: readonly GameEvent[]): Result<GameState, GameProblem> {
  const { state, problem } = replay(events);
  return problem === null ? success(state) : { ok: false, problem };
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
  return { code, message: `Event ${place + 1} can't be: ${message}`, at: place };
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
