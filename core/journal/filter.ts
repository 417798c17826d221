import type { Seat } from '../exchange/steps.ts';
import type { AdviceTime } from '../game/advice.ts';
import { foldWords, type GameSummary, type Outcome } from './summary.ts';

/** What to show of the journal. What is left out does not narrow it. */
export interface JournalFilter {
  /** First and last day as `2026-11-25`, in the time zone of the reader's choice: see `dayOf`. */
  readonly from?: string;
  readonly to?: string;
  readonly place?: string;
  readonly seats?: readonly Seat[];
  readonly cardTitle?: string;
  readonly season?: string;
  readonly section?: string;
  readonly outcomes?: readonly Outcome[];
  /** Away at the deal, from the figures kept with a game; games without it are left out. */
  readonly dealtAway?: { readonly least: number; readonly most: number };
  readonly withNotes?: boolean;
  readonly tags?: readonly string[];
  readonly demo?: boolean;
  /** The most aid that the game was played with. */
  readonly advice?: AdviceTime;
  /** Each of these words must occur somewhere in the game's words, as a part of a word if need be. */
  readonly words?: string;
}

/** What a filter asks besides the summary. */
export interface FilterHelp {
  /** The day of a game as `2026-11-25`; core has no clock and no calendar. */
  readonly dayOf: (game: GameSummary) => string;
  /** Away at the deal, null if not known. */
  readonly dealtAwayOf: (game: GameSummary) => number | null;
}

/** The games that pass the filter, in the order given. */
export function filterGames<Game extends GameSummary>(
  games: readonly Game[],
  filter: JournalFilter,
  help: FilterHelp,
): Game[] {
  const tests = testsOf(filter, help);
  return games.filter((game) => tests.every((test) => test(game)));
}

type Test = (game: GameSummary) => boolean;

function testsOf(filter: JournalFilter, help: FilterHelp): Test[] {
  const { from, to, seats, outcomes, dealtAway, withNotes, tags, demo, advice } = filter;
  const words = foldWords(filter.words ?? '').split(' ');
  const tests: (Test | false)[] = [
    from !== undefined && ((game) => help.dayOf(game) >= from),
    to !== undefined && ((game) => help.dayOf(game) <= to),
    seats !== undefined && ((game) => game.seat !== null && seats.includes(game.seat)),
    outcomes !== undefined && ((game) => outcomes.includes(game.outcome)),
    withNotes !== undefined && ((game) => game.notes.length > 0 === withNotes),
    tags !== undefined && ((game) => tags.every((tag) => game.tags.includes(tag))),
    demo !== undefined && ((game) => game.demo === demo),
    advice !== undefined && ((game) => game.advice === advice),
    dealtAway !== undefined && ((game) => isWithin(help.dealtAwayOf(game), dealtAway)),
    (game) => words.every((word) => game.searchText.includes(word)),
    ...(['place', 'cardTitle', 'season', 'section'] as const).map((field): Test | false => {
      const wanted = filter[field];
      return wanted !== undefined && ((game) => game[field] === wanted);
    }),
  ];
  return tests.filter((test) => test !== false);
}

/** What the ids of the invented season begin with; an example deal at the Table has an id like any game. */
export const DEMO_SEASON_ID = 'demo-';

/** Whether a game is one of the invented season. */
export function isOfDemoSeason({ id, demo }: Pick<GameSummary, 'id' | 'demo'>): boolean {
  return demo && id.startsWith(DEMO_SEASON_ID);
}

/**
 * Whether figures are made of the examples: where the filter asks for them, or where `all` has no game of the player's
 * own. Own games and examples are never summed up together.
 */
export function areExamplesCounted(all: readonly GameSummary[], { demo }: JournalFilter): boolean {
  return demo ?? (all.length > 0 && all.every((game) => game.demo));
}

function isWithin(value: number | null, { least, most }: { least: number; most: number }): boolean {
  return value !== null && value >= least && value <= most;
}

export const SORT_FIELDS = ['startedAt', 'place', 'seat', 'cardTitle', 'outcome', 'section', 'points'] as const;
export type SortField = (typeof SORT_FIELDS)[number];

/** Sorted by a field, `rising` or not; unknown values last either way; equal ones newest first. */
export function sortGames<Game extends GameSummary>(games: readonly Game[], field: SortField, rising: boolean): Game[] {
  const direction = rising ? 1 : -1;
  const compare = (one: Game, other: Game): number => {
    const [a, b] = [one[field], other[field]];
    if (a !== b) {
      if (a === null) return 1;
      if (b === null) return -1;
      return a < b ? -direction : direction;
    }
    return other.startedAt < one.startedAt ? -1 : Number(other.startedAt > one.startedAt);
  };
  return [...games].sort(compare);
}
