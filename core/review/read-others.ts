import { layMoment, steadyTable } from '../chance/lay.ts';
import type { GameEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import { type Payments, paymentsFor } from '../game/points.ts';
import type { PointRules } from '../game/point-rules.ts';
import { type Seat, SEATS } from '../exchange/steps.ts';
import { OthersReader, type OthersReading } from '../others/others.ts';
import { lineOfWay } from '../reading/reading.ts';
import type { TableKind } from '../table/kinds.ts';
import { playerAt } from '../table/table.ts';
import type { TableCard } from '../table/table-card.ts';
import { seatMoment } from './seat-moment.ts';

/** What the others can hold in a state of a game, which must have a seat; `events`: those that led to it. */
export function readOthers(
  { card, kind }: { readonly card: TableCard; readonly kind: TableKind },
  state: GameState,
  events: readonly GameEvent[],
): OthersReading {
  const moment = seatMoment(state, events);
  const table = steadyTable(card, kind);
  layMoment(table, moment);
  return OthersReader.of(card, kind).read(playerAt(table, moment.seat).view);
}

/**
 * What a player pays in the mean, in the points of the table's rules, if she discards a tile now: for each seat the chance
 * that it wins by it times what the discarder pays for the hands that it completes. What a hand without jokers earns
 * more is left out.
 */
export function meanPayment(
  card: TableCard,
  { seats }: OthersReading,
  { kind, from, rules }: { readonly kind: number; readonly from: Seat; readonly rules: PointRules },
): number {
  let paid = 0;
  for (const { seat, reading } of seats) {
    const { win } = reading.take(kind);
    if (win === 0) continue;
    const winner = SEATS[seat] as Seat;
    for (const { way, share } of reading.completedBy(kind)) {
      const { points } = lineOfWay(card.compiled, way);
      const payments: Payments = paymentsFor(
        { winner, by: 'discard', from, points, jokerless: false, pairsOnly: false },
        rules,
      );
      paid -= win * share * payments[from];
    }
  }
  return paid;
}
