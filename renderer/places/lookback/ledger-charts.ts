import type { GameEvent } from '../../../core/game/events.ts';
import { type Ledger, PART_WORDS, type PartKind, wholeLedger } from '../../../core/review/ledger.ts';
import type { Fill, BarRow } from '../../charts/wr-bars.ts';
import type { CoursePoint } from '../../charts/wr-course.ts';
import type { ChartTable } from '../../charts/chart-table.ts';
import { lookbackWords } from '../../words/lookback.ts';
import { signed } from '../../words/numbers.ts';

const words = lookbackWords.ledger;

/** How each part is drawn: luck striped, choices solid. */
const FILLS: Readonly<Record<PartKind, Fill>> = {
  deal: 'stripes',
  received: 'stripes',
  draws: 'stripes',
  others: 'stripes',
  rest: 'stripes',
  choice: 'solid',
};

/** The ledger as floating bars, each beginning where the last one ended; in games of a hundred. */
export function ledgerBars(ledger: Ledger): BarRow[] {
  const { start, parts, end } = wholeLedger(ledger);
  const steps = parts.map(({ kind, amount, at }): BarRow => {
    return { label: PART_WORDS[kind], from: at - amount, to: at, text: signed(amount), fill: FILLS[kind] };
  });
  const standing = (label: string, games: number): BarRow => {
    return { label, from: 0, to: games, text: String(games), fill: 'outline' };
  };
  return [standing(words.start, start), ...steps, standing(words.end, end)];
}

/** The same as a table, with the sum that proves it. */
export function ledgerTable(ledger: Ledger): ChartTable {
  const { start, parts, end } = wholeLedger(ledger);
  const sum = parts.reduce((total, { amount }) => total + amount, 0);
  return {
    head: words.head,
    rows: [
      [words.start, String(start), String(start)],
      ...parts.map(({ kind, amount, at }) => [PART_WORDS[kind], signed(amount), String(at)]),
      [words.sum, signed(sum), String(start + sum)],
      [words.end, '', String(end)],
    ],
  };
}

/** Where the chance stood after each part. */
export function ledgerCourse({ start, parts }: Ledger): CoursePoint[] {
  return [start, ...parts.map(({ chance }) => chance)].map((value) => ({ label: '', value: 100 * value }));
}

export function courseTable({ start, parts }: Ledger, events: readonly GameEvent[]): ChartTable {
  return {
    head: words.courseHead,
    rows: [
      [words.start, '', '', String(hundred(start))],
      ...parts.map(({ kind, place, amount, chance }) => [
        momentName(events[place]),
        PART_WORDS[kind],
        signed(hundred(chance) - hundred(chance - amount)),
        String(hundred(chance)),
      ]),
    ],
  };
}

/** "First pass across", "Draw". */
function momentName(event: GameEvent | undefined): string {
  if (event === undefined) return '';
  const { steps } = lookbackWords.choices;
  return event.type === 'gave' || event.type === 'received' ? steps[event.step] : lookbackWords.events[event.type];
}

function hundred(chance: number): number {
  return Math.round(100 * chance);
}
