import type { Result } from '../../../../core/base/result.ts';
import { success } from '../../../../core/base/result.ts';
import { type EveningRow, eveningSheet } from '../../../../core/game/evening.ts';
import type { Payments } from '../../../../core/game/points.ts';
import type { Desk, GameEntry } from '../../../../main/desk/desk.ts';
import type { GameSession } from '../../../session/game-session.ts';
import { seatOf } from './seat-names.ts';

/** A game of the evening and the sums after it. */
export interface EveningLine extends EveningRow {
  /** How it ended, in words. */
  readonly stage: string;
}

/**
 * The evening's sheet up to the game at hand, which counts as it stands in the window: the list of
 * games may be a moment behind.
 */
export async function eveningLines(
  desk: Pick<Desk, 'listGames'>,
  session: GameSession,
  payments: Payments | null,
  stage: string,
): Promise<Result<readonly EveningLine[]>> {
  const games = await desk.listGames();
  if (!games.ok) return games;
  const others = session.evening === undefined ? [] : games.value.filter((entry) => isBefore(entry, session));
  const ordered = others.toSorted((one, other) => (one.startedAt < other.startedAt ? -1 : 1));
  const sheet = eveningSheet([
    ...ordered.map((entry) => ({ id: entry.id, seat: seatOf(entry.seat), payments: entry.payments })),
    { id: session.id, seat: session.state.seat, payments },
  ]);
  const stages = [...ordered.map((entry) => entry.stage), stage];
  return success(sheet.map((row, place) => ({ ...row, stage: stages[place] ?? '' })));
}

function isBefore(entry: GameEntry, { id, evening, startedAt }: GameSession): boolean {
  return entry.evening === evening && entry.id !== id && entry.startedAt <= startedAt;
}
