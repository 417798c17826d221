import type { Result } from '../../../../core/base/result.ts';
import type { EndedEvent } from '../../../../core/game/events.ts';
import type { GameSession } from '../../../session/game-session.ts';

type Log = Pick<GameSession, 'state' | 'events' | 'canUndo' | 'undo' | 'redo' | 'apply'>;

/**
 * Enters a result in the place of the one there is, if any; notes that were made since stay. A
 * refused one leaves all as it was.
 */
export function enterResult(session: Log, event: EndedEvent): Result<null> {
  const ended = session.events.findIndex(({ type }) => type === 'ended');
  const later = ended < 0 ? [] : session.events.slice(ended + 1);
  let undone = 0;
  for (; session.state.result !== null && session.canUndo; undone += 1) session.undo();
  const entered = session.apply(event);
  if (entered.ok) for (const note of later) session.apply(note);
  else for (; undone > 0; undone -= 1) session.redo();
  return entered;
}
