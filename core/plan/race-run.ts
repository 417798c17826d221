import { normalExceededBy, Z95 } from '../base/statistics.ts';
import { type BlockSums, blockSteps, type Contest, type Figure, type RaceRule } from './race.ts';
import { type Estimate, lossEstimate, RaceTotals, valueEstimate } from './race-estimates.ts';

/** `as good`: no difference to the best was found, or one too small to mind. */
type RaceVerdict = 'best' | 'as good' | 'costs';

/** A sampled figure of a candidate, and by how much it is worse than the best one's. */
interface Compared {
  readonly value: Estimate;
  /** Over the futures that both have in common. */
  readonly loss: Estimate;
}

/** What is known of one candidate. Intervals are 95% ones, each for itself, but for that of `deciding.loss`. */
export interface Standing {
  readonly candidate: number;
  /** Futures sampled. */
  readonly samples: number;
  /** The interval of its loss holds for all pairs of candidates and all looks together, at the race's error rate. */
  readonly deciding: Compared;
  /** The other figures of the contest. */
  readonly others: readonly Compared[];
  readonly verdict: RaceVerdict;
}

/** Where a race stands at a look. */
export interface RaceResult {
  readonly rule: RaceRule;
  readonly figures: readonly Figure[];
  /** By candidate. */
  readonly standings: readonly Standing[];
  readonly best: number;
  /** Futures sampled for all candidates together. */
  readonly samples: number;
  /** The widest half of an interval of a loss that was still open. */
  readonly halfWidth: number;
  /** Why the race ended: one candidate left, losses known well enough, or the budget spent; null while it runs. */
  readonly ended: 'decided' | 'half-width' | 'budget' | null;
}

/** Blocks to be counted before the next look. */
export interface DueBlocks {
  readonly blocks: readonly number[];
  readonly alive: readonly number[];
}

/**
 * Runs a race: says which blocks are due, adds up their sums, and looks at them only when the rule
 * says so. Candidates found worse leave the race; the rest go on.
 */
export class Race {
  readonly #candidates: number;
  readonly #figures: readonly Figure[];
  readonly #rule: RaceRule;
  readonly #totals: RaceTotals;
  readonly #z: number;
  #look = 0;
  #alive: readonly number[];
  #ended: RaceResult['ended'] = null;

  constructor({ candidates, figures }: Pick<Contest, 'candidates' | 'figures'>, rule: RaceRule) {
    this.#candidates = candidates;
    this.#figures = figures;
    this.#rule = rule;
    this.#totals = new RaceTotals(candidates, figures.length);
    this.#z = criticalValue(candidates, rule);
    this.#alive = Array.from({ length: candidates }, (_, candidate) => candidate);
  }

  /** What is to be counted next; null when the race is over. */
  get due(): DueBlocks | null {
    if (this.#ended !== null) return null;
    const { looks } = this.#rule;
    const from = this.#look === 0 ? 0 : (looks[this.#look - 1] as number);
    const blocks = Array.from({ length: (looks[this.#look] as number) - from }, (_, place) => from + place);
    return { blocks, alive: this.#alive };
  }

  /** Takes all due blocks, in any order, and looks. */
  take(blocks: readonly BlockSums[]): void {
    for (const block of [...blocks].sort((one, other) => one.block - other.block)) this.#totals.add(block);
    this.#look += 1;
    const result = this.result();
    const open = this.#alive.filter((candidate) => standingOf(result, candidate).deciding.loss.low <= 0);
    this.#alive = open;
    if (open.length <= 1) this.#ended = 'decided';
    else if (result.halfWidth <= this.#rule.halfWidth) this.#ended = 'half-width';
    else if (this.#look === this.#rule.looks.length) this.#ended = 'budget';
  }

  /** Where the race stands since the last look; there must have been one. */
  result(): RaceResult {
    const best = this.#best();
    const standings = Array.from({ length: this.#candidates }, (_, candidate) => this.#standing(candidate, best));
    const open = this.#alive.filter((candidate) => candidate !== best);
    return {
      rule: this.#rule,
      figures: this.#figures,
      standings,
      best,
      samples: standings.reduce((sum, { samples }) => sum + samples, 0),
      halfWidth: open.reduce((most, candidate) => Math.max(most, halfWidthOf(standings[candidate] as Standing)), 0),
      ended: this.#ended,
    };
  }

  /** The first of the candidates still in the race that do best, within what counts as a tie. */
  #best(): number {
    const direction = this.#figures[0]?.better === 'less' ? -1 : 1;
    const meritOf = (candidate: number): number =>
      (direction * this.#totals.valueOf(candidate, 0)[0]) / this.#totals.samplesOf(candidate);
    const most = Math.max(...this.#alive.map(meritOf));
    return this.#alive.find((candidate) => meritOf(candidate) >= most - this.#rule.ties) as number;
  }

  #standing(candidate: number, best: number): Standing {
    const [deciding, ...others] = this.#figures.map((figure, place) => ({
      value: valueEstimate(this.#totals, candidate, place, figure),
      loss: lossEstimate(this.#totals, candidate, best, place, figure, place === 0 ? this.#z : Z95),
    }));
    if (deciding === undefined) throw new Error('a contest needs a figure that decides');
    const { low, mean } = deciding.loss;
    const costs = low > 0 && mean >= this.#rule.smallestLoss;
    const verdict = candidate === best ? 'best' : costs ? 'costs' : 'as good';
    return { candidate, samples: this.#totals.samplesOf(candidate), deciding, others, verdict };
  }
}

/** The places of the candidates as a list names them: the best, then what is a tie with it, then the rest by what they lose. */
export function rankedPlaces({ standings, best, rule }: RaceResult): number[] {
  const lossOf = ({ deciding, verdict }: Standing): number =>
    verdict !== 'costs' && deciding.loss.mean < rule.ties ? 0 : deciding.loss.mean;
  const others = standings.filter(({ candidate }) => candidate !== best);
  others.sort((one, other) => lossOf(one) - lossOf(other) || one.candidate - other.candidate);
  return [best, ...others.map(({ candidate }) => candidate)];
}

/** A whole race in one go, yielding after each future of all candidates; a look's result follows its last one. */
export function* raceSteps(contest: Contest, rule: RaceRule): Generator<RaceResult | undefined, RaceResult> {
  const race = new Race(contest, rule);
  for (let due = race.due; due !== null; due = race.due) {
    const sums: BlockSums[] = [];
    for (const block of due.blocks) sums.push(yield* blockSteps(contest, rule, block, due.alive));
    race.take(sums);
    yield race.result();
  }
  return race.result();
}

/**
 * Standard errors that a loss must exceed: by Bonferroni's inequality over all ordered pairs and
 * all looks, equal candidates are called different with at most the chance `errorRate`.
 */
function criticalValue(candidates: number, { looks, errorRate }: RaceRule): number {
  return normalExceededBy(errorRate / (looks.length * Math.max(2, candidates * (candidates - 1))));
}

function standingOf(result: RaceResult, candidate: number): Standing {
  return result.standings[candidate] as Standing;
}

function halfWidthOf({ deciding }: Standing): number {
  return (deciding.loss.high - deciding.loss.low) / 2;
}
