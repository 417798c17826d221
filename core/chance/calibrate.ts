import type { Steps } from '../base/steps.ts';
import { PASS_STEPS } from '../exchange/steps.ts';
import type { CompiledCard } from '../reading/compiled.ts';
import type { Watcher } from '../table/game.ts';
import { PLAYERS_AT, simulateGames } from '../table/simulate.ts';
import { SEAT_COUNT, type Table } from '../table/table.ts';
import type { CardChance } from './card-chance.ts';
import { MomentChance } from './moment-chance.ts';

/** The moments at which the chance is compared with what came: the deal, before each pass, when play begins, then by tens of tiles drawn. */
export const MOMENTS = ['deal', ...PASS_STEPS, 'play', '10', '20', '30', '40', '50', '60', '70', '80', '90'] as const;
type MomentName = (typeof MOMENTS)[number];

/** The chance at a moment against the share that won; all as fractions of 1. */
export interface MomentCheck {
  readonly moment: MomentName;
  /** Seats that were read, each at most once a game. */
  readonly states: number;
  /** The mean chance. */
  readonly said: number;
  /** The share of these seats that won. */
  readonly won: number;
  /** The standard error of `said` less `won`; the seats of one game count as one observation. */
  readonly error: number;
  /** The mean absolute difference over tenths of the states by their chance. */
  readonly gap: number;
}

export interface CalibrateTask {
  readonly compiled: CompiledCard;
  readonly fit: CardChance;
  readonly seed: number;
  readonly games: number;
}

/** Compares the chance with what came of simulated games that took no part in its fit; yields the part done, 0 to 1. */
export function* calibrateSteps({ compiled, fit, seed, games }: CalibrateTask): Steps<number, readonly MomentCheck[]> {
  if (seed === fit.seed) throw new Error('these games took part in the fit');
  const recorder = new Recorder(fit);
  const run = simulateGames({ compiled, seed, games, policies: PLAYERS_AT[fit.kind] }, recorder.watcher);
  for (let step = run.next(); step.done !== true; step = run.next()) yield step.value.games / games;
  return MOMENTS.map((moment) => checkOf(moment, recorder.saidAt(moment)));
}

/** A chance that was said of a seat, and whether it won. */
interface Said {
  readonly chance: number;
  won: boolean;
  readonly game: number;
  readonly seat: number;
}

/** Says the chance of each seat at each moment of the games that it looks at. */
class Recorder {
  readonly watcher: Watcher;
  readonly #said = new Map<MomentName, Said[]>(MOMENTS.map((moment) => [moment, []]));
  readonly #fit: CardChance;
  #open: Said[] = [];
  /** By seat, the ten for which a chance was said last. */
  readonly #tens = new Int8Array(SEAT_COUNT);
  #game = 0;
  #chance: MomentChance | undefined;

  constructor(fit: CardChance) {
    this.#fit = fit;
    this.watcher = {
      beforePass: (table, step) => this.#everySeat(table, step, (chance) => chance.beforePass(step)),
      afterExchange: (table) => this.#everySeat(table, 'play', (chance) => chance.beforePlay()),
      afterDiscard: (table, seat, drawn) => this.#discarded(table, seat, drawn),
      afterGame: (_, { winner }) => this.#ended(winner),
    };
  }

  saidAt(moment: MomentName): readonly Said[] {
    return this.#said.get(moment) as Said[];
  }

  #everySeat(table: Table, moment: MomentName, value: (chance: MomentChance) => number): void {
    for (let seat = 0; seat < SEAT_COUNT; seat += 1) {
      const chance = value(this.#at(table, seat));
      this.#say(moment, seat, chance);
      if (moment === 'right') this.#say('deal', seat, chance);
    }
  }

  /** A seat's first discard in each ten tiles drawn. */
  #discarded(table: Table, seat: number, drawn: number): void {
    const ten = Math.floor(drawn / 10);
    if (ten === 0 || (this.#tens[seat] as number) >= ten) return;
    this.#tens[seat] = ten;
    this.#say(`${ten * 10}` as MomentName, seat, this.#at(table, seat).waiting(SEAT_COUNT - 1));
  }

  #at(table: Table, seat: number): MomentChance {
    this.#chance ??= new MomentChance(table, this.#fit);
    this.#chance.seat = seat;
    return this.#chance;
  }

  #say(moment: MomentName, seat: number, chance: number): void {
    const said = { chance, won: false, game: this.#game, seat };
    this.#open.push(said);
    this.#said.get(moment)?.push(said);
  }

  #ended(winner: number): void {
    for (const said of this.#open) said.won = said.seat === winner;
    this.#open = [];
    this.#tens.fill(0);
    this.#game += 1;
  }
}

function checkOf(moment: MomentName, said: readonly Said[]): MomentCheck {
  const states = said.length;
  if (states === 0) return { moment, states, said: 0, won: 0, error: 0, gap: 0 };
  const sum = said.reduce((total, { chance }) => total + chance, 0);
  const won = said.filter((each) => each.won).length;
  const byGame = new Map<number, number>();
  for (const { game, chance, won: hers } of said) byGame.set(game, (byGame.get(game) ?? 0) + chance - Number(hers));
  const mean = (sum - won) / byGame.size;
  const spread = [...byGame.values()].reduce((total, each) => total + (each - mean) ** 2, 0);
  return {
    moment,
    states,
    said: sum / states,
    won: won / states,
    error: Math.sqrt(spread) / states,
    gap: gapOf(said),
  };
}

const TENTHS = 10;

/** The mean absolute difference of chance and share won over tenths of the states. */
function gapOf(said: readonly { readonly chance: number; readonly won: boolean }[]): number {
  const sorted = said.toSorted((one, other) => one.chance - other.chance);
  let gap = 0;
  for (let tenth = 0; tenth < TENTHS; tenth += 1) {
    const part = sorted.slice(
      Math.floor((tenth * sorted.length) / TENTHS),
      Math.floor(((tenth + 1) * sorted.length) / TENTHS),
    );
    gap += Math.abs(part.reduce((sum, { chance, won }) => sum + chance - Number(won), 0)) / sorted.length;
  }
  return gap;
}
