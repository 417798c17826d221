import { describe, expect, test } from 'vitest';
import { type Seat, SEATS } from '../../core/exchange/steps.ts';
import { chairOf, nextSeat, playersMoved } from '../../core/game/evening.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { likelySeat, nextInTurn } from '../../core/game/stage.ts';
import { EAST, play, SOUTH } from '../game/helpers.ts';

function seatAfter(...events: GameEvent[]): Seat {
  return likelySeat(play(...events), events);
}

const thrown = (seat: Seat, tile: string): GameEvent => ({ type: 'discarded', seat, tile });

describe('whose tile is likely next', () => {
  test('the dealer discards first', () => {
    expect(seatAfter(EAST)).toBe('East');
    expect(seatAfter(SOUTH)).toBe('East');
    expect(seatAfter()).toBe('East');
  });
  test('play goes to the right', () => {
    expect(seatAfter(SOUTH, thrown('East', '4d'))).toBe('South');
    expect(nextInTurn('North')).toBe('East');
  });
  test('who draws, calls or swaps discards next', () => {
    expect(seatAfter(SOUTH, { type: 'drew', tile: '4d' })).toBe('South');
    const called: GameEvent = { type: 'called', seat: 'North', tile: '4d', group: '444dJ' };
    expect(seatAfter(SOUTH, thrown('East', '4d'), called)).toBe('North');
    expect(seatAfter(SOUTH, called, { type: 'swapped', seat: 'West', owner: 'North', tile: '4d' })).toBe('West');
  });
  test('who holds 14 tiles discards next, whatever was logged before', () => {
    expect(seatAfter(EAST, thrown('West', '4d'))).toBe('East');
    expect(seatAfter(SOUTH, thrown('West', '4d'))).toBe('North');
  });
  test('who logs only own tiles is not asked for the others', () => {
    const own = [{ type: 'drew', tile: '4d' } as const, thrown('South', '4d')];
    expect(seatAfter(SOUTH, ...own)).toBe('West');
    expect(seatAfter(SOUTH, ...own, ...own)).toBe('South');
    expect(seatAfter(SOUTH, ...own, thrown('West', '1d'), ...own)).toBe('West');
  });
});

describe('an evening', () => {
  test('every player of the evening is on the same chair in the next game, whatever the seats are', () => {
    const players = { East: 'Lake', South: 'Reed', West: 'Pine', North: 'Fern' };
    for (const from of SEATS)
      for (const to of SEATS) {
        const moved = playersMoved(players, from, to);
        for (const seat of SEATS) {
          const other = SEATS.find((each) => chairOf(each, to) === chairOf(seat, from)) as Seat;
          expect(moved[other]).toBe(players[seat]);
        }
      }
  });
  test('the players keep their chairs when East passes on', () => {
    const players = { South: 'Lake', West: 'Reed' };
    const moved = playersMoved(players, 'South', nextSeat('South'));
    expect(moved).toEqual({ East: 'Lake', South: 'Reed' });
    expect(chairOf('West', 'South')).toBe(chairOf('South', 'East'));
  });
});
