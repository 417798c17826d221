import type { Seat } from '../exchange/steps.ts';
import type { EndedEvent, GameEvent } from '../game/events.ts';
import { nextInTurn } from '../game/stage.ts';

/** What a game's log tells of the players at its table. */
export interface TableLog {
  /** Tiles drawn by all seats until somebody won; null where the play is not logged turn by turn. */
  readonly drawn: number | null;
  /** Whether a second round was played that the user herself had not stopped; null where that isn't known. */
  readonly secondRound: boolean | null;
}

/** Reads what the log of a game, whose events must be legal, tells of its table; `own` is the user's seat. */
export function tableLogOf(events: readonly GameEvent[], own: Seat | null): TableLog {
  return { drawn: drawnIn(events), secondRound: secondRoundIn(events, own) };
}

/** A stop without a seat was somebody else's: the user's own is logged with hers. */
function secondRoundIn(events: readonly GameEvent[], own: Seat | null): boolean | null {
  if (events.some((event) => event.type === 'gave' && event.step === 'left2')) return true;
  const stop = events.find((event) => event.type === 'stopped' && event.before === 'left2');
  return stop?.type !== 'stopped' || (stop.seat !== undefined && stop.seat === own) ? null : false;
}

/** Whose turn it is, and whether that turn begins with a draw. */
interface Turn {
  readonly seat: Seat;
  readonly draws: boolean;
  /** Tiles drawn before it. */
  readonly before: number;
  readonly lastDiscard: Seat | null;
}

/** East begins without a draw (TB-9). */
const FIRST_TURN: Turn = { seat: 'East', draws: false, before: 0, lastDiscard: null };

/** Each turn ends with a discard, and each but the first begins with a draw or a call (TB-9, TB-11): a gap in that is seen. */
function drawnIn(events: readonly GameEvent[]): number | null {
  let turn = FIRST_TURN;
  for (const event of events) {
    if (event.type === 'ended') return drawnUntil(event, turn);
    const next = turnAfter(event, turn);
    if (next === null) return null;
    turn = next;
  }
  return null;
}

/** The turn as it stands after an event; null where the event can't follow. */
function turnAfter(event: GameEvent, turn: Turn): Turn | null {
  const { seat, draws, before, lastDiscard } = turn;
  switch (event.type) {
    case 'discarded':
      if (event.seat !== seat) return null;
      return { seat: nextInTurn(seat), draws: true, before: before + Number(draws), lastDiscard: seat };
    case 'called':
      if (lastDiscard === null || (event.from ?? lastDiscard) !== lastDiscard) return null;
      return { ...turn, seat: event.seat, draws: false };
    default:
      return turn;
  }
}

/** The winner is the one whose turn it is, or takes the last discard. Without any discard no play is logged. */
function drawnUntil({ result, winner, by, from }: EndedEvent, turn: Turn): number | null {
  if (result !== 'won' || turn.lastDiscard === null) return null;
  if (by === 'draw') return winner === turn.seat ? turn.before + Number(turn.draws) : null;
  return by === 'discard' && turn.draws && (from ?? turn.lastDiscard) === turn.lastDiscard ? turn.before : null;
}
