import type { Rate } from '../../../core/base/statistics.ts';
import type { Mean } from '../../../core/base/intervals.ts';
import {
  type AdviceRate,
  awayCourse,
  jokerRows,
  pointsCourse,
  type SeasonGame,
  sectionRecords,
  winRates,
} from '../../../core/journal/season.ts';
import type { GameSummary } from '../../../core/journal/summary.ts';
import { costRows, type CostRow } from '../../../core/journal/choice-costs.ts';
import type { ChoiceCost, LedgerSums } from '../../../core/journal/findings.ts';
import { ledgerMeans } from '../../../core/journal/season-ledger.ts';
import { PART_WORDS } from '../../../core/review/ledger.ts';
import type { ChartTable, LongTable } from '../../charts/chart-table.ts';
import type { BarRow } from '../../charts/wr-bars.ts';
import type { CoursePoint } from '../../charts/wr-course.ts';
import { adviceWords } from '../../words/advice.ts';
import { journalWords, seasonWords as words } from '../../words/journal.ts';
import { percent, tenths, signed } from '../../words/numbers.ts';
import { shortDayOf } from './journal-game.ts';

/** A chart's data: what it draws, and its table. */
export interface Drawn<Part, Table = ChartTable> {
  readonly parts: readonly Part[];
  readonly table: Table;
}

/** How often the user won, in all and by seat. */
export function winChart(games: readonly GameSummary[]): Drawn<BarRow> {
  const { all, bySeat } = winRates(games);
  const rates = [{ label: words.all, rate: all }, ...bySeat.map(({ seat, rate }) => ({ label: seat, rate }))];
  return {
    parts: rates.map(({ label, rate }, place) => rateBar(label, rate, place === 0 ? 'solid' : 'stripes')),
    table: {
      head: words.winsHead,
      rows: rates.map(({ label, rate }) => [label, `${rate.hits}`, `${rate.of}`, shareText(rate), betweenRate(rate)]),
    },
  };
}

/** How often the user won, by the most aid that the games had. */
export function adviceChart(rates: readonly AdviceRate[]): Drawn<BarRow> {
  const named = rates.map(({ advice, rate }) => ({ label: adviceWords.played[advice ?? 'unknown'], rate }));
  return {
    parts: named.map(({ label, rate }) => rateBar(label, rate, 'stripes')),
    table: {
      head: adviceWords.seasonHead,
      rows: named.map(({ label, rate }) => [label, `${rate.hits}`, `${rate.of}`, shareText(rate), betweenRate(rate)]),
    },
  };
}

/** Sections aimed at and won with: two bars for each section. */
export function sectionChart(games: readonly SeasonGame[]): Drawn<BarRow> {
  const records = sectionRecords(games);
  return {
    parts: records.flatMap(({ section, aimed, won }) => [
      { label: section, from: 0, to: aimed, text: String(aimed), fill: 'stripes' } as const,
      { label: words.wonWithIt, from: 0, to: won, text: String(won), fill: 'solid' } as const,
    ]),
    table: {
      head: words.sectionsHead,
      rows: records.map(({ section, aimed, wonWhenAimed, kept, won, winRate }) => [
        section,
        String(aimed),
        shareText(wonWhenAimed),
        shareText(kept),
        String(won),
        shareText(winRate),
      ]),
    },
  };
}

/** The mean away from the deal to the end, at the moments that were logged. */
export function awayChart(games: readonly SeasonGame[]): Drawn<CoursePoint> {
  const course = awayCourse(games).filter(({ away }) => away.mean !== null);
  return {
    parts: course.map(({ moment, away }) => ({
      label: journalWords.moments[moment],
      value: away.mean ?? 0,
      ...away.interval,
    })),
    table: {
      head: words.awayHead,
      rows: course.map(({ moment, away }) => [
        journalWords.moments[moment],
        String(away.count),
        tenths(away.mean ?? 0),
        betweenMean(away, tenths),
      ]),
    },
  };
}

/** Jokers dealt: how often so many, and how often the user then won. */
export function jokerChart(games: readonly GameSummary[]): Drawn<BarRow> {
  const rows = jokerRows(games);
  return {
    parts: rows.map(({ jokers, games: count }) => ({
      label: words.jokerCount(jokers),
      from: 0,
      to: count,
      text: String(count),
      fill: 'solid',
    })),
    table: {
      head: words.jokersHead,
      rows: rows.map(({ jokers, games: count, won }) => [
        words.jokerCount(jokers),
        String(count),
        shareText(won),
        betweenRate(won),
      ]),
    },
  };
}

/** The mean number of jokers dealt; null when no deal was logged. */
export function meanJokers(games: readonly GameSummary[]): number | null {
  const dealt = games.flatMap(({ jokersDealt }) => jokersDealt ?? []);
  return dealt.length === 0 ? null : dealt.reduce((sum, jokers) => sum + jokers, 0) / dealt.length;
}

/** What choices cost on average, by kind; in games of a hundred: by the end of the exchange, and for now beside it. */
export function costChart(choices: readonly ChoiceCost[]): Drawn<BarRow> {
  const rows = costRows(choices);
  return {
    parts: rows.map(({ kind, cost }) => ({
      label: journalWords.kinds[kind],
      from: 0,
      to: 100 * (cost.mean ?? 0),
      ...(cost.interval === null ? {} : { low: 100 * cost.interval.low, high: 100 * cost.interval.high }),
      text: (100 * (cost.mean ?? 0)).toFixed(2),
      fill: 'solid',
    })),
    table: {
      head: words.costHead,
      rows: rows.map((row) => [
        journalWords.kinds[row.kind],
        String(row.cost.count),
        (100 * (row.cost.mean ?? 0)).toFixed(2),
        betweenMean(row.cost, (value) => (100 * value).toFixed(2)),
        (100 * (row.now.mean ?? 0)).toFixed(2),
        (100 * row.total).toFixed(1),
        trendText(row),
      ]),
    },
  };
}

/** What luck and choices moved on average, in games of a hundred. */
export function luckChart(games: readonly LedgerSums[]): Drawn<BarRow> {
  const rows = ledgerMeans(games);
  const whole = (chance: number): string => signed(Math.round(100 * chance));
  return {
    parts: rows.map(({ kind, amount: { mean, interval } }) => ({
      label: PART_WORDS[kind],
      from: 0,
      to: 100 * (mean ?? 0),
      ...(interval === null ? {} : { low: 100 * interval.low, high: 100 * interval.high }),
      text: whole(mean ?? 0),
      fill: kind === 'choice' ? 'solid' : 'stripes',
    })),
    table: {
      head: words.luckHead,
      rows: rows.map(({ kind, amount }) => [
        PART_WORDS[kind],
        String(amount.count),
        whole(amount.mean ?? 0),
        betweenMean(amount, whole),
      ]),
    },
  };
}

/** The total of points after each game; in the table the newest game first. */
export function pointsChart(games: readonly GameSummary[]): Drawn<CoursePoint, LongTable> {
  const course = pointsCourse(games);
  const rows = course.toReversed();
  return {
    parts: [{ label: '', value: 0 }, ...course.map(({ total }) => ({ label: '', value: total }))],
    table: {
      head: words.goneHead,
      rows: {
        length: rows.length,
        slice: (from, to) =>
          rows.slice(from, to).map(({ game, gain, total }) => [shortDayOf(game), signed(gain), signed(total)]),
      },
      turns: { before: journalWords.later, after: journalWords.earlier },
    },
  };
}

function rateBar(label: string, rate: Rate, fill: BarRow['fill']): BarRow {
  const bar = { label, from: 0, to: rate.share, text: shareText(rate), fill };
  return rate.of === 0 ? bar : { ...bar, low: rate.low, high: rate.high };
}

function shareText({ hits, of, share }: Rate): string {
  return share === null ? '–' : `${percent(share)} (${hits} of ${of})`;
}

function betweenRate({ of, low, high }: Rate): string {
  return of === 0 ? '–' : words.between(percent(low), percent(high));
}

function betweenMean({ interval }: Mean, text: (value: number) => string): string {
  return interval === null ? '–' : words.between(text(interval.low), text(interval.high));
}

function trendText({ trend }: CostRow): string {
  if (trend.slope === null) return words.trendFew(trend.count);
  if (trend.claim === null) return words.trendNone;
  return trend.claim === 'rising' ? words.trendRising : words.trendFalling;
}
