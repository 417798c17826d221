import { seatFit } from '../../../core/others/fit.ts';
import type { FittedSeat } from '../../../core/others/fit-shape.ts';
import { takenByAny } from '../../../core/others/others.ts';
import type { SeatReading } from '../../../core/others/seat-reading.ts';
import type { CompiledCard } from '../../../core/reading/compiled.ts';
import type { TableKind } from '../../../core/table/kinds.ts';
import { collectSeats } from './collect.ts';

/** Said and true chances of cases alike, as sums. */
export interface Sum {
  cases: number;
  said: number;
  truth: number;
  /** What the truth varies by, if what is said is right. */
  variance: number;
}

/** What is said of seats with two open groups or more, and of tiles, beside the truth. */
export interface OthersStudy {
  readonly seats: number;
  /** Seats whose line is the first said, and among the first three. */
  readonly first: number;
  readonly firstThree: number;
  /** Seats whose groups fit no way, or whose hand is dead. */
  readonly dead: number;
  /** Weights of lines, by tenths. */
  readonly lines: readonly Sum[];
  /** Chances that somebody takes a tile for mah jongg, and for a group, by what is said: see `BANDS`. */
  readonly wins: readonly Sum[];
  readonly groups: readonly Sum[];
  /** Tiles said to be safe, and those of them that were taken. */
  readonly safe: number;
  readonly safeTaken: number;
}

/** Ends of the bands of chances that a tile is taken. */
export const BANDS = [0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.4, 1.01] as const;

export interface Study {
  readonly compiled: CompiledCard;
  readonly kind: TableKind;
  readonly games: number;
  readonly seed: number;
  readonly every: number;
  readonly fitted: readonly FittedSeat[];
}

/** Compares what is said with the truth in games that took no part in a fit. */
export function studyOthers({ fitted, kind, ...task }: Study): OthersStudy {
  const all = { quick: fitted, club: fitted, relaxed: fitted };
  const study = {
    seats: 0,
    first: 0,
    firstThree: 0,
    dead: 0,
    lines: sums(10),
    wins: sums(BANDS.length),
    groups: sums(BANDS.length),
    safe: 0,
    safeTaken: 0,
  };
  collectSeats({ ...task, kind, fitOf: (shown) => seatFit(kind, shown, all) }, (seats) => {
    for (const { reading, signs, line } of seats) {
      if (signs.shown.length < 2) continue;
      if (line < 0) study.dead += 1;
      else noteSeat(study, reading, line);
    }
    const [first] = seats;
    for (const place of first?.tiles.keys() ?? []) {
      const tiles = seats.map((seat) => seat.tiles[place] as (typeof seat.tiles)[number]);
      const said = takenByAny(tiles.map((each) => each.said));
      const truth = takenByAny(tiles.map((each) => each.truth));
      note(study.wins, bandOf(said.win), said.win, truth.win);
      note(study.groups, bandOf(said.group), said.group, truth.group);
      if (said.win + said.group > 0) continue;
      study.safe += 1;
      if (truth.win + truth.group > 0) study.safeTaken += 1;
    }
  });
  return study;
}

function noteSeat(
  study: { seats: number; first: number; firstThree: number; lines: readonly Sum[] },
  reading: SeatReading,
  line: number,
): void {
  const lines = reading.lines();
  const place = lines.findIndex((each) => each.line === line);
  study.seats += 1;
  if (place === 0) study.first += 1;
  if (place >= 0 && place < 3) study.firstThree += 1;
  for (const each of lines) {
    note(study.lines, Math.min(9, Math.floor(10 * each.weight)), each.weight, each.line === line ? 1 : 0);
  }
}

function bandOf(chance: number): number {
  return BANDS.findIndex((end) => chance < end);
}

function sums(count: number): Sum[] {
  return Array.from({ length: count }, () => ({ cases: 0, said: 0, truth: 0, variance: 0 }));
}

function note(into: readonly Sum[], place: number, said: number, truth: number): void {
  const sum = into[place] as Sum;
  sum.cases += 1;
  sum.said += said;
  sum.truth += truth;
  sum.variance += said * (1 - said);
}
