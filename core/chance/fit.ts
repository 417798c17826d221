import { PASS_STEPS } from '../exchange/steps.ts';
import type { DrawSurprise } from './draw-surprise.ts';
import { fitLogistic, logistic, RowList } from './logistic.ts';
import type { ChanceSample } from './sampler.ts';
import {
  type ChanceState,
  correctionFloors,
  CORRECTIONS,
  emptyRow,
  fillCorrection,
  fillRow,
  FORM_FLOORS,
  HELD,
  type SparseRow,
  TERMS,
} from './state.ts';

/** The numbers that make a chance of a state: those of the form for all cards, and a card's correction. */
export interface ChanceNumbers {
  readonly pooled: ArrayLike<number>;
  readonly correction: ArrayLike<number>;
}

/** The correction of a card whose games have not been played. */
export const NO_CORRECTION: readonly number[] = Array<number>(CORRECTIONS).fill(0);

const ROW = emptyRow();

/** The chance to win from a state, 0 to 1; dead and complete hands exactly 0 and 1. */
export function chanceOf(state: ChanceState, { pooled, correction }: ChanceNumbers): number {
  if (state.reach === 0 || state.reach === 1) return state.reach;
  fillRow(state, ROW);
  let score = dot(ROW, pooled);
  fillCorrection(state, ROW);
  score += dot(ROW, correction);
  return logistic(score);
}

function dot({ length, places, values }: SparseRow, by: ArrayLike<number>): number {
  let sum = 0;
  for (let entry = 0; entry < length; entry += 1) {
    sum += (values[entry] as number) * (by[places[entry] as number] as number);
  }
  return sum;
}

/** Fits the form that holds for all cards to the samples of several. */
export function fitPooled(samples: readonly ChanceSample[]): ChanceNumbers {
  return { pooled: new BackwardFit(samples, null, 1).run(), correction: NO_CORRECTION };
}

/** Fits one card's correction to the samples of its own games. */
export function fitCorrection(
  samples: readonly ChanceSample[],
  pooled: ArrayLike<number>,
  wonBeyond = 1,
): ChanceNumbers {
  return { pooled, correction: new BackwardFit(samples, pooled, wonBeyond).run() };
}

/** Light ridge for the pooled form: thousands of games stand behind each coefficient. */
const POOLED_HELD: readonly number[] = Array<number>(TERMS).fill(0.05);
/**
 * The states of one game say nearly the same of how it ended: of the targets that are results a row counts for so much
 * of an independent one. When play begins, each seat has one state in a game.
 */
const RESULT_WEIGHT = 0.3;
const FIRST_WEIGHT = 2;
/** Targets that are values vary far less. */
const VALUE_WEIGHT = 20;
/** How often play is fitted, so that the targets before a draw settle. */
const PLAY_ROUNDS = 3;
/** `nextOf` of a state after which the seat decides nothing more. */
const LOST = -1;
const WON = -2;

/**
 * What a helpful tile, and a joker beyond that, moves the chance by when it is drawn, by how far the nearest ways are
 * away: in units of chance · (1 − chance), and of 1 − chance where one tile is missing. Least squares over the draws of
 * 400 games of each of the cards of the common form; any other numbers would be as unbiased, but take away less.
 */
const HELPFUL_MOVES = [0, 1.06, 0.91, 0.63, 0.46, 0.35, 0.28, 0.25];
const JOKER_MOVES = [0, 0, 0.22, 0.39, 0.48, 0.57, 0.6, 0.63];
/**
 * Where the games of a fit were won oftener than games are, so much of it lies in the draws, less what their surprises
 * explain; the rest in what the others did. The regression of the one on the other, game by game, over these cards.
 */
const DRAWS_PART = 0.55;

/**
 * Fits backwards: first play, with what came of the games as targets after a discard and when play begins, and before a
 * draw the value that the seat has after its next discard (soft targets: they make luck nought in the mean, which
 * targets by results alone do only loosely), less what the tile drawn surprised by; then the passes, from the last to the
 * first, each by the value of what follows.
 */
class BackwardFit {
  readonly #states: readonly ChanceState[];
  /** What came of each state: 0, or for a winner's what it counts for. */
  readonly #results: Float64Array;
  readonly #nextOf: Int32Array;
  readonly #surprises: readonly (DrawSurprise | null)[];
  readonly #isWon: Uint8Array;
  readonly #rows = new RowList();
  readonly #offsets: Float64Array;
  readonly #held: readonly number[];
  readonly #floors: ReadonlyMap<number, number>;
  /** Whether all steps of the exchange share coefficients, and so have to be fitted together. */
  readonly #shared: boolean;
  #found: Float64Array;

  /** `wonBeyond`: how much oftener games are won than in the games of the samples, where more games are known. */
  constructor(all: readonly ChanceSample[], pooled: ArrayLike<number> | null, wonBeyond: number) {
    const samples = all.filter(({ state }) => state.reach > 0 && state.reach < 1);
    const placeOf = new Map(samples.map((sample, place) => [sample, place]));
    this.#states = samples.map(({ state }) => state);
    this.#results = Float64Array.from(samples, ({ won }) => (won ? wonBeyond : 0));
    this.#nextOf = Int32Array.from(samples, ({ next }) => {
      if (typeof next === 'number') return next === 1 ? WON : LOST;
      return placeOf.get(next) ?? (next.state.reach === 1 ? WON : LOST);
    });
    this.#surprises = samples.map(({ surprise }) => surprise);
    this.#isWon = Uint8Array.from(samples, ({ won }) => Number(won));
    const row = emptyRow();
    this.#offsets = new Float64Array(samples.length);
    for (const [place, { state }] of samples.entries()) {
      fillRow(state, row);
      if (pooled !== null) {
        this.#offsets[place] = dot(row, pooled);
        fillCorrection(state, row);
      }
      this.#rows.add(row);
    }
    this.#held = pooled === null ? POOLED_HELD : HELD;
    this.#floors = pooled === null ? FORM_FLOORS : correctionFloors(pooled);
    this.#shared = pooled !== null;
    this.#found = new Float64Array(this.#held.length);
  }

  run(): Float64Array {
    const play = this.#placesOf(({ step }) => step === null);
    for (let round = 0; round < PLAY_ROUNDS; round += 1) {
      this.#fit(play, round > 0 ? this.#drawTargets(play) : new Map());
    }
    if (this.#shared) {
      const exchange = this.#placesOf(({ step }) => step !== null);
      for (let round = 0; round <= PASS_STEPS.length; round += 1) this.#fit(exchange, this.#nextValues(exchange));
      return this.#found;
    }
    for (const due of PASS_STEPS.toReversed()) {
      const pass = this.#placesOf(({ step }) => step === due);
      this.#fit(pass, this.#nextValues(pass));
    }
    return this.#found;
  }

  #placesOf(belongs: (state: ChanceState) => boolean): Int32Array {
    const places = new Int32Array(this.#states.length);
    let length = 0;
    for (const [place, state] of this.#states.entries()) {
      if (!belongs(state)) continue;
      places[length] = place;
      length += 1;
    }
    return places.slice(0, length);
  }

  /** Fits the coefficients that some samples touch, by the soft targets where there are any, else by results. */
  #fit(places: Int32Array, soft: ReadonlyMap<number, number>): void {
    if (places.length === 0) return;
    const targets = new Float64Array(places.length);
    const weights = new Float64Array(places.length);
    for (const [row, place] of places.entries()) {
      const value = soft.get(place);
      targets[row] = value ?? (this.#results[place] as number);
      weights[row] = this.#shared ? this.#weightOf(place, value !== undefined) : 1;
    }
    this.#found = fitLogistic({
      rows: this.#rows,
      places,
      targets,
      weights,
      offsets: this.#offsets,
      held: this.#held,
      floors: this.#floors,
      start: this.#found,
    });
  }

  #weightOf(place: number, isSoft: boolean): number {
    if (isSoft) return VALUE_WEIGHT;
    return this.#states[place]?.drawn === 0 ? FIRST_WEIGHT : RESULT_WEIGHT;
  }

  #nextValues(places: Int32Array): Map<number, number> {
    return new Map(Array.from(places, (place) => [place, this.#nextValue(place)]));
  }

  /** How many games more were won than was said when play began. */
  #wonBeyond(play: Int32Array): number {
    let sum = 0;
    for (const place of play) {
      const { drawn, before } = this.#states[place] as ChanceState;
      if (drawn === 0 && before > 0) sum += (this.#isWon[place] as number) - this.#value(place);
    }
    return sum;
  }

  /** Before each draw the value that followed, less what the tile drawn surprised by. */
  #drawTargets(play: Int32Array): Map<number, number> {
    const draws = play.filter((place) => this.#states[place]?.before === 0);
    const values = Float64Array.from(draws, (place) => this.#value(place));
    const spread = values.reduce((sum, value) => sum + value * (1 - value), 0);
    const beyond = DRAWS_PART * this.#wonBeyond(play);
    return new Map(
      Array.from(draws, (place, at) => {
        const value = values[at] as number;
        const explained = moveBy(this.#surprises[place] ?? null, value) + (beyond * value * (1 - value)) / spread;
        return [place, this.#nextValue(place) - explained];
      }),
    );
  }

  #nextValue(place: number): number {
    const next = this.#nextOf[place] as number;
    return next < 0 ? Number(next === WON) : this.#value(next);
  }

  #value(place: number): number {
    return logistic(this.#rows.score(place, this.#found) + (this.#offsets[place] as number));
  }
}

/** What the surprise of a draw moves a chance by. */
function moveBy(surprise: DrawSurprise | null, chance: number): number {
  if (surprise === null) return 0;
  const { away, helpful, joker } = surprise;
  const at = Math.min(HELPFUL_MOVES.length - 1, away);
  const unit = (away === 1 ? 1 : chance) * (1 - chance);
  return unit * ((HELPFUL_MOVES[at] as number) * helpful + (JOKER_MOVES[at] as number) * joker);
}
