import { finish } from '../../../core/base/steps.ts';
import { calibrateSteps, type MomentCheck } from '../../../core/chance/calibrate.ts';
import { type CardChance, fitCardChance, provisionalChance } from '../../../core/chance/card-chance.ts';
import { chanceOf, type ChanceNumbers, fitPooled } from '../../../core/chance/fit.ts';
import { ChanceSampler, type ChanceSample } from '../../../core/chance/sampler.ts';
import type { CompiledCard } from '../../../core/reading/compiled.ts';
import type { TableKind } from '../../../core/table/kinds.ts';
import { PLAYERS_AT, simulateGames } from '../../../core/table/simulate.ts';
import { type ExposureCheck, exposureChecks } from './exposures.ts';

/** Seeds of the games that the common form is fitted to, and of those that all is tested on. */
export const POOL_SEED = 101;
const TEST_SEED = 202;
/** Of each seat's turns one in so many is read for the common form. */
const POOL_EVERY = 3;

/** The states of some games with a card. */
function samplesOf(
  compiled: CompiledCard,
  kind: TableKind,
  { seed, games, every = 1 }: { readonly seed: number; readonly games: number; readonly every?: number },
): readonly ChanceSample[] {
  const sampler = new ChanceSampler(every);
  finish(simulateGames({ compiled, seed, games, policies: PLAYERS_AT[kind] }, sampler.watcher));
  return sampler.samples;
}

/** The states of a card for the common form. */
export function poolSamples(compiled: CompiledCard, kind: TableKind, games: number): readonly ChanceSample[] {
  return samplesOf(compiled, kind, { seed: POOL_SEED, games, every: POOL_EVERY });
}

/** What chance events moved the chance of a seat by in a whole game, on average over seats. */
interface LuckSums {
  readonly seats: number;
  /** Tiles received in the exchange, own draws, and the others' turns; in games of a hundred. */
  readonly exchange: Luck;
  readonly draws: Luck;
  readonly others: Luck;
  readonly all: Luck;
}

export interface Luck {
  readonly mean: number;
  /** The standard error of the mean; the seats of one game count as one observation. */
  readonly error: number;
}

/** Adds up the luck of steady players: each state's chance against that of their next one. */
function luckOf(samples: readonly ChanceSample[], numbers: ChanceNumbers): LuckSums {
  const chances = new Map(samples.map((sample) => [sample, chanceOf(sample.state, numbers)]));
  const games = new Map<number, [number, number, number]>();
  let seats = 0;
  const first = new Set<number>();
  for (const sample of samples) {
    const { next, state, game, seat } = sample;
    if (!first.has(4 * game + seat)) seats += 1;
    first.add(4 * game + seat);
    const after = typeof next === 'number' ? next : (chances.get(next) ?? next.state.reach);
    const move = after - (chances.get(sample) as number);
    const sums = games.get(game) ?? [0, 0, 0];
    const part = state.step !== null ? 0 : state.before === 0 ? 1 : 2;
    sums[part] += move;
    games.set(game, sums);
  }
  const luck = (of: (sums: readonly [number, number, number]) => number): Luck => {
    const values = [...games.values()].map(of);
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const spread = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
    const perSeat = (100 * values.length) / seats;
    return { mean: perSeat * mean, error: perSeat * Math.sqrt(spread / values.length) };
  };
  return {
    seats,
    exchange: luck(([exchange]) => exchange),
    draws: luck(([, draws]) => draws),
    others: luck(([, , others]) => others),
    all: luck(([exchange, draws, others]) => exchange + draws + others),
  };
}

/** Squared error of a forecast, averaged over states. */
function brierOf(samples: readonly ChanceSample[], forecast: (sample: ChanceSample) => number): number {
  return samples.reduce((sum, sample) => sum + (forecast(sample) - Number(sample.won)) ** 2, 0) / samples.length;
}

/** One card, tested by a form that it took no part in. */
export interface CardStudy {
  readonly title: string;
  readonly ways: number;
  readonly wallGames: number;
  readonly draws: number;
  readonly provisional: readonly MomentCheck[];
  readonly fitted: readonly MomentCheck[];
  readonly luck: LuckSums;
  readonly exposures: readonly ExposureCheck[];
  /** Of states after a discard: the chance, the share that wins, the best reach. */
  readonly brier: { readonly chance: number; readonly constant: number; readonly reach: number };
}

export interface StudyTask {
  readonly title: string;
  readonly compiled: CompiledCard;
  readonly kind: TableKind;
  /** The common form, fitted to other cards. */
  readonly pooled: ArrayLike<number>;
  readonly games: number;
}

/** Tests a card on games that took no part in any fit. */
export function studyCard({ title, compiled, kind, pooled, games }: StudyTask): CardStudy {
  const fitted = finish(fitCardChance(compiled, kind, { pooled }));
  const check = (fit: CardChance): readonly MomentCheck[] =>
    finish(calibrateSteps({ compiled, fit, seed: TEST_SEED, games }));
  const samples = samplesOf(compiled, kind, { seed: TEST_SEED, games });
  const thrown = samples.filter(({ state }) => state.step === null && state.before === 3);
  const won = thrown.filter((each) => each.won).length / thrown.length;
  return {
    title,
    ways: compiled.wayCount,
    wallGames: fitted.table.wallGames,
    draws: fitted.table.draws,
    provisional: check({ ...provisionalChance(kind), pooled }),
    fitted: check(fitted),
    luck: luckOf(samples, fitted),
    exposures: exposureChecks(samples, fitted),
    brier: {
      chance: brierOf(thrown, ({ state }) => chanceOf(state, fitted)),
      constant: brierOf(thrown, () => won),
      reach: brierOf(thrown, ({ state }) => state.reach),
    },
  };
}

/** The common form of several cards' samples. */
export function pooledOf(cards: readonly (readonly ChanceSample[])[]): readonly number[] {
  return Array.from(fitPooled(cards.flat()).pooled, (value) => Math.round(value * 1e4) / 1e4);
}
