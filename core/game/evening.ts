import { type Seat, SEATS } from '../exchange/steps.ts';
import type { Payments } from './points.ts';
import type { GameRecord, Players } from './record.ts';

/** Where the players sit, seen from the user. They keep their chairs while East goes round. */
export const CHAIRS = ['you', 'right', 'across', 'left'] as const;
export type Chair = (typeof CHAIRS)[number];

/** The chair of a seat; play goes to the right, so South sits at East's right (common practice). */
export function chairOf(seat: Seat, own: Seat): Chair {
  return CHAIRS[(SEATS.indexOf(seat) - SEATS.indexOf(own) + SEATS.length) % SEATS.length] as Chair;
}

/** The user's seat in the next game: East passes to the right after every game (common practice, no source). */
export function nextSeat(own: Seat): Seat {
  return SEATS[(SEATS.indexOf(own) + SEATS.length - 1) % SEATS.length] as Seat;
}

/** One game of an evening. */
export interface EveningGame {
  readonly id: string;
  /** The user's seat; null when it was not logged. */
  readonly seat: Seat | null;
  /** Null when the payments are unknown. */
  readonly payments: Payments | null;
}

/** One row of the evening's sheet: what each chair gained in the game, and so far. */
export interface EveningRow {
  readonly id: string;
  /** Null when seat or payments aren't known; the totals then stay. */
  readonly gains: Readonly<Record<Chair, number>> | null;
  readonly totals: Readonly<Record<Chair, number>>;
}

/** The evening's sheet, game by game in the order given. */
export function eveningSheet(games: readonly EveningGame[]): EveningRow[] {
  let totals: Record<Chair, number> = { you: 0, right: 0, across: 0, left: 0 };
  return games.map((game) => {
    const gains = gainsByChair(game);
    if (gains !== null) totals = addChairs(totals, gains);
    return { id: game.id, gains, totals };
  });
}

function gainsByChair({ seat: own, payments }: EveningGame): Record<Chair, number> | null {
  if (own === null || payments === null) return null;
  const gains: Record<Chair, number> = { you: 0, right: 0, across: 0, left: 0 };
  for (const seat of SEATS) gains[chairOf(seat, own)] = payments[seat];
  return gains;
}

function addChairs(one: Record<Chair, number>, other: Record<Chair, number>): Record<Chair, number> {
  return {
    you: one.you + other.you,
    right: one.right + other.right,
    across: one.across + other.across,
    left: one.left + other.left,
  };
}

/** The same people on their chairs, when the user's seat changes from `from` to `to`. */
export function playersMoved(players: Players, from: Seat, to: Seat): Players {
  const entries = SEATS.flatMap((seat) => {
    const before = SEATS.find((other) => chairOf(other, from) === chairOf(seat, to)) as Seat;
    const name = players[before];
    return name === undefined ? [] : [[seat, name] as const];
  });
  return Object.fromEntries(entries);
}

/** The game without its players' names; all else is as it was. Words that a person wrote in notes stay. */
export function withoutNames(record: GameRecord): GameRecord {
  const { players: _, ...rest } = record;
  return rest;
}
