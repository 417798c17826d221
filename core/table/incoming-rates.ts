import { type ExchangeState, givenTiles } from '../exchange/state.ts';
import { mayBePassed, PASS_STEPS, type PassStep } from '../exchange/steps.ts';
import { faceOf, type Kind, KINDS, supplyOf } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';

/** Classes of tile that players treat differently when they pass. Jokers are never passed. */
export const INCOMING_CLASSES = ['flower', 'wind', 'dragon', 'end number', 'inner number'] as const;
export type IncomingClass = (typeof INCOMING_CLASSES)[number];

/** The class of a kind; ends are 1 and 9. Undefined for the joker. */
export function incomingClassOf(kind: Kind): IncomingClass | undefined {
  const face = faceOf(kind);
  if (face.class === 'joker') return undefined;
  if (face.class !== 'number') return face.class;
  return face.number === 1 || face.number === 9 ? 'end number' : 'inner number';
}

/**
 * What came in by passes, against what would have come if every unseen tile were as likely. A cell
 * is a class together with the number of copies of the kind that the receiver could not see.
 */
export interface IncomingCell extends IncomingSum {
  readonly step: PassStep;
  readonly class: IncomingClass;
  /** Copies unseen by the receiver before the tiles came, 1 to 4 (to 8 for flowers). */
  readonly copies: number;
}

/** Tiles that came in, against how many would have by equal chances. */
export interface IncomingSum {
  readonly received: number;
  /** The mean number under equal chances. */
  readonly expected: number;
}

const MOST_COPIES = 8;
const PASSED: readonly Kind[] = KINDS.filter(mayBePassed);

/** Adds up what comes in; one for any number of games. */
export class IncomingCount {
  /** Passes that brought tiles. */
  passes = 0;
  readonly #received = new Float64Array(PASS_STEPS.length * INCOMING_CLASSES.length * (MOST_COPIES + 1));
  readonly #expected = new Float64Array(this.#received.length);

  /** Notes what a seat received at a step. `unseen` are 36 counts: all but its rack and what it has just given. */
  note(step: PassStep, unseen: ArrayLike<number>, tiles: readonly Kind[]): void {
    if (tiles.length > 0) this.passes += 1;
    const stepPlace = PASS_STEPS.indexOf(step);
    let total = 0;
    for (const kind of PASSED) total += unseen[kind] as number;
    for (const kind of PASSED) {
      const copies = unseen[kind] as number;
      add(this.#expected, cellOf(stepPlace, kind, copies), (tiles.length * copies) / total);
    }
    for (const kind of tiles) add(this.#received, cellOf(stepPlace, kind, unseen[kind] as number), 1);
  }

  /** The cells that could occur, by step, class and copies. */
  cells(): IncomingCell[] {
    return PASS_STEPS.flatMap((step, stepPlace) =>
      INCOMING_CLASSES.flatMap((kindClass, classPlace) =>
        Array.from({ length: MOST_COPIES }, (_, place) => place + 1).map((copies) => {
          const cell = placeOf(stepPlace, classPlace, copies);
          const received = this.#received[cell] as number;
          return { step, class: kindClass, copies, received, expected: this.#expected[cell] as number };
        }),
      ),
    ).filter(({ expected }) => expected > 0);
  }
}

function add(cells: Float64Array, cell: number, more: number): void {
  cells[cell] = (cells[cell] as number) + more;
}

/** By kind the place of its class. */
const CLASS_PLACES = KINDS.map((kind) => {
  const kindClass = incomingClassOf(kind);
  return kindClass === undefined ? -1 : INCOMING_CLASSES.indexOf(kindClass);
});

function cellOf(step: number, kind: Kind, copies: number): number {
  const kindClass = CLASS_PLACES[kind] as number;
  if (kindClass < 0) throw new Error('a joker is never passed (TB-4)');
  return placeOf(step, kindClass, copies);
}

function placeOf(step: number, kindClass: number, copies: number): number {
  return (step * INCOMING_CLASSES.length + kindClass) * (MOST_COPIES + 1) + copies;
}

/** The passes that a journal must hold before its own rates count. */
export const PASSES_NEEDED = 60;
/** Tiles for which the rates of the simulated table stand in a journal's, in each class. */
const PRIOR_TILES = 10;
/** The same for equal chances in the simulated table's, which has thousands of tiles. */
const TABLE_PRIOR_TILES = 1;

/** How often tiles come in, against equal chances for every unseen tile. */
interface Rate {
  /** 1 is as often as by equal chances. */
  readonly rate: number;
  /** The standard error of the rate. */
  readonly error: number;
}

interface ClassRate extends Rate {
  readonly class: IncomingClass;
}

/** How likely tiles are to come in at each step, in proportion. */
export interface IncomingWeights {
  /** 36 weights of a tile of each kind that the receiver has not seen. */
  readonly weights: Readonly<Record<PassStep, ArrayLike<number>>>;
  /** How many times as likely as these is a tile that the receiver gave away before. */
  readonly returned: Readonly<Record<PassStep, number>>;
}

/** What comes in by passes, with where that is known from. */
export interface IncomingRates extends IncomingWeights {
  readonly source: 'table' | 'journal';
  /** Passes received that the rates were counted on. */
  readonly passes: number;
  readonly classes: readonly ClassRate[];
}

/** The rates by class of what came in at the simulated table, almost plain counts: there are thousands of tiles. */
export function tableRates(count: IncomingCount): Pick<IncomingRates, 'source' | 'passes' | 'classes'> {
  const classes = classRates(count.cells(), EQUAL_CHANCES, TABLE_PRIOR_TILES);
  return { source: 'table', passes: count.passes, classes };
}

/**
 * The rates of a player's own log, drawn towards those of the simulated table; those of the table alone until the log
 * holds enough passes. By class: within a class, and from step to step, they differ as they do at the table.
 */
export function journalRates(log: PassLog, table: IncomingRates): IncomingRates {
  if (log.passes < PASSES_NEEDED) return table;
  const known = rateMap(table.classes);
  const classes = classRates(log.cells(), known, PRIOR_TILES);
  const own = rateMap(classes);
  const weights = stepTable((step) =>
    KINDS.map((kind) => {
      const kindClass = incomingClassOf(kind);
      const weight = table.weights[step][kind] as number;
      if (kindClass === undefined) return weight;
      return (weight * (own.get(kindClass) as number)) / (known.get(kindClass) as number);
    }),
  );
  return { source: 'journal', passes: log.passes, classes, weights, returned: table.returned };
}

/**
 * 36 weights of the unseen tiles for one pass, so that each kind comes in as often as the rates say; with them tiles
 * given away come back as further copies of their kind, which they do only where one of it is unseen.
 */
export function weightsOf(
  { weights, returned }: IncomingWeights,
  step: PassStep,
  { unseen, gone }: { readonly unseen: Tiles; readonly gone: Tiles },
): readonly number[] {
  return KINDS.map((kind) => {
    const back = returned[step] * (gone.count(kind) / Math.max(1, unseen.count(kind)));
    return (weights[step][kind] as number) * (1 + back);
  });
}

/** Counts what came in by the passes of logged exchanges. */
export class PassLog {
  readonly #count = new IncomingCount();

  get passes(): number {
    return this.#count.passes;
  }

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
    }
  }

  cells(): IncomingCell[] {
    return this.#count.cells();
  }
}

const EQUAL_CHANCES: ReadonlyMap<IncomingClass, number> = new Map(INCOMING_CLASSES.map((each) => [each, 1]));

/**
 * A rate shrunk towards a known one. Tiles are taken as a Poisson count with mean rate times expected, the rate as Gamma
 * about its prior, worth `priorTiles` expected tiles; the answer is the posterior's mean and deviation (Clayton and
 * Kaldor, "Empirical Bayes estimates of age-standardized relative risks", Biometrics 43, 1987; here with a fixed prior).
 */
export function shrunk({ received, expected }: IncomingSum, prior: number, priorTiles: number): Rate {
  const shape = received + priorTiles * prior;
  return { rate: shape / (expected + priorTiles), error: Math.sqrt(shape) / (expected + priorTiles) };
}

function classRates(
  cells: readonly IncomingCell[],
  prior: ReadonlyMap<IncomingClass, number>,
  priorTiles: number,
): readonly ClassRate[] {
  return INCOMING_CLASSES.map((each) => {
    const own = cells.filter((cell) => cell.class === each);
    const received = own.reduce((sum, cell) => sum + cell.received, 0);
    const expected = own.reduce((sum, cell) => sum + cell.expected, 0);
    return { class: each, ...shrunk({ received, expected }, prior.get(each) as number, priorTiles) };
  });
}

/** Something for each step. */
export function stepTable<Part>(at: (step: PassStep) => Part): Record<PassStep, Part> {
  return Object.fromEntries(PASS_STEPS.map((step) => [step, at(step)])) as Record<PassStep, Part>;
}

function rateMap(classes: readonly ClassRate[]): ReadonlyMap<IncomingClass, number> {
  return new Map(classes.map((each) => [each.class, each.rate]));
}
