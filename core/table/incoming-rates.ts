import { type ExchangeState, givenTiles } from '../exchange/state.ts';
import { KIND_COUNT, KINDS, supplyOf } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import { INCOMING_CLASSES, type IncomingCell, type IncomingClass, incomingClassOf, IncomingCount } from './incoming.ts';

/** The passes that a journal must hold before its own rates count. */
export const PASSES_NEEDED = 60;
/** Tiles for which the rates of the simulated table stand in a journal's, in each class. */
const PRIOR_TILES = 10;
/** The same for equal chances in the simulated table's, which has thousands of tiles. */
const TABLE_PRIOR_TILES = 1;

/** How often tiles of a class come in, against equal chances for every unseen tile. */
export interface ClassRate {
  readonly class: IncomingClass;
  /** 1 is as often as by equal chances. */
  readonly rate: number;
  /** The standard error of the rate. */
  readonly error: number;
}

/** What comes in by passes, with where that is known from. */
export interface IncomingRates {
  readonly source: 'table' | 'journal';
  /** Passes received that the rates were counted on. */
  readonly passes: number;
  readonly classes: readonly ClassRate[];
  /** 36 weights, for `ExchangeTerms.weights` and the exact pass table. */
  readonly weights: Float64Array;
}

/** The rates of what came in at the simulated table: almost plain counts, for there are thousands of tiles. */
export function tableRates(passes: number, cells: readonly IncomingCell[]): IncomingRates {
  return ratesOf('table', passes, cells, EQUAL_CHANCES, TABLE_PRIOR_TILES);
}

/**
 * The rates of a player's own log, drawn towards those of the simulated table; those of the table
 * alone until the log holds enough passes.
 */
export function journalRates(log: PassLog, table: IncomingRates): IncomingRates {
  if (log.passes < PASSES_NEEDED) return table;
  return ratesOf('journal', log.passes, log.cells(), rateMap(table), PRIOR_TILES);
}

/** Counts what came in by the passes of logged exchanges. */
export class PassLog {
  passes = 0;
  readonly #count = new IncomingCount();

  /** Notes every pass of an exchange that brought tiles. */
  note(exchange: ExchangeState): void {
    const received = exchange.passes.reduce((sum, pass) => sum.plus(pass.received), Tiles.none);
    let rack = exchange.rack.plus(givenTiles(exchange)).minus(received);
    for (const { step, given, received: came } of exchange.passes) {
      const seen = rack.toCounts();
      rack = rack.minus(given).plus(came);
      if (came.size === 0) continue;
      const unseen = KINDS.map((kind) => Math.max(0, supplyOf(kind) - (seen[kind] as number)));
      this.#count.note(step, unseen, came.toKinds());
      this.passes += 1;
    }
  }

  cells(): IncomingCell[] {
    return this.#count.cells();
  }
}

const EQUAL_CHANCES: ReadonlyMap<IncomingClass, number> = new Map(INCOMING_CLASSES.map((each) => [each, 1]));

/**
 * Rates shrunk towards known ones. A class's tiles are taken as a Poisson count with mean rate times
 * expected, the rate as Gamma about its prior, worth `priorTiles` expected tiles; the answer is the
 * posterior's mean and deviation (Clayton and Kaldor, "Empirical Bayes estimates of age-standardized
 * relative risks", Biometrics 43, 1987; here with a fixed prior).
 */
function ratesOf(
  source: IncomingRates['source'],
  passes: number,
  cells: readonly IncomingCell[],
  prior: ReadonlyMap<IncomingClass, number>,
  priorTiles: number,
): IncomingRates {
  const classes = INCOMING_CLASSES.map((each) => {
    const own = cells.filter((cell) => cell.class === each);
    const received = own.reduce((sum, cell) => sum + cell.received, 0);
    const expected = own.reduce((sum, cell) => sum + cell.expected, 0);
    const shape = received + priorTiles * (prior.get(each) as number);
    return { class: each, rate: shape / (expected + priorTiles), error: Math.sqrt(shape) / (expected + priorTiles) };
  });
  return { source, passes, classes, weights: weightsOf(classes) };
}

function weightsOf(classes: readonly ClassRate[]): Float64Array {
  const rates = new Map<IncomingClass | undefined, number>(classes.map((each) => [each.class, each.rate]));
  const weights = new Float64Array(KIND_COUNT).fill(1);
  for (const kind of KINDS) weights[kind] = rates.get(incomingClassOf(kind)) ?? 1;
  return weights;
}

function rateMap({ classes }: IncomingRates): ReadonlyMap<IncomingClass, number> {
  return new Map(classes.map((each) => [each.class, each.rate]));
}
