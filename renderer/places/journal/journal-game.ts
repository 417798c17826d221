import { type Seat, SEATS } from '../../../core/exchange/steps.ts';
import { type GameMark } from '../../../core/journal/findings-key.ts';
import type { GameSummary } from '../../../core/journal/summary.ts';
import { foldWords } from '../../../core/journal/words.ts';
import type { Payments } from '../../../core/game/points.ts';
import type { GameEntry } from '../../../main/desk/desk.ts';

/** A game of the list: its summary, and the little beside it that sums need. */
export interface JournalGame extends GameSummary, GameMark {
  readonly payments: Payments | null;
  readonly names: readonly string[];
}

/** A game as the list's filters and sums want it, from what the desk tells of it. */
export function journalGame(entry: GameEntry): JournalGame {
  const seat = SEATS.find((each) => each === entry.seat) ?? null;
  const { place, tags, notes, names, cardTitle, season, section, lineId } = entry;
  const known = [place, ...tags, ...notes, ...names, cardTitle, season, section ?? '', lineId ?? ''];
  return { ...entry, seat, points: pointsOf(entry.payments, seat), searchText: foldWords(known.join(' ')) };
}

function pointsOf(payments: Payments | null, seat: Seat | null): number | null {
  return payments === null || seat === null ? null : payments[seat];
}
