import { logistic } from '../chance/logistic.ts';
import type { TableKind } from '../table/kinds.ts';
import { FLOWER } from '../tiles/kinds.ts';
import { FITTED } from './fitted.ts';
import { type AimFit, type FittedSeat, type FittedSeats, type TakeFit, TELLING_GROUPS } from './fit-shape.ts';
import type { OpenWay, SeatSigns } from './seat-ways.ts';

/** What is fitted of a seat, as functions. */
export interface SeatFit {
  readonly aim: AimFit;
  /** The chance of a win by a tile of a kind, from the share counted; exactly 0 for 0. */
  readonly win: (counted: number, kind: number, drawn: number) => number;
  /** The same for a group laid open. */
  readonly group: (counted: number, kind: number, drawn: number) => number;
}

/** The fit of a seat at a kind of table that shows so many groups. */
export function seatFit(kind: TableKind, shown: number, fitted: FittedSeats = FITTED): SeatFit {
  const { aim, win, group } = fitted[kind][Math.min(TELLING_GROUPS, shown)] as FittedSeat;
  return { aim, win: chanceBy(win), group: chanceBy(group) };
}

/** Tiles drawn at which what `drawn` adds counts whole. */
const ALL_DRAWN = 98;
/** Counted shares are kept off 0 and 1, where log odds have no end; what is possible is at least so likely. */
export const LEAST_COUNTED = 1e-9;

function chanceBy({ level, slope, flower, drawn }: TakeFit): SeatFit['win'] {
  return (counted, kind, draws) => {
    if (counted === 0) return 0;
    return logistic(level + slope * takeOdds(counted) + (kind === FLOWER ? flower : 0) + drawn * drawnShare(draws));
  };
}

/** The part drawn of the wall. */
export function drawnShare(draws: number): number {
  return draws / ALL_DRAWN;
}

/** The log odds of a counted share. */
export function takeOdds(counted: number): number {
  const held = Math.min(1 - 1e-3, Math.max(LEAST_COUNTED, counted));
  return Math.log(held / (1 - held));
}

/** For each way the factor that is left of it by what was thrown and passed of the tiles that it wants. */
export function signsOf(ways: readonly OpenWay[], { thrown, passed }: SeatSigns, aim: AimFit): Float64Array {
  const against = new Map<number, number>();
  for (const kind of thrown) against.set(kind, (against.get(kind) ?? 0) + aim.thrown);
  for (const kind of passed) against.set(kind, (against.get(kind) ?? 0) + aim.passed);
  return Float64Array.from(ways, ({ needs }) => {
    let sum = 0;
    for (const { kind } of needs) sum += against.get(kind) ?? 0;
    return Math.exp(sum);
  });
}
