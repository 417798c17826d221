import type { GameEvent } from '../../../core/game/events.ts';
import { type Ledger, PART_KINDS, type PartKind } from '../../../core/review/ledger.ts';
import type { Fill } from '../../charts/fills.ts';
import type { BarRow } from '../../charts/wr-bars.ts';
import type { CoursePoint } from '../../charts/wr-course.ts';
import type { ChartTable } from '../../charts/chart-table.ts';
import { lookbackWords } from '../../words/lookback.ts';

const words = lookbackWords.ledger;

/** How each part is drawn: luck striped, choices solid, the average of good play dotted. */
const FILLS: Readonly<Record<PartKind, Fill>> = {
  deal: 'stripes',
  luck: 'stripes',
  table: 'stripes',
  rest: 'stripes',
  promise: 'dots',
  choice: 'solid',
};

/** The steps from an average deal to the end, luck first, then choices; in games of a hundred. */
const ORDER: readonly PartKind[] = ['deal', 'promise', 'luck', 'table', 'rest', 'choice'];

/** The ledger as floating bars, each beginning where the last one ended. */
export function ledgerBars({ start, totals, end }: Ledger): BarRow[] {
  let at = start;
  const steps = ORDER.filter((kind) => totals[kind] !== 0).map((kind): BarRow => {
    const from = at;
    at += totals[kind];
    return {
      label: words.parts[kind],
      from: exact(100 * from),
      to: exact(100 * at),
      text: signed(totals[kind]),
      fill: FILLS[kind],
    };
  });
  const standing = (label: string, value: number): BarRow => ({
    label,
    from: 0,
    to: 100 * value,
    text: hundred(value, 1),
    fill: 'outline',
  });
  return [standing(words.start, start), ...steps, standing(words.end, end)];
}

/** The same as a table, with the sum that proves it. */
export function ledgerTable({ start, totals, end }: Ledger): ChartTable {
  let at = start;
  const steps = ORDER.filter((kind) => totals[kind] !== 0).map((kind) => {
    at += totals[kind];
    return [words.parts[kind], signed(totals[kind], 3), hundred(at, 3)];
  });
  const sum = PART_KINDS.reduce((total, kind) => total + totals[kind], 0);
  return {
    head: words.head,
    rows: [
      [words.start, hundred(start, 3), hundred(start, 3)],
      ...steps,
      [words.sum, signed(sum, 3), hundred(start + sum, 3)],
      [words.end, '', hundred(end, 3)],
    ],
  };
}

/** What passes add on average, what luck moved, and what choices moved: with the start they make the end. */
export function luckAndChoices({ totals: { deal, promise, luck, table, rest, choice } }: Ledger): {
  readonly good: number;
  readonly luck: number;
  readonly choices: number;
} {
  return { good: promise, luck: deal + luck + table + rest, choices: choice };
}

/** Where the chance stood after each part. */
export function ledgerCourse({ start, parts }: Ledger): CoursePoint[] {
  return [start, ...parts.map(({ worth }) => worth)].map((value) => ({ label: '', value: 100 * value }));
}

export function courseTable({ start, parts }: Ledger, events: readonly GameEvent[]): ChartTable {
  return {
    head: words.courseHead,
    rows: [
      [words.start, '', '', hundred(start, 1)],
      ...parts.map(({ kind, place, amount, worth }) => [
        momentName(events[place]),
        words.parts[kind],
        signed(amount),
        hundred(worth, 1),
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

/** A share as games of a hundred with its sign: "+1.2", "−0.4". */
export function signed(share: number, digits = 1): string {
  const shown = Math.abs(100 * share).toFixed(digits);
  return `${share < 0 && Number(shown) !== 0 ? '−' : '+'}${shown}`;
}

function hundred(share: number, digits: number): string {
  return exact(100 * share).toFixed(digits);
}

/** Without the rounding of sums, which would show as a minus before nothing. */
function exact(value: number): number {
  return Math.round(value * 1e9) / 1e9;
}
