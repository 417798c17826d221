import { type Seat, SEATS } from '../../../core/exchange/steps.ts';
import type { Payments } from '../../../core/game/points.ts';
import type { GameMark } from '../../../core/journal/findings-key.ts';
import { foldWords, type GameSummary } from '../../../core/journal/summary.ts';
import type { GameEntry } from '../../../main/desk/desk.ts';

/** A game of the list: its summary, and the little beside it that sums need. */
export interface JournalGame extends GameSummary, GameMark {
  readonly payments: Payments | null;
  readonly names: readonly string[];
}

/** A game in the form that the list's filters and sums need, from its entry at the desk. */
export function journalGame(entry: GameEntry): JournalGame {
  const seat = SEATS.find((each) => each === entry.seat) ?? null;
  const { place, tags, notes, names, cardTitle, season, lineName } = entry;
  const known = [place, ...tags, ...notes, ...names, cardTitle, season, lineName ?? ''];
  return { ...entry, seat, points: pointsOf(entry.payments, seat), searchText: foldWords(known.join(' ')) };
}

function pointsOf(payments: Payments | null, seat: Seat | null): number | null {
  return payments === null || seat === null ? null : payments[seat];
}

/** When a game began, by the clock of its table. */
type StartTime = Pick<JournalGame, 'startedAt' | 'zone'>;

/** The blank between a time and its half of the day, where no line may break. */
const BEFORE_HALF = /\s(?=[AP]M$)/;
const NO_BREAK = '\u00A0';

const formats = new Map<string, Intl.DateTimeFormat>();

/** The day on which a game was played, in the time zone of its table: `2026-11-19`. */
export function dayOf({ startedAt, zone }: StartTime): string {
  const { year = '', month = '', day = '' } = partsOf(startedAt, zone);
  return `${year}-${month}-${day}`;
}

function partsOf(startedAt: string, zone: string): Readonly<Record<string, string>> {
  const format = formatIn('parts', zone, { year: 'numeric', month: '2-digit', day: '2-digit' });
  return Object.fromEntries(format.formatToParts(new Date(startedAt)).map(({ type, value }) => [type, value]));
}

/** "Thursday, November 19, 2026 at 12:40 PM". */
export function whenOf({ startedAt, zone }: StartTime): string {
  const when = formatIn('when', zone, { dateStyle: 'full', timeStyle: 'short' }).format(new Date(startedAt));
  return when.replace(BEFORE_HALF, NO_BREAK);
}

/** "Thursday, November 19, 2026". */
export function longDayOf({ startedAt, zone }: StartTime): string {
  return formatIn('day', zone, { dateStyle: 'full' }).format(new Date(startedAt));
}

/** "Nov 19, 2026". */
export function shortDayOf({ startedAt, zone }: StartTime): string {
  return formatIn('short', zone, { dateStyle: 'medium' }).format(new Date(startedAt));
}

function formatIn(use: string, zone: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${use} ${zone}`;
  const known = formats.get(key);
  if (known !== undefined) return known;
  const format = new Intl.DateTimeFormat(undefined, { ...options, timeZone: knownZone(zone) });
  formats.set(key, format);
  return format;
}

/** The zone, or this computer's if it has never heard of it. */
function knownZone(zone: string): string | undefined {
  try {
    return new Intl.DateTimeFormat(undefined, { timeZone: zone }).resolvedOptions().timeZone;
  } catch {
    return undefined;
  }
}

/** A game deleted from the list, and the one that stood before it there. */
export interface RemovedGame {
  readonly game: JournalGame;
  /** The id of the row before; null at the top. */
  readonly after: string | null;
}

/** A row of the list: a game, or the place of one that was deleted and can be brought back from there. */
export interface GameRow {
  readonly game: JournalGame;
  readonly isRemoved: boolean;
}

/** The rows of the list: games deleted just now keep their places, so that no other row moves under the pointer. */
export function rowsWith(shown: readonly JournalGame[], removed: readonly RemovedGame[]): GameRow[] {
  const rows = shown.map((game) => ({ game, isRemoved: false }));
  let waiting = removed;
  while (waiting.length > 0) {
    const left = waiting.filter(({ game, after }) => {
      const place = after === null ? -1 : rows.findIndex((row) => row.game.id === after);
      if (after !== null && place < 0) return true;
      rows.splice(place + 1, 0, { game, isRemoved: true });
      return false;
    });
    // The rows before these are not shown now: neither are they.
    if (left.length === waiting.length) break;
    waiting = left;
  }
  return rows;
}
