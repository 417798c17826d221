import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { SEATS } from '../../core/exchange/steps.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { statesOf } from '../../core/game/state.ts';
import { seatEvents } from '../../core/game/seat-log.ts';
import { seatMoment } from '../../core/review/seat-moment.ts';
import { traceGame } from '../../core/table/simulate.ts';
import type { TableEvent } from '../../core/table/trace.ts';
import { demoCard } from '../table/cards.ts';
import { EAST, play, SOUTH } from '../game/helpers.ts';

const TRACES = Array.from({ length: 6 }, (_, game) =>
  traceGame({ compiled: demoCard, seed: 91, policies: ['soft', 'soft', 'soft', 'soft'] }, game),
);

/** The draws of all seats up to each own draw and discard. */
function drawsAtOwnTurns(trace: readonly TableEvent[], own: number): number[] {
  let draws = 0;
  return trace.flatMap((event) => {
    if (event.type === 'drew') draws += 1;
    return (event.type === 'drew' || event.type === 'discarded') && event.seat === own ? [draws] : [];
  });
}

describe('a moment of a logged game, laid at a table', () => {
  test.each([0, 1, 2, 3])('seat %i knows how many tiles are drawn, and that it is next before a draw', (own) => {
    for (const trace of TRACES) {
      const events = seatEvents(trace, own);
      const states = expectValue(statesOf(events));
      const mine = (event: GameEvent): boolean =>
        event.type === 'drew' || (event.type === 'discarded' && event.seat === SEATS[own]);
      const places = events.flatMap((event, place) => (mine(event) ? [place] : []));
      const after = places.map((place) => seatMoment(states[place + 1]!, events));
      expect(after.map(({ drawn }) => drawn)).toEqual(drawsAtOwnTurns(trace, own));
      for (const [order, place] of places.entries()) {
        const before = seatMoment(states[place]!, events);
        if (events[place]?.type === 'drew') {
          expect(before).toMatchObject({ before: 0, drawn: (after[order]?.drawn ?? 0) - 1 });
        } else expect(after[order]?.before).toBe(3);
      }
    }
  });

  test('when play begins the others wait for East', () => {
    expect(seatMoment(play(SOUTH), [SOUTH])).toMatchObject({ seat: 1, before: 1, drawn: 0 });
    expect(seatMoment(play(EAST), [EAST])).toMatchObject({ seat: 0, before: 0, drawn: 0 });
  });

  test('a joker that another seat took can’t come any more, and the group shows one less', () => {
    const events: GameEvent[] = [
      SOUTH,
      { type: 'discarded', seat: 'East', tile: '4d' },
      { type: 'called', seat: 'West', tile: '4d', group: '44d J' },
      { type: 'swapped', seat: 'North', owner: 'West', tile: '4d' },
    ];
    const { shown, exposures, before } = seatMoment(play(...events), events);
    expect(shown[0]).toBe(1);
    expect(exposures[2]).toEqual([expect.objectContaining({ size: 3, jokers: 0 })]);
    expect(before).toBe(2);
  });

  test('who logs only own turns comes to a turn when the three others have drawn', () => {
    const turn = (tile: string): GameEvent[] => [
      { type: 'drew', tile },
      { type: 'discarded', seat: 'South', tile },
    ];
    const events = [SOUTH, ...turn('7d'), ...turn('7d')];
    expect(seatMoment(play(...events), events)).toMatchObject({ before: 0, drawn: 7 });
  });
});
