import { type Seat, SEATS } from '../exchange/steps.ts';
import type { GameEvent } from './events.ts';
import type { GameState } from './game-state.ts';
import { handSize } from './seen.ts';

/** The seat that plays after a seat: play goes to the right (common practice). */
export function nextInTurn(seat: Seat): Seat {
  return SEATS[(SEATS.indexOf(seat) + 1) % SEATS.length] as Seat;
}

/**
 * Whose tile is likely to be logged next: only a guess, since nobody has to log everything. After
 * a draw, a call or a swap the same seat discards; after a discard the next seat plays. Players who
 * log only their own tiles are not asked for the others': when nothing of the others lies between
 * the last two own discards, it is the user's turn again.
 */
export function likelySeat(state: GameState, events: readonly GameEvent[]): Seat {
  const own = state.seat ?? 'East';
  const last = events.findLast(isPlay);
  if (last?.type === 'drew' || handSize(state) === 14) return own;
  if (last === undefined) return 'East';
  if (last.type !== 'discarded') return last.seat;
  if (last.seat === own && logsOnlyOwn(events, own)) return own;
  return nextInTurn(last.seat);
}

type PlayEvent = Extract<GameEvent, { type: 'drew' | 'discarded' | 'called' | 'swapped' }>;

function isPlay(event: GameEvent): event is PlayEvent {
  return ['drew', 'discarded', 'called', 'swapped'].includes(event.type);
}

function logsOnlyOwn(events: readonly GameEvent[], own: Seat): boolean {
  const isOwnDiscard = (event: GameEvent): boolean => event.type === 'discarded' && event.seat === own;
  const last = events.findLastIndex(isOwnDiscard);
  const before = events.slice(0, last).findLastIndex(isOwnDiscard);
  if (before < 0) return false;
  return events.slice(before + 1, last).every((event) => !isPlay(event) || event.type === 'drew' || event.seat === own);
}
