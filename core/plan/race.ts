import { type Random, randomFromSeed } from '../base/random.ts';

/** A number that every future of a candidate gives. */
export interface Figure {
  readonly name: string;
  /** A `share` is 0 or 1 each time; a `mean` any number. */
  readonly kind: 'share' | 'mean';
  readonly better: 'more' | 'less';
}

/** Choices that are compared by sampling futures. */
export interface Contest {
  readonly candidates: number;
  /** The first one decides; a chance, 0 to 1. */
  readonly figures: readonly Figure[];
  /**
   * Writes the figures of one future of a candidate into `into`. All chance comes from `random`:
   * with equal streams two candidates must meet the same chance events, as far as they can.
   */
  sample(candidate: number, random: Random, into: Float64Array): void;
}

/** How a race is run; all of it is fixed before the first sample. */
export interface RaceRule {
  readonly seed: number;
  /** Futures of each candidate in a block. */
  readonly blockSize: number;
  /** Rising numbers of blocks after which there is a look at the sums; the last one is the budget. */
  readonly looks: readonly number[];
  /** The race ends at a look when every loss still open is known within this, either way. */
  readonly halfWidth: number;
  /** The chance that any candidate as good as the best is called worse, in the whole race. */
  readonly errorRate: number;
  /** Losses below this are reported as 'as good'. */
  readonly smallestLoss: number;
  /** Of candidates whose means lie within this of the highest, the one that is named first counts as the best. */
  readonly ties: number;
}

/**
 * The usual rule: an error in twenty races, losses from half a point on, and less than a quarter is a tie. It ends once
 * every loss is known to a point, since losses are said in whole ones; more futures hardly ever change the choice.
 */
export const USUAL_RULE: RaceRule = {
  seed: 1,
  blockSize: 32,
  looks: [4, 8, 16],
  halfWidth: 0.01,
  errorRate: 0.05,
  smallestLoss: 0.005,
  ties: 0.0025,
};

/**
 * The rule for whole games, whose luck hides all but large gaps: up to 8,192 games of each choice,
 * a minute of two workers for four choices. It ends sooner when gaps are known to a point.
 */
export const GAMES_RULE: RaceRule = { ...USUAL_RULE, looks: [4, 16, 64, 256], halfWidth: 0.01, ties: 0 };

/** Sums over the futures of one block; plain data, to be added up in the order of blocks. */
export interface BlockSums {
  readonly block: number;
  /** The candidates that were sampled. */
  readonly alive: readonly number[];
  /** Futures of each. */
  readonly samples: number;
  /** Row by candidate, column by figure. */
  readonly sums: Float64Array;
  readonly squares: Float64Array;
  /** By first candidate, second candidate and figure: sums of first less second, and of its square. */
  readonly gaps: Float64Array;
  readonly gapSquares: Float64Array;
}

/**
 * Samples one block for the candidates still in the race; yields after each future of all of them,
 * so that it can be left off. The sums depend on nothing but the contest, the seed, the block's
 * number and the candidates, so that anybody may count any block.
 */
export function* blockSteps(
  contest: Contest,
  { seed, blockSize }: Pick<RaceRule, 'seed' | 'blockSize'>,
  block: number,
  alive: readonly number[],
): Generator<undefined, BlockSums> {
  const sums = emptySums(contest, block, alive, blockSize);
  const figures = contest.figures.length;
  const values = Array.from({ length: contest.candidates }, () => new Float64Array(figures));
  let stream = blockStream(seed, block);
  for (let sample = 0; sample < blockSize; sample += 1) {
    // A new copy for each candidate: these are the common random numbers.
    for (const candidate of alive) contest.sample(candidate, stream.jumped(), values[candidate] as Float64Array);
    addValues(sums, values, contest.candidates, figures);
    stream = stream.jumped();
    yield undefined;
  }
  return sums;
}

/** Blocks lie a long jump (2^96 draws) apart, the futures of a block a jump (2^64 draws). */
function blockStream(seed: number, block: number): Random {
  let stream = randomFromSeed(seed);
  for (let skip = 0; skip < block; skip += 1) stream = stream.longJumped();
  return stream;
}

function emptySums(contest: Contest, block: number, alive: readonly number[], samples: number): BlockSums {
  const rows = contest.candidates * contest.figures.length;
  const [sums, squares] = [new Float64Array(rows), new Float64Array(rows)];
  const [gaps, gapSquares] = [new Float64Array(rows * contest.candidates), new Float64Array(rows * contest.candidates)];
  return { block, alive, samples, sums, squares, gaps, gapSquares };
}

function addValues(into: BlockSums, values: readonly Float64Array[], candidates: number, figures: number): void {
  for (const one of into.alive) {
    for (let figure = 0; figure < figures; figure += 1) {
      const value = values[one]?.[figure] as number;
      add(into.sums, one * figures + figure, value);
      add(into.squares, one * figures + figure, value * value);
      for (const other of into.alive) {
        const gap = value - (values[other]?.[figure] as number);
        const place = (one * candidates + other) * figures + figure;
        add(into.gaps, place, gap);
        add(into.gapSquares, place, gap * gap);
      }
    }
  }
}

function add(into: Float64Array, place: number, value: number): void {
  into[place] = (into[place] as number) + value;
}
