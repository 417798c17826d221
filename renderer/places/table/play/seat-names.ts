import { type Seat, SEATS } from '../../../../core/exchange/steps.ts';
import { CHAIRS, chairOf } from '../../../../core/game/evening.ts';
import type { ChoiceOption } from '../../../parts/wr-choice.ts';
import type { GameSession } from '../../../session/game-session.ts';
import { playWords } from '../../../words/play.ts';

type Table = Pick<GameSession, 'state' | 'players'>;

/** What a seat is called: "You", the player's name, or its chair as the user sees it; the seat itself before the deal. */
export function seatName({ state, players }: Table, seat: Seat): string {
  if (seat === state.seat) return playWords.chair.you;
  const name = players[seat]?.trim() ?? '';
  if (name !== '') return name;
  return state.seat === null ? seat : playWords.chair[chairOf(seat, state.seat)];
}

/** The same with the seat: "Right (West)". */
export function seatNameFull(table: Table, seat: Seat): string {
  const name = seatName(table, seat);
  return name === seat ? name : playWords.seated(name, seat);
}

/** The seats to choose from, in the order of the chairs: you, right, across, left. */
export function seatOptions(table: Table, seats: readonly Seat[] = SEATS): ChoiceOption[] {
  return inChairOrder(table, seats).map((seat) => ({ value: seat, label: seatName(table, seat) }));
}

/** The seats in the order of the chairs, once the user's own is known. */
export function inChairOrder({ state }: Pick<Table, 'state'>, seats: readonly Seat[] = SEATS): Seat[] {
  const own = state.seat;
  if (own === null) return [...seats];
  return seats.toSorted((one, other) => CHAIRS.indexOf(chairOf(one, own)) - CHAIRS.indexOf(chairOf(other, own)));
}

/** A seat from the value of a choice. */
export function seatOf(value: string): Seat | null {
  return SEATS.find((seat) => seat === value) ?? null;
}

/** What is said of a seat whose groups fit no line: "Right’s groups fit no line of your card: dead, if your card is complete." */
export function deadSentence(table: Table, seat: Seat): string {
  return seat === table.state.seat ? playWords.dead.own : playWords.dead.other(seatName(table, seat));
}
