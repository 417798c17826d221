import { describe, expect, it } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { stateOf } from '../../core/game/state.ts';
import { traceGame } from '../../core/table/simulate.ts';
import type { TableEvent } from '../../core/table/trace.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { demoCard } from './cards.ts';
import { Referee } from './referee.ts';
import { seatEvents } from '../../core/game/seat-log.ts';

/** A tile won on stays a discard in a log, but the referee lays it into the winner's rack. */
function refereed(events: readonly TableEvent[]): Referee {
  const referee = new Referee(demoCard);
  referee.follow(events);
  return referee;
}

const POLICIES_OF_FOUR = ['soft', 'beginner', 'nearest', 'soft'] as const;
const GAMES = Array.from({ length: 6 }, (_, game) => {
  const events = traceGame({ compiled: demoCard, seed: 77, policies: POLICIES_OF_FOUR }, game);
  return { events, referee: refereed(events) };
});

describe('a simulated game, logged by each seat in turn, by the rules of a logged game', () => {
  it.each([0, 1, 2, 3])('seat %i: every event is legal, and the log knows the rack and all exposures', (seat) => {
    for (const { events, referee } of GAMES) {
      const state = expectValue(stateOf(seatEvents(events, seat)));
      const last = events.at(-1);
      const wonOnDiscard = last?.type === 'won' && last.seat === seat && last.tile !== undefined ? [last.tile] : [];
      expect(state.rack.plus(Tiles.of(wonOnDiscard)).equals(Tiles.of(referee.racks[seat]!))).toBe(true);
      expect(state.exposures.length).toBe(referee.exposures.length);
      const jokers = referee.exposures.flatMap(({ tiles }) => tiles.filter((tile) => tile === 0)).length;
      expect(state.exposures.reduce((sum, each) => sum + each.jokers, 0)).toBe(jokers);
      const discards = referee.discards.length + (last?.type === 'won' && last.tile !== undefined ? 1 : 0);
      expect(state.discards.length).toBe(discards);
    }
  });
});
