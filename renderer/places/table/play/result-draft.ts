import type { Seat } from '../../../../core/exchange/steps.ts';
import type { EndedEvent } from '../../../../core/game/events.ts';
import type { LineDocument } from '../../../../core/engine/reading-questions.ts';
import type { Result } from '../../../../core/base/result.ts';
import type { GameSession } from '../../../session/game-session.ts';

/** A result while it is entered; null or an empty text is what is not said yet. */
export interface ResultDraft {
  readonly result: EndedEvent['result'] | null;
  readonly winner: Seat | null;
  readonly by: 'draw' | 'discard' | null;
  readonly from: Seat | null;
  readonly lineId: string | null;
  readonly jokerless: boolean | null;
  /** The points as written; empty for those of the card. */
  readonly points: string;
  /** The user's seat, where the deal was not logged. */
  readonly seat: Seat | null;
}

export const EMPTY_RESULT: ResultDraft = {
  result: null,
  winner: null,
  by: null,
  from: null,
  lineId: null,
  jokerless: null,
  points: '',
  seat: null,
};

/** A result that was entered before, to be changed. */
export function draftOf(event: EndedEvent): ResultDraft {
  const { result, winner, by, from, lineId, jokerless, points, seat } = event;
  return {
    result,
    winner: winner ?? null,
    by: by ?? null,
    from: from ?? null,
    lineId: lineId ?? null,
    jokerless: jokerless ?? null,
    points: points === undefined ? '' : String(points),
    seat: seat ?? null,
  };
}

/** Whether the points as written can be taken: nothing, or a number of 0 or more. */
export function arePointsGood({ points }: ResultDraft): boolean {
  return points.trim() === '' || /^\d{1,6}([.,]\d{1,2})?$/.test(points.trim());
}

/** The event; null while what must be said is not. What belongs to no win is left out of a game that nobody won. */
export function eventOf(draft: ResultDraft, line: LineDocument | undefined): EndedEvent | null {
  const { result, winner, seat } = draft;
  if (result === null || !arePointsGood(draft)) return null;
  const seated = seat === null ? {} : { seat };
  if (result !== 'won') return { type: 'ended', result, ...seated };
  return winner === null ? null : { type: 'ended', result, winner, ...winOf(draft, line), ...seated };
}

function winOf(draft: ResultDraft, line: LineDocument | undefined): Omit<EndedEvent, 'type' | 'result'> {
  const { winner, by, from, lineId, jokerless } = draft;
  const points = pointsOf(draft);
  const own = points !== null && points !== line?.points;
  return {
    ...(by === null ? {} : { by }),
    ...(by === 'discard' && from !== null && from !== winner ? { from } : {}),
    ...(lineId === null ? {} : { lineId }),
    ...(jokerless === null || line?.pairsOnly === true ? {} : { jokerless }),
    ...(own ? { points } : {}),
  };
}

function pointsOf({ points }: ResultDraft): number | null {
  return points.trim() === '' ? null : Number(points.trim().replace(',', '.'));
}

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
