import { PASS_STEPS, type PassStep } from '../exchange/steps.ts';

/**
 * What the chance of a seat is made of, after a decision: tiles given and not yet received, or 13 tiles in play. All of
 * it is known to that seat.
 */
export interface ChanceState {
  /** The pass whose tiles are still to come; null in play. */
  readonly step: PassStep | null;
  /** How many tiles that pass still brings; 0 in play. */
  readonly coming: number;
  /** The best reach over all living ways, by `bestReach`; 0 for a dead hand, 1 for a complete one. */
  readonly reach: number;
  /** Jokers in the rack. */
  readonly jokers: number;
  readonly east: boolean;
  /** Tiles drawn from the wall by all seats. */
  readonly drawn: number;
  /** How many other seats play before this one draws: 3 just after its discard, 0 just before its draw. */
  readonly before: number;
  /** Groups that this seat has exposed, and all other seats together. */
  readonly own: number;
  readonly others: number;
  /** Whether one other seat has exposed two groups or more. */
  readonly otherHasTwo: boolean;
}

/** A row of a linear model whose entries are mostly nought: `length` places with their values. */
export interface SparseRow {
  length: number;
  readonly places: Uint16Array;
  readonly values: Float64Array;
}

const MOST_ENTRIES = 64;

export function emptyRow(): SparseRow {
  return { length: 0, places: new Uint16Array(MOST_ENTRIES), values: new Float64Array(MOST_ENTRIES) };
}

function put(row: SparseRow, place: number, value: number): void {
  if (value === 0) return;
  row.places[row.length] = place;
  row.values[row.length] = value;
  row.length += 1;
}

/** Tiles drawn at which the terms of play are fitted; between two they run along straight lines. */
const KNOTS = [0, 20, 40, 60, 80, 98];
/** Terms of a step of the exchange: level, reach, jokers, East, tiles that don't come because of a blind pass. */
const STEP_TERMS = 5;
/** Terms of play at a knot: level, reach, jokers, own exposures, others' exposures, a seat with two. */
const PLAY_TERMS = 6;
/** Terms of play beside the knots: place within ten draws, East at the start. */
const EXTRA_TERMS = 2;
const PLAY_START = PASS_STEPS.length * STEP_TERMS;
const SIDE = KNOTS.length * PLAY_TERMS + EXTRA_TERMS;
/** Coefficients of the form: the exchange, then play after a discard, then play before a draw, at last when play begins. */
/** The place of the level when play begins, for those who wait for East's first discard. */
const FIRST_LEVEL = PLAY_START + 2 * SIDE;
export const TERMS = FIRST_LEVEL + 1;

/** The places of reach and of jokers among the terms of a step or of a knot. */
const RISING_TERMS = [1, 2] as const;

/** The coefficients of reach, or of jokers, of the steps, or of one side of play. */
function risingPlaces(part: 'exchange' | 0 | 1, term: 1 | 2): number[] {
  if (part === 'exchange') return PASS_STEPS.map((_, step) => step * STEP_TERMS + term);
  return KNOTS.map((_, knot) => PLAY_START + part * SIDE + knot * PLAY_TERMS + term);
}

/** No coefficient of reach or of jokers may be negative: a better hand never has a smaller chance (CH-5). */
export const FORM_FLOORS: ReadonlyMap<number, number> = new Map(
  RISING_TERMS.flatMap((term) =>
    (['exchange', 0, 1] as const).flatMap((part) => risingPlaces(part, term).map((place) => [place, 0] as const)),
  ),
);

/** Reach is kept off 0 and 1, where its log odds have no end. */
const LEAST = 1e-4;
/** Log odds about which the terms of reach turn, so that levels and slopes are fitted apart. */
const CENTRE = -1.5;

/** The log odds of reach, about their usual size. */
function logOdds(reach: number): number {
  const held = Math.min(1 - LEAST, Math.max(LEAST, reach));
  return Math.log(held / (1 - held)) - CENTRE;
}

/** The terms of a state, for the form that holds for all cards. */
export function fillRow(state: ChanceState, row: SparseRow): void {
  row.length = 0;
  const odds = logOdds(state.reach);
  if (state.step !== null) {
    const start = PASS_STEPS.indexOf(state.step) * STEP_TERMS;
    put(row, start, 1);
    put(row, start + 1, odds);
    put(row, start + 2, state.jokers);
    put(row, start + 3, state.east ? 1 : 0);
    put(row, start + 4, 3 - state.coming);
    return;
  }
  const after = state.before / 3;
  fillSide(state, odds, PLAY_START, after, row);
  fillSide(state, odds, PLAY_START + SIDE, 1 - after, row);
  put(row, FIRST_LEVEL, isFirst(state) ? 1 : 0);
}

/** Whether play begins, and East has not discarded yet. */
function isFirst({ drawn, before, east }: ChanceState): boolean {
  return drawn === 0 && before > 0 && !east;
}

function fillSide(state: ChanceState, odds: number, start: number, share: number, row: SparseRow): void {
  if (share === 0) return;
  const { drawn } = state;
  eachKnot(drawn, (knot, weight) => {
    const at = start + knot * PLAY_TERMS;
    const by = share * weight;
    put(row, at, by);
    put(row, at + 1, by * odds);
    put(row, at + 2, by * state.jokers);
    put(row, at + 3, by * state.own);
    put(row, at + 4, by * state.others);
    put(row, at + 5, by * (state.otherHasTwo ? 1 : 0));
  });
  put(row, start + KNOTS.length * PLAY_TERMS, (share * (drawn % 10)) / 10);
  put(row, start + KNOTS.length * PLAY_TERMS + 1, state.east ? share * Math.max(0, 1 - drawn / 20) : 0);
}

/** The two knots about a number of draws, with their shares. */
function eachKnot(drawn: number, visit: (knot: number, weight: number) => void): void {
  const last = KNOTS.length - 1;
  let knot = 0;
  while (knot < last - 1 && drawn >= (KNOTS[knot + 1] as number)) knot += 1;
  const [from, to] = [KNOTS[knot] as number, KNOTS[knot + 1] as number];
  const weight = Math.min(1, Math.max(0, (drawn - from) / (to - from)));
  if (weight < 1) visit(knot, 1 - weight);
  if (weight > 0) visit(knot + 1, weight);
}

/**
 * Of a correction, in this order: the level of the exchange, of play and of its beginning, what each step and each knot of either side of
 * play is off from it, then slopes: of the exchange for reach and jokers, of either side of play for reach, jokers, own
 * and others' exposures.
 */
const COMMON = 3;
const STEP_LEVELS = COMMON;
const KNOT_LEVELS = STEP_LEVELS + PASS_STEPS.length;
const SLOPES = KNOT_LEVELS + 2 * KNOTS.length;
const PLAY_SLOPES = 4;
const SLOPE_TERMS = 2 + 2 * PLAY_SLOPES;
export const CORRECTIONS = SLOPES + SLOPE_TERMS;

/** The terms of a state for the correction that one card's games give. */
export function fillCorrection(state: ChanceState, row: SparseRow): void {
  row.length = 0;
  const odds = logOdds(state.reach);
  if (state.step !== null) {
    put(row, 0, 1);
    put(row, STEP_LEVELS + PASS_STEPS.indexOf(state.step), 1);
    put(row, SLOPES, odds);
    put(row, SLOPES + 1, state.jokers);
    return;
  }
  put(row, 1, 1);
  put(row, 2, isFirst(state) ? 1 : 0);
  const after = state.before / 3;
  fillCorrectionSide(state, odds, 0, after, row);
  fillCorrectionSide(state, odds, 1, 1 - after, row);
}

function fillCorrectionSide(state: ChanceState, odds: number, side: 0 | 1, share: number, row: SparseRow): void {
  if (share === 0) return;
  eachKnot(state.drawn, (knot, weight) => put(row, KNOT_LEVELS + side * KNOTS.length + knot, share * weight));
  const slopes = SLOPES + 2 + side * PLAY_SLOPES;
  put(row, slopes, share * odds);
  put(row, slopes + 1, share * state.jokers);
  put(row, slopes + 2, share * state.own);
  put(row, slopes + 3, share * state.others);
}

/** How far a card may lower the slopes of a form, so that CH-5 holds of both together. */
export function correctionFloors(form: ArrayLike<number>): ReadonlyMap<number, number> {
  const least = (part: 'exchange' | 0 | 1, term: 1 | 2): number =>
    -Math.min(...risingPlaces(part, term).map((place) => form[place] as number));
  return new Map([
    [SLOPES, least('exchange', 1)],
    [SLOPES + 1, least('exchange', 2)],
    ...([0, 1] as const).flatMap((side) => {
      const start = SLOPES + 2 + side * PLAY_SLOPES;
      return [
        [start, least(side, 1)],
        [start + 1, least(side, 2)],
      ] as const;
    }),
  ]);
}

/** Standard deviations about nought that a correction is expected to have: of a level, of what a moment is off from it, of a slope. */
const SPREADS = { level: 0.5, moment: 0.3, slope: 0.2 };

/** The precision (1 over variance) with which each correction is held to nought. */
export const HELD: readonly number[] = [
  ...Array<number>(COMMON).fill(1 / SPREADS.level ** 2),
  ...Array<number>(SLOPES - COMMON).fill(1 / SPREADS.moment ** 2),
  ...Array<number>(SLOPE_TERMS).fill(1 / SPREADS.slope ** 2),
];
