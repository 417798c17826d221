import { type Rate, rateOf } from '../base/statistics.ts';
import { PASS_STEPS, type Seat, SEATS } from '../exchange/steps.ts';
import { ADVICE_TIMES, type AdviceTime } from '../game/advice.ts';
import type { FigureMoment, GameFigures } from './findings.ts';
import { type Mean, meanOf } from '../base/intervals.ts';
import type { GameSummary } from './summary.ts';

/** A game of the season: its summary, with what the engine found if that has been computed. */
export interface SeasonGame {
  readonly summary: GameSummary;
  readonly figures: GameFigures | null;
}

/** Games that ended with a known outcome for the user: won, lost or a wall game. */
function isDecided({ outcome }: GameSummary): boolean {
  return outcome === 'won' || outcome === 'lost' || outcome === 'wall';
}

export interface WinRates {
  /** Games won, of those decided. */
  readonly all: Rate;
  readonly bySeat: readonly { readonly seat: Seat; readonly rate: Rate }[];
}

/** How often the user won, in all and by seat. */
export function winRates(games: readonly GameSummary[]): WinRates {
  const decided = games.filter(isDecided);
  return {
    all: wonOf(decided),
    bySeat: SEATS.map((seat) => ({ seat, rate: wonOf(decided.filter((game) => game.seat === seat)) })),
  };
}

/** How often the user won with some aid at the Table; `advice` is null for games of which that is not known. */
export interface AdviceRate {
  readonly advice: AdviceTime | null;
  readonly rate: Rate;
}

/** How often the user won by the most aid that a game had, the most first; only what occurs among decided games. */
export function adviceRates(games: readonly GameSummary[]): AdviceRate[] {
  const decided = games.filter(isDecided);
  return [...ADVICE_TIMES.toReversed(), null].flatMap((advice) => {
    const some = decided.filter((game) => game.advice === advice);
    return some.length === 0 ? [] : [{ advice, rate: wonOf(some) }];
  });
}

function wonOf(decided: readonly GameSummary[]): Rate {
  return rateOf(decided.filter(({ outcome }) => outcome === 'won').length, decided.length);
}

/** One section of the card over a season. */
export interface SectionRecord {
  readonly section: string;
  /** Decided games in which the reading leaned here after the passes. */
  readonly aimed: number;
  /** Of those, the ones that the user won, with any hand. */
  readonly wonWhenAimed: Rate;
  /** Of those, the ones that the user won with a hand of this section. */
  readonly kept: Rate;
  /** The user's wins with a hand of this section, wherever the aim was. */
  readonly won: number;
  /** Those wins of all decided games. */
  readonly winRate: Rate;
}

/** Sections aimed at and won, in the order first met; only decided games count. */
export function sectionRecords(games: readonly SeasonGame[]): SectionRecord[] {
  const decided = games.filter(({ summary }) => isDecided(summary));
  const none = { aimed: 0, wonWhenAimed: 0, kept: 0, won: 0 };
  const sections = new Map<string, typeof none>();
  const sumsOf = (section: string): typeof none => {
    const sums = sections.get(section) ?? { ...none };
    sections.set(section, sums);
    return sums;
  };
  for (const { summary, figures } of decided) {
    const aimed = figures?.aimed ?? null;
    const won = wonSection(summary);
    if (aimed !== null) {
      const sums = sumsOf(aimed);
      sums.aimed += 1;
      if (summary.outcome === 'won') sums.wonWhenAimed += 1;
      if (won === aimed) sums.kept += 1;
    }
    if (won !== null) sumsOf(won).won += 1;
  }
  return [...sections].map(([section, { aimed, wonWhenAimed, kept, won }]) => ({
    section,
    aimed,
    wonWhenAimed: rateOf(wonWhenAimed, aimed),
    kept: rateOf(kept, aimed),
    won,
    winRate: rateOf(won, decided.length),
  }));
}

function wonSection({ outcome, section }: GameSummary): string | null {
  return outcome === 'won' ? section : null;
}

/** The best away from the deal to the end: its mean at each moment over the games that logged it. */
export function awayCourse(games: readonly SeasonGame[]): { readonly moment: FigureMoment; readonly away: Mean }[] {
  const moments: readonly FigureMoment[] = ['deal', ...PASS_STEPS, 'end'];
  const all = new Map<FigureMoment, number[]>(moments.map((moment) => [moment, []]));
  for (const { figures } of games) for (const { moment, away } of figures?.aways ?? []) all.get(moment)?.push(away);
  return moments.map((moment) => ({ moment, away: meanOf(all.get(moment) ?? []) }));
}

/** What one number of jokers in the deal led to. */
export interface JokerRow {
  readonly jokers: number;
  readonly games: number;
  readonly won: Rate;
}

/** Jokers dealt, from none to the most seen, and how often the user won with them. */
export function jokerRows(games: readonly GameSummary[]): JokerRow[] {
  const most = games.reduce((some, { jokersDealt }) => Math.max(some, jokersDealt ?? -1), -1);
  return Array.from({ length: most + 1 }, (_, jokers) => {
    const some = games.filter((game) => game.jokersDealt === jokers);
    const decided = some.filter(isDecided);
    return {
      jokers,
      games: some.length,
      won: rateOf(decided.filter(({ outcome }) => outcome === 'won').length, decided.length),
    };
  });
}

/** The points after each game whose points are known, oldest first. */
export function pointsCourse(
  games: readonly GameSummary[],
): { readonly game: GameSummary; readonly gain: number; readonly total: number }[] {
  let total = 0;
  return oldestFirst(games).flatMap((game) => {
    if (game.points === null) return [];
    total += game.points;
    return [{ game, gain: game.points, total }];
  });
}

function oldestFirst(games: readonly GameSummary[]): GameSummary[] {
  return [...games].sort((one, other) =>
    one.startedAt < other.startedAt ? -1 : Number(one.startedAt > other.startedAt),
  );
}
