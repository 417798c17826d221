import type { EndedEvent } from '../../../../core/game/events.ts';
import type { GameSession } from '../../../session/game-session.ts';
import { resultWords as words } from '../../../words/play.ts';
import { seatName, seatNameFull } from './seat-names.ts';

/** How a game ended: "Across (North) won by your discard". */
export function resultSentence(
  session: Pick<GameSession, 'state' | 'players'>,
  { result, winner, by, from }: EndedEvent,
): string {
  if (result !== 'won' || winner === undefined) return words.results[result];
  const own = session.state.seat;
  const who = winner === own ? seatName(session, winner) : seatNameFull(session, winner);
  if (by === undefined) return words.won(who);
  if (by === 'draw') return words.wonByDraw(who);
  if (from === undefined) return words.wonByDiscard(who);
  return from === own ? words.wonByYours(who) : words.wonByTheirs(who, seatName(session, from));
}
