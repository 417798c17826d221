import type { JournalGame } from './journal-game.ts';

type Moment = Pick<JournalGame, 'startedAt' | 'zone'>;

/** The blank between a time and its half of the day, where no line may break. */
const BEFORE_HALF = /\s(?=[AP]M$)/;
const NO_BREAK = '\u00A0';

const formats = new Map<string, Intl.DateTimeFormat>();

/** The day on which a game was played, in the time zone of its table: `2026-11-19`. */
export function dayOf({ startedAt, zone }: Moment): string {
  const { year = '', month = '', day = '' } = partsOf(startedAt, zone);
  return `${year}-${month}-${day}`;
}

function partsOf(startedAt: string, zone: string): Readonly<Record<string, string>> {
  const format = formatIn('parts', zone, { year: 'numeric', month: '2-digit', day: '2-digit' });
  return Object.fromEntries(format.formatToParts(new Date(startedAt)).map(({ type, value }) => [type, value]));
}

/** "Thursday, November 19, 2026 at 12:40 PM". */
export function whenOf({ startedAt, zone }: Moment): string {
  const when = formatIn('when', zone, { dateStyle: 'full', timeStyle: 'short' }).format(new Date(startedAt));
  return when.replace(BEFORE_HALF, NO_BREAK);
}

/** "Thursday, November 19, 2026". */
export function longDayOf({ startedAt, zone }: Moment): string {
  return formatIn('day', zone, { dateStyle: 'full' }).format(new Date(startedAt));
}

/** "Nov 19, 2026". */
export function shortDayOf({ startedAt, zone }: Moment): string {
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
