import type { TableKind } from '../table/kinds.ts';

/** How weights follow from what is counted: of the log of how near a way is, of each wanted tile thrown, and passed. */
export interface AimFit {
  readonly slope: number;
  readonly thrown: number;
  readonly passed: number;
}

/** The log odds that a tile is taken: a level, a slope on the log odds counted, what a flower adds, and what all 98 tiles drawn add. */
export interface TakeFit {
  readonly level: number;
  readonly slope: number;
  readonly flower: number;
  readonly drawn: number;
}

/** The numbers of seats that show so many groups; more than two count as two. */
export interface FittedSeat {
  readonly aim: AimFit;
  readonly win: TakeFit;
  readonly group: TakeFit;
}

/** For each kind of table those of seats that show no group, one, and two or more. */
export type FittedSeats = Readonly<Record<TableKind, readonly FittedSeat[]>>;

/** Groups from which on the lines of a seat are named (OT-6); seats that show more are read by the numbers of these. */
export const TELLING_GROUPS = 2;
