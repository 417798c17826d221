import { describe, expect, test } from 'vitest';
import { stateOf } from '../../core/game/state.ts';
import { amountOf, limitOf } from '../../renderer/places/settings/amounts.ts';
import { arePointsGood, draftOf, EMPTY_RESULT, eventOf } from '../../renderer/places/table/play/result-draft.ts';
import type { LineDocument } from '../../core/engine/reading-questions.ts';

const LINE: LineDocument = { id: 'a', name: 'S', section: 'S', points: 25, pairsOnly: false };
const WON = { ...EMPTY_RESULT, result: 'won', winner: 'South', by: 'discard', from: 'West', lineId: 'a' } as const;

describe('a result while it is entered', () => {
  test('nothing is said before the result, and before the winner of a win', () => {
    expect(eventOf(EMPTY_RESULT, undefined)).toBeNull();
    expect(eventOf({ ...EMPTY_RESULT, result: 'won' }, undefined)).toBeNull();
  });

  test("points of the card are not stored, the table's own are", () => {
    expect(eventOf({ ...WON, points: '25' }, LINE)).not.toHaveProperty('points');
    expect(eventOf({ ...WON, points: '37,5' }, LINE)).toMatchObject({ points: 37.5 });
    expect(arePointsGood({ ...WON, points: '-3' })).toBe(false);
    expect(eventOf({ ...WON, points: 'many' }, LINE)).toBeNull();
  });

  test('what belongs to no win is left out when the choice goes back to a wall game', () => {
    expect(eventOf({ ...WON, result: 'wall', seat: 'North' }, LINE)).toEqual({
      type: 'ended',
      result: 'wall',
      seat: 'North',
    });
  });

  test('an own draw has no discarder, singles and pairs say nothing of jokers', () => {
    expect(eventOf({ ...WON, by: 'draw' }, LINE)).not.toHaveProperty('from');
    expect(eventOf({ ...WON, jokerless: true }, { ...LINE, pairsOnly: true })).not.toHaveProperty('jokerless');
    expect(eventOf({ ...WON, winner: 'West' }, LINE)).not.toHaveProperty('from');
  });

  test('every event that comes out can be entered, and reads back as it was', () => {
    for (const draft of [WON, { ...WON, by: 'draw' as const }, { ...WON, jokerless: false, points: '40' }]) {
      const event = eventOf(draft, LINE);
      if (event === null) throw new Error('this draft is whole');
      expect(stateOf([event]).ok).toBe(true);
      expect(eventOf(draftOf(event), LINE)).toEqual(event);
    }
  });
});

test('amounts in the Settings: numbers of 0 to 1000000 with two decimals, as people write them', () => {
  expect(['0', ' 12 ', '2,5', '1000000'].map(amountOf)).toEqual([0, 12, 2.5, 1_000_000]);
  expect(['', '-1', 'ten', '1.234', '1000001'].map(amountOf)).toEqual(Array(5).fill(undefined));
  expect([limitOf(''), limitOf('40'), limitOf('x')]).toEqual([null, 40, undefined]);
});
