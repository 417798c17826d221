import { finish } from '../base/steps.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import { gameStreams, playGame, type Watcher } from './game.ts';
import type { TableKind } from './kinds.ts';
import { POLICIES, type PolicyName } from './policies/names.ts';
import type { Policy } from './policy.ts';
import { makeTable, playerAt, SEAT_COUNT, type Table } from './table.ts';
import { makeTableCard } from './table-card.ts';
import { type Tally, TallyCount } from './tally.ts';
import type { TableEvent } from './trace.ts';

/** What to simulate: games number `first` up to, not including, `first + games` of a seed. */
export interface SimulationTask {
  readonly compiled: CompiledCard;
  /** A whole number of 0 or more. */
  readonly seed: number;
  readonly games: number;
  /** The number of the first game, for a shard; 0 unless given. */
  readonly first?: number;
  /** Four policies; they move round the seats from game to game (TB-24). */
  readonly policies: readonly PolicyName[];
}

/** The figures of the command `simulate`, bar the games a second, which a caller with a clock measures. */
export interface Simulation {
  readonly games: number;
  readonly won: number;
  readonly wallGames: number;
  /** Mean number of tiles drawn from the wall in a game, by all seats. */
  readonly drawsPerGame: number;
  /** Games won by own draw. */
  readonly selfDrawn: number;
  /** By the away with which a seat began to play, only those that occurred. */
  readonly byAway: readonly { readonly away: number; readonly players: number; readonly won: number }[];
}

/** Who sits at a table of each kind: four players alike. */
export const PLAYERS_AT: Readonly<Record<TableKind, readonly PolicyName[]>> = {
  quick: ['soft', 'soft', 'soft', 'soft'],
  club: ['club', 'club', 'club', 'club'],
  relaxed: ['relaxed', 'relaxed', 'relaxed', 'relaxed'],
};
/** The policies unless another table is asked for. */
export const USUAL_POLICIES: readonly PolicyName[] = PLAYERS_AT.quick;

/** Games between two signs of progress; about 20 ms. */
const CHUNK = 16;

/**
 * Plays the games of a task, yielding the tally so far every few games, so that a worker can report
 * its progress and stop. The parts of a task that is split by `first` add up with `addTallies`
 * to the tally of the whole, whoever plays them.
 */
export function* simulateGames(task: SimulationTask, watcher: Watcher = {}): Generator<Tally, Tally, void> {
  const { table, policies } = seatedTable(task);
  const first = task.first ?? 0;
  const streams = gameStreams(task.seed, first);
  const count = new TallyCount();
  for (let game = first; game < first + task.games; game += 1) {
    const players = seatPolicies(table, policies, game);
    count.note(playGame(table, streams.next().value, watcher), players);
    if ((game + 1 - first) % CHUNK === 0) yield count.tally();
  }
  return count.tally();
}

/** All games of a task at once. */
export function simulate(task: SimulationTask, watcher: Watcher = {}): Tally {
  return finish(simulateGames(task, watcher));
}

/** The figures of a tally as the command shows them. */
export function summarize(tally: Tally): Simulation {
  return {
    games: tally.games,
    won: tally.games - tally.wallGames,
    wallGames: tally.wallGames,
    drawsPerGame: tally.games === 0 ? 0 : tally.draws / tally.games,
    selfDrawn: tally.selfDrawn,
    byAway: tally.byAway.map(({ players, won }, away) => ({ away, players, won })).filter(({ players }) => players > 0),
  };
}

/** Every event of game number `game`, as `formatTrace` prints it. */
export function traceGame(task: Omit<SimulationTask, 'games' | 'first'>, game: number): TableEvent[] {
  const { table, policies } = seatedTable(task);
  seatPolicies(table, policies, game);
  table.trace = [];
  playGame(table, gameStreams(task.seed, game).next().value);
  return table.trace;
}

function seatedTable({ compiled, policies: names }: Pick<SimulationTask, 'compiled' | 'policies'>): {
  table: Table;
  policies: readonly Policy[];
} {
  if (names.length !== SEAT_COUNT) throw new Error(`a table needs four policies, not ${names.length}`);
  const card = makeTableCard(compiled);
  const policies = names.map((name) => POLICIES[name](card));
  return { table: makeTable(card, policies), policies };
}

/** Seats the policies for a game (TB-24) and returns the place of each seat's policy in the list. */
function seatPolicies(table: Table, policies: readonly Policy[], game: number): number[] {
  return policies.map((_, seat) => {
    const place = (seat + game) % SEAT_COUNT;
    playerAt(table, seat).policy = policies[place] as Policy;
    return place;
  });
}
