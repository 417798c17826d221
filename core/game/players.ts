import { type Seat, SEATS } from '../exchange/steps.ts';
import { chairOf } from './evening.ts';

/** Names of players by seat. */
export type Players = Readonly<Partial<Record<Seat, string>>>;

/** The same people on their chairs, when the user's seat changes from `from` to `to`. */
export function playersMoved(players: Players, from: Seat, to: Seat): Players {
  const entries = SEATS.flatMap((seat) => {
    const before = SEATS.find((other) => chairOf(other, from) === chairOf(seat, to)) as Seat;
    const name = players[before];
    return name === undefined ? [] : [[seat, name] as const];
  });
  return Object.fromEntries(entries);
}
