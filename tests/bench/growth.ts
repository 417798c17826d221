import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { passTable } from '../../core/plan/pass-table.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { knownTiles } from '../../core/reading/known.ts';
import { rankedWays } from '../../core/reading/targets.ts';
import { readKnown } from '../../core/reading/reading.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import { simulate } from '../../core/table/simulate.ts';
import { demoCard, grownCard, randomRack } from '../reference/cards.ts';

/** Numbers of ways that are measured; the demo card has 1,053. */
export const SIZES = [500, 1_000, 2_000, 5_000, 10_000, 20_000, 50_000] as const;

/** What a card of so many ways costs; times of the processor in milliseconds, medians. */
export interface Cost {
  readonly ways: number;
  /** Making the card ready, once. */
  readonly compile: number;
  /** Away, draw reach and reach of all ways, ranked. */
  readonly reading: number;
  /** Expected away and reach of all passes of three tiles. */
  readonly passes: number;
  /** A whole game of four soft players. */
  readonly game: number;
  /** The most memory that the process ever held, in megabytes. */
  readonly memory: number;
}

const READINGS = 15;
const TABLES = 5;
const GAMES = 10;
const DRAWS = 20;

/** Measures a card of so many ways, made in the manner of the demo card; to be called once in a process. */
export function costOf(ways: number): Cost {
  const card = grownCard(demoCard(), ways, randomFromSeed(ways));
  const random = randomFromSeed(2028);
  const known = Array.from({ length: READINGS }, () => expectValue(knownTiles(randomRack(random, 13))));
  const start = process.cpuUsage();
  const compiled = compileCard(card);
  const compile = since(start);
  readKnown(compiled, expectValue(knownTiles(randomRack(random, 13))), DRAWS, FIRST_REACH_MODEL);
  const readings = known.map((each) => timeOf(() => rankedWays(readKnown(compiled, each, DRAWS, FIRST_REACH_MODEL))));
  const tables = known.slice(0, TABLES).map((each) => timeOf(() => passTable(compiled, each, 3, FIRST_REACH_MODEL)));
  const policies = ['soft', 'soft', 'soft', 'soft'] as const;
  const games = timeOf(() => simulate({ compiled, seed: 1, games: GAMES, policies }));
  const memory = process.resourceUsage().maxRSS / 1024;
  return { ways, compile, reading: median(readings), passes: median(tables), game: games / GAMES, memory };
}

/** Milliseconds of the processor. */
function timeOf(work: () => unknown): number {
  const start = process.cpuUsage();
  work();
  return since(start);
}

function since(start: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}

function median(values: readonly number[]): number {
  return [...values].sort((one, other) => one - other)[values.length >> 1] ?? Number.NaN;
}
