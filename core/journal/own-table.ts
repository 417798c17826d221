import { type Mean, meanOf, sum } from '../base/intervals.ts';
import { type Rate, rateOf } from '../base/statistics.ts';
import type { CardFit } from '../chance/table-figures.ts';
import type { TableKind } from '../table/kinds.ts';
import { WALL_AT_START } from '../tiles/deal.ts';
import type { GameSummary } from './summary.ts';

/** Nothing is compared before so many games are finished. */
export const FEWEST_GAMES = 10;

/** How often one kind must be likelier than another before that is said. */
export const CLEARLY = 20;

/** What the user's own finished games tell of her table. */
export interface OwnTable {
  /** Games that somebody won or that became wall games. */
  readonly games: number;
  readonly wall: Rate;
  /** Tiles drawn in a game that somebody won: a wall game draws all 99, so that it would say the same twice. */
  readonly drawn: Mean & { readonly deviation: number };
  /** Second rounds played, of those that the user did not stop herself. */
  readonly secondRounds: Rate;
}

type Told = Pick<GameSummary, 'outcome' | 'demo' | 'drawn' | 'secondRound'>;

/** Sums up the user's own finished games with one card; examples and abandoned games say nothing of her table. */
export function ownTable(games: readonly Told[]): OwnTable {
  const finished = games.filter(({ demo, outcome }) => !demo && outcome !== 'open' && outcome !== 'abandoned');
  const wall = finished.filter(({ outcome }) => outcome === 'wall').length;
  const drawn = finished.flatMap((game) => game.drawn ?? []);
  const rounds = finished.flatMap(({ secondRound }) => secondRound ?? []);
  return {
    games: finished.length,
    wall: rateOf(wall, finished.length),
    drawn: { ...meanOf(drawn, 2), deviation: deviationOf(drawn) },
    secondRounds: rateOf(rounds.filter(Boolean).length, rounds.length),
  };
}

function deviationOf(values: readonly number[]): number {
  if (values.length < 2) return 0;
  const mean = sum(values) / values.length;
  return Math.sqrt(sum(values.map((value) => (value - mean) ** 2)) / (values.length - 1));
}

/** What a kind of table would show in the same figures. */
export interface KindFigures {
  readonly kind: TableKind;
  readonly wall: number;
  readonly drawn: number;
  readonly secondRounds: number;
}

/** The same figures of a kind of table, by what the card's games there brought; these must have been played. */
export function kindFigures({ kind, games, table: { wallGames, draws, othersStop } }: CardFit): KindFigures {
  // A share that was counted is never taken for 0 or 1: half a game is added on either side.
  const counted = (share: number): number => (share * games + 0.5) / (games + 1);
  const wall = counted(wallGames);
  const drawn = wallGames < 1 ? (draws - WALL_AT_START * wallGames) / (1 - wallGames) : WALL_AT_START;
  return { kind, wall, drawn, secondRounds: counted(1 - othersStop) };
}

/**
 * The logarithm of how likely a kind of table makes these games, but for a term that is the same for all kinds: two
 * binomial laws, and for the tiles drawn a normal law of which only the mean is said. Its spread is taken as what
 * serves the kind best, which gives n/2 · log(1 + t²/(n − 1)) by Student's t.
 */
export function logLikelihood({ wall, drawn, secondRounds }: OwnTable, kind: KindFigures): number {
  return inBinomial(wall, kind.wall) + inBinomial(secondRounds, kind.secondRounds) + inNormal(drawn, kind.drawn);
}

function inBinomial({ hits, of }: Rate, share: number): number {
  return hits * Math.log(share) + (of - hits) * Math.log(1 - share);
}

function inNormal({ count, mean, deviation }: OwnTable['drawn'], expected: number): number {
  if (mean === null || deviation === 0) return 0;
  const square = (count * (mean - expected) ** 2) / deviation ** 2;
  return (-count / 2) * Math.log1p(square / (count - 1));
}

/** How the kind that is used fits the games. */
export type KindVerdict =
  /** So many games are still to be finished. */
  | { readonly says: 'few'; readonly missing: number }
  | { readonly says: 'fits' }
  /** Another kind fits `times` as well. */
  | { readonly says: 'other'; readonly kind: TableKind; readonly times: number }
  | { readonly says: 'untold' };

/**
 * Whether another kind of table fits the games better than the one that is used. Another is offered when it makes the
 * games at least `CLEARLY` times as likely as the one in use, the likeliest of them; the one in use is said to fit when
 * it is so much likelier than each of the others. A person looks again after every game: a likelihood ratio reaches 20
 * against the kind that is true at any time at all in at most one table in twenty for each other kind (Ville's
 * inequality), however often it is looked at.
 */
export function judgeKind(own: OwnTable, kinds: readonly KindFigures[], used: TableKind): KindVerdict {
  if (own.games < FEWEST_GAMES) return { says: 'few', missing: FEWEST_GAMES - own.games };
  const likely = kinds.map(({ kind }, place) => ({ kind, log: logLikelihood(own, kinds[place] as KindFigures) }));
  const here = likely.find(({ kind }) => kind === used);
  const others = likely.filter(({ kind }) => kind !== used).toSorted((one, other) => other.log - one.log);
  const [best] = others;
  if (here === undefined || best === undefined) return { says: 'untold' };
  const ahead = best.log - here.log;
  if (ahead >= Math.log(CLEARLY)) return { says: 'other', kind: best.kind, times: Math.exp(ahead) };
  return { says: -ahead >= Math.log(CLEARLY) ? 'fits' : 'untold' };
}
