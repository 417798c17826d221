import { failure, type Problem, type Result, success } from '../base/result.ts';
import type { Card, Line } from '../card/card.ts';
import { SMALLEST_JOKER_GROUP } from '../card/way.ts';
import { type Seat, SEATS } from '../exchange/steps.ts';
import type { EndedEvent } from './events.ts';
import type { PointRules } from './point-rules.ts';

/** A win, as far as payment goes. */
export interface Win {
  readonly winner: Seat;
  readonly by: 'draw' | 'discard';
  /** Who discarded the winning tile, when won by discard. */
  readonly from?: Seat;
  /** The points printed for the hand; the `fixed` scheme needs none. */
  readonly points: number;
  readonly jokerless: boolean;
  /** True for a hand of only singles and pairs. */
  readonly pairsOnly: boolean;
}

/** What each seat gains; losses below zero; the four add up to nothing. */
export type Payments = Readonly<Record<Seat, number>>;

type PaymentCode = 'no-result' | 'no-points' | 'no-discarder';
export type PaymentProblem = Problem<PaymentCode>;

export const NO_PAYMENT: Payments = { East: 0, South: 0, West: 0, North: 0 };

/** Who pays what for a win. */
export function paymentsFor(win: Win, rules: PointRules): Payments {
  if (rules.scheme === 'none') return NO_PAYMENT;
  const worth = (rules.scheme === 'fixed' ? rules.stake : win.points) * jokerlessFactor(win, rules);
  const owed = (seat: Seat): number => {
    const amount = worth * payFactor(win, seat, rules);
    return rules.limit === null ? amount : Math.min(amount, rules.limit);
  };
  const pot = SEATS.filter((seat) => seat !== win.winner).reduce((sum, seat) => sum + owed(seat), 0);
  const gain = (seat: Seat): number => (seat === win.winner ? pot : 0 - owed(seat));
  return { East: gain('East'), South: gain('South'), West: gain('West'), North: gain('North') };
}

/**
 * Who pays what after a result. A game that nobody won pays nothing; a win with something unsaid
 * is a problem that names it. Points come from the result itself or from the line on the card.
 */
export function paymentsOf(result: EndedEvent | null, card: Card, rules: PointRules): Result<Payments, PaymentProblem> {
  if (result === null) return failure('no-result', 'This game has no result yet: enter who won.');
  if (result.result !== 'won' || rules.scheme === 'none') return success(NO_PAYMENT);
  const win = winOf(result, lineOf(card, result.lineId), rules);
  return win.ok ? success(paymentsFor(win.value, rules)) : win;
}

/** The line of a card by its id, if it is there. */
export function lineOf(card: Card, id: string | undefined): Line | undefined {
  return card.sections.flatMap(({ lines }) => lines).find((line) => line.id === id);
}

/** True if a line has only singles and pairs, so that no joker can stand in it. */
export function isPairsOnly({ ways }: Line): boolean {
  return ways.length > 0 && ways.every(({ groups }) => groups.every(({ size }) => size < SMALLEST_JOKER_GROUP));
}

function winOf(result: EndedEvent, line: Line | undefined, rules: PointRules): Result<Win, PaymentProblem> {
  const { winner, by, from } = result;
  const points = result.points ?? line?.points ?? (rules.scheme === 'fixed' ? 0 : undefined);
  if (winner === undefined || by === undefined) {
    return failure('no-result', 'It is not said who won and how: enter the winner, and by draw or by discard.');
  }
  if (points === undefined)
    return failure('no-points', 'The points are not known: name the hand, or enter its points.');
  if (by === 'discard' && from === undefined && rules.discarderPays !== rules.othersPay) {
    return failure('no-discarder', 'It is not said who discarded the winning tile: enter that seat.');
  }
  const pairsOnly = line !== undefined && isPairsOnly(line);
  const jokerless = result.jokerless ?? pairsOnly;
  return success({ winner, by, ...(from === undefined ? {} : { from }), points, jokerless, pairsOnly });
}

function jokerlessFactor({ jokerless, pairsOnly }: Win, rules: PointRules): number {
  const bonus = jokerless && (!pairsOnly || rules.jokerlessAlsoPairs);
  return bonus ? rules.jokerlessTimes : 1;
}

function payFactor({ by, from }: Win, seat: Seat, rules: PointRules): number {
  if (by === 'draw') return rules.drawPays;
  return seat === from ? rules.discarderPays : rules.othersPay;
}
