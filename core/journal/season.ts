import { type Rate, rateOf } from '../base/statistics.ts';
import { PASS_STEPS, type Seat, SEATS } from '../exchange/steps.ts';
import { ADVICE_TIMES, type AdviceTime } from '../game/advice.ts';
import type { FigureMoment, GameFigures } from './findings.ts';
import { type Mean, meanOf } from './intervals.ts';
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
  const met = decided.flatMap(({ summary, figures }) => [figures?.aimed ?? null, wonSection(summary)]);
  const sections = [...new Set(met.filter((section) => section !== null))];
  return sections.map((section) => {
    const aimed = decided.filter(({ figures }) => figures?.aimed === section);
    const won = decided.filter(({ summary }) => wonSection(summary) === section).length;
    return {
      section,
      aimed: aimed.length,
      wonWhenAimed: rateOf(aimed.filter(({ summary }) => summary.outcome === 'won').length, aimed.length),
      kept: rateOf(aimed.filter(({ summary }) => wonSection(summary) === section).length, aimed.length),
      won,
      winRate: rateOf(won, decided.length),
    };
  });
}

function wonSection({ outcome, section }: GameSummary): string | null {
  return outcome === 'won' ? section : null;
}

/** The best away from the deal to the end: its mean at each moment over the games that logged it. */
export function awayCourse(games: readonly SeasonGame[]): { readonly moment: FigureMoment; readonly away: Mean }[] {
  const moments: readonly FigureMoment[] = ['deal', ...PASS_STEPS, 'end'];
  const all = games.flatMap(({ figures }) => figures?.aways ?? []);
  return moments.map((moment) => ({
    moment,
    away: meanOf(all.filter((each) => each.moment === moment).map(({ away }) => away)),
  }));
}

/** What one number of jokers in the deal led to. */
export interface JokerRow {
  readonly jokers: number;
  readonly games: number;
  readonly won: Rate;
}

/** Jokers dealt, from none to the most seen, and how often the user won with them. */
export function jokerRows(games: readonly GameSummary[]): JokerRow[] {
  const most = Math.max(-1, ...games.map(({ jokersDealt }) => jokersDealt ?? -1));
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
): { readonly id: string; readonly gain: number; readonly total: number }[] {
  let total = 0;
  return oldestFirst(games).flatMap(({ id, points }) => {
    if (points === null) return [];
    total += points;
    return [{ id, gain: points, total }];
  });
}

function oldestFirst(games: readonly GameSummary[]): GameSummary[] {
  return [...games].sort((one, other) =>
    one.startedAt < other.startedAt ? -1 : Number(one.startedAt > other.startedAt),
  );
}
