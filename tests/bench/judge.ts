import type { Measure } from './measure.ts';

/** What came out of one measure; times in milliseconds a call, medians over the rounds. */
export interface Figure {
  readonly name: string;
  readonly unit: string;
  readonly referenceMs: number;
  readonly candidateMs: number;
  /** Median over the rounds of reference time by candidate time. */
  readonly ratio: number;
  /** The smallest and the largest ratio of a round. */
  readonly spread: readonly [number, number];
  readonly rounds: number;
  readonly clock: 'cpu' | 'wall' | 'own';
  readonly atLeast: number;
  readonly holds: boolean;
  /** Figures that are told, but not judged. */
  readonly more: Readonly<Record<string, number>>;
}

/** How long to measure: at least `rounds` rounds, more while `budgetMs` lasts, `most` at the most. */
export interface Effort {
  readonly rounds: number;
  readonly most: number;
  readonly budgetMs: number;
  /** A round of a quick function repeats it until this much time has passed. */
  readonly roundMs: number;
}

/** @public `run.mjs` loads this file built, out of sight of the check for unused exports. */
export const FULL: Effort = { rounds: 5, most: 31, budgetMs: 4_000, roundMs: 20 };
/** @public */
export const QUICK: Effort = { rounds: 3, most: 5, budgetMs: 300, roundMs: 5 };

/** The two clocks, each in milliseconds from some start. */
export type Clocks = Readonly<Record<'cpu' | 'wall', () => number>>;

/** Runs one measure: a warm-up, then reference and candidate in turn. */
export async function judge(measure: Measure, effort: Effort, clocks: Clocks): Promise<Figure> {
  await measure.check();
  const now = measure.clock === 'own' ? null : clocks[measure.clock ?? 'cpu'];
  const share = measure.referenceShare ?? 1;
  const times: { reference: number; candidate: number }[] = [];
  await timeOf(measure.candidate, effort.roundMs, now);
  const since = clocks[measure.clock === 'cpu' || measure.clock === undefined ? 'cpu' : 'wall'];
  const start = since();
  while (times.length < effort.rounds || (times.length < effort.most && since() - start < effort.budgetMs)) {
    const reference = (await timeOf(measure.reference, effort.roundMs, now)) * share;
    times.push({ reference, candidate: await timeOf(measure.candidate, effort.roundMs, now) });
  }
  const ratios = times.map(({ reference, candidate }) => reference / candidate);
  const ratio = median(ratios);
  return {
    name: measure.name,
    unit: measure.unit,
    referenceMs: median(times.map((time) => time.reference)),
    candidateMs: median(times.map((time) => time.candidate)),
    ratio,
    spread: [Math.min(...ratios), Math.max(...ratios)],
    rounds: times.length,
    clock: measure.clock ?? 'cpu',
    atLeast: measure.atLeast,
    holds: ratio >= measure.atLeast,
    more: measure.more?.() ?? {},
  };
}

/**
 * Milliseconds a call, over as many calls as fit into `roundMs` (one at least); without a clock,
 * what one call answers with.
 */
async function timeOf(work: () => unknown, roundMs: number, now: (() => number) | null): Promise<number> {
  if (now === null) return Number(await work());
  const start = now();
  let calls = 0;
  let passed = 0;
  do {
    const answer = work();
    // Only a promise is awaited: an await costs more than some of the work that is measured.
    if (answer instanceof Promise) await answer;
    calls += 1;
    passed = now() - start;
  } while (passed < roundMs);
  return passed / calls;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[middle - 1] ?? upper)) / 2;
}

/** The figures as a table for people. */
export function table(figures: readonly Figure[]): string {
  const head = ['measure', 'reference', 'Windrow', 'times as fast', 'needed', ''];
  const rows = figures.map((figure) => [
    figure.name,
    `${digits(figure.referenceMs)} ms`,
    `${digits(figure.candidateMs)} ms`,
    `${digits(figure.ratio)} (${digits(figure.spread[0])} to ${digits(figure.spread[1])})`,
    String(figure.atLeast),
    figure.holds ? 'holds' : 'FALLS SHORT',
  ]);
  const widths = head.map((_, column) => Math.max(...[head, ...rows].map((row) => row[column]?.length ?? 0)));
  const line = (row: readonly string[]): string =>
    row
      .map((cell, column) => (column === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[column] ?? 0)))
      .join('  ');
  return [...[head, ...rows].map((row) => line(row).trimEnd()), ...figures.flatMap(moreOf)].join('\n');
}

/** "received tile to new reading: median 62.1, 95th percentile 88.0". */
function moreOf({ name, more }: Figure): string[] {
  const told = Object.entries(more).map(([what, value]) => `${what} ${digits(value)}`);
  return told.length === 0 ? [] : [`${name}: ${told.join(', ')}`];
}

/** Three significant digits. */
function digits(value: number): string {
  return value >= 100 ? String(Math.round(value)) : value.toPrecision(3);
}
