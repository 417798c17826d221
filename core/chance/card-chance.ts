import { finish, type Steps } from '../base/steps.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import { levelOf } from '../reading/hand-model.ts';
import type { Watcher } from '../table/game.ts';
import type { TableKind } from '../table/kinds.ts';
import { PLAYERS_AT, simulateGames } from '../table/simulate.ts';
import { SEAT_COUNT } from '../table/table.ts';
import { type ChanceNumbers, fitCorrection, NO_CORRECTION } from './fit.ts';
import { POOLED } from './pooled.ts';
import { ChanceSampler, meanBestReach } from './sampler.ts';
import { shippedFit } from './shipped-fit.ts';
import { type CardFit, FigureCount, rounded } from './table-figures.ts';

/** Raised whenever the same card would come out otherwise, so that kept fits are made anew. */
export const CHANCE_VERSION = 4;

/** What makes the chance of a card at a kind of table; with 0 games the form that holds for all cards, until they are played. */
export interface CardChance extends CardFit, ChanceNumbers {
  readonly version: typeof CHANCE_VERSION;
}

/** The games of a fit: four seats read in each, so that their level is known to 0.3 games in a hundred. */
export const FIT_GAMES = 400;
/** The same games on every machine. */
const FIT_SEED = 13;
/** For each game that is read so many more are played, to know how often games are won. */
const MORE_GAMES = 3;
/** The part of the work that goes by with the games that are read. */
const READ_PART = 0.6;

/** What is known before a card's games have been played: the form that holds for all cards. */
export function provisionalChance(kind: TableKind): CardChance {
  const { form, table, bestReach } = POOLED[kind];
  const correction = NO_CORRECTION;
  return { version: CHANCE_VERSION, kind, games: 0, seed: 0, pooled: form, correction, table, bestReach };
}

/** The chance by the fit that ships with Windrow; undefined for any card but the demo card. */
export function shippedChance(mark: string, kind: TableKind): CardChance | undefined {
  const fit = shippedFit(mark, kind);
  return fit && fittedChance(fit);
}

/** The chance by what a card's games brought. */
export function fittedChance(fit: CardFit): CardChance {
  return { version: CHANCE_VERSION, pooled: POOLED[fit.kind].form, ...fit };
}

/**
 * The level of a card's hands (core/reading/hand-model.ts) by what its games brought; that of all cards together where a
 * fit does not say how good hands are when play begins.
 */
export function handLevel({ kind, table, bestReach }: CardFit): number {
  const from = bestReach === undefined ? POOLED[kind] : { table, bestReach };
  return levelOf((1 - from.table.wallGames) / SEAT_COUNT, from.bestReach);
}

export interface FitOptions {
  readonly seed?: number;
  readonly games?: number;
  /** The form that holds for all cards. */
  readonly pooled?: ArrayLike<number>;
}

/** Plays games with a card and fits its chance to them; yields the part done, 0 to 1. */
export function* fitCardChance(
  compiled: CompiledCard,
  kind: TableKind,
  { seed = FIT_SEED, games = FIT_GAMES, pooled = POOLED[kind].form }: FitOptions = {},
): Steps<number, CardChance> {
  const sampler = new ChanceSampler();
  const count = new FigureCount();
  const watcher = joined(sampler.watcher, count.watcher);
  const task = { compiled, seed, policies: PLAYERS_AT[kind] };
  const read = simulateGames({ ...task, games }, watcher);
  for (let step = read.next(); step.done !== true; step = read.next()) yield (READ_PART * step.value.games) / games;
  const wonOfRead = 1 - count.wallGames;
  const unread = simulateGames({ ...task, games: MORE_GAMES * games, first: games }, count.watcher);
  for (let step = unread.next(); step.done !== true; step = unread.next()) {
    yield READ_PART + ((1 - READ_PART) * step.value.games) / (MORE_GAMES * games);
  }
  // Where no game that was read was won, nothing is known of it.
  const wonBeyond = wonOfRead > 0 ? (1 - count.wallGames) / wonOfRead : 1;
  const { correction } = fitCorrection(sampler.samples, pooled, wonBeyond);
  return {
    version: CHANCE_VERSION,
    kind,
    games,
    seed,
    pooled,
    correction: Array.from(correction, rounded),
    table: count.figures(),
    bestReach: meanBestReach(sampler.samples),
  };
}

/** The chance of a card at once. */
export function cardChance(compiled: CompiledCard, kind: TableKind, games = FIT_GAMES): CardChance {
  return finish(fitCardChance(compiled, kind, { games }));
}

function joined(one: Watcher, other: Watcher): Watcher {
  return {
    ...one,
    onPass: (...about) => {
      one.onPass?.(...about);
      other.onPass?.(...about);
    },
    afterGame: (...about) => {
      one.afterGame?.(...about);
      other.afterGame?.(...about);
    },
  };
}
