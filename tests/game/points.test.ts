import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import type { Seat } from '../../core/exchange/steps.ts';
import { SEATS } from '../../core/exchange/steps.ts';
import { chairOf, eveningSheet, nextSeat } from '../../core/game/evening.ts';
import type { EndedEvent } from '../../core/game/events.ts';
import { DEFAULT_POINT_RULES, type PointRules } from '../../core/game/point-rules.ts';
import { NO_PAYMENT, paymentsFor, paymentsOf, type Payments, type Win } from '../../core/game/points.ts';

const pay = (East: number, South: number, West: number, North: number): Payments => ({ East, South, West, North });
const byDiscard: Win = { winner: 'South', by: 'discard', from: 'West', points: 25, jokerless: false, pairsOnly: false };
const byDraw: Win = { winner: 'East', by: 'draw', points: 30, jokerless: false, pairsOnly: false };

// Worked by hand from the rules of payment; common practice, from memory, no source.
describe('payments worked by hand', () => {
  const cases: [string, Win, Partial<PointRules>, Payments][] = [
    ['25 by discard: the discarder pays 50, the others 25 each', byDiscard, {}, pay(-25, 100, -50, -25)],
    ['30 by own draw: everybody pays 60', byDraw, {}, pay(180, -60, -60, -60)],
    ['25 by discard, jokerless: all of it doubles', { ...byDiscard, jokerless: true }, {}, pay(-50, 200, -100, -50)],
    ['30 by own draw, jokerless: everybody pays 120', { ...byDraw, jokerless: true }, {}, pay(360, -120, -120, -120)],
    [
      '50 for singles and pairs by discard: no doubling for no jokers',
      { ...byDiscard, points: 50, jokerless: true, pairsOnly: true },
      {},
      pay(-50, 200, -100, -50),
    ],
    [
      'the same where the table doubles these too',
      { ...byDiscard, points: 50, jokerless: true, pairsOnly: true },
      { jokerlessAlsoPairs: true },
      pay(-100, 400, -200, -100),
    ],
    ['no bonus for no jokers', { ...byDiscard, jokerless: true }, { jokerlessTimes: 1 }, pay(-25, 100, -50, -25)],
    ['only the discarder pays', byDiscard, { discarderPays: 4, othersPay: 0 }, pay(0, 100, -100, 0)],
    ['own draw pays single', byDraw, { drawPays: 1 }, pay(90, -30, -30, -30)],
    ['a fixed stake of 10 instead of the points', byDiscard, { scheme: 'fixed', stake: 10 }, pay(-10, 40, -20, -10)],
    ['at most 40 from each', { ...byDiscard, jokerless: true }, { limit: 40 }, pay(-40, 120, -40, -40)],
    ['no money at all', byDraw, { scheme: 'none' }, NO_PAYMENT],
  ];
  test.each(cases)('%s', (_, win, change, expected) => {
    expect(paymentsFor(win, { ...DEFAULT_POINT_RULES, ...change })).toEqual(expected);
  });
});

test('what is won is what is paid: the four add up to nothing', () => {
  const amount = fc.integer({ min: 0, max: 500 });
  const rules = fc.record({
    scheme: fc.constantFrom('hand' as const, 'fixed' as const, 'none' as const),
    stake: amount,
    discarderPays: amount,
    othersPay: amount,
    drawPays: amount,
    jokerlessTimes: amount,
    jokerlessAlsoPairs: fc.boolean(),
    limit: fc.option(amount),
  });
  const seat = fc.constantFrom(...SEATS);
  const win = fc.record({
    winner: seat,
    by: fc.constantFrom('draw' as const, 'discard' as const),
    from: seat,
    points: amount,
    jokerless: fc.boolean(),
    pairsOnly: fc.boolean(),
  });
  const property = fc.property(win, rules, (each, table) => {
    const payments = paymentsFor(each, table);
    expect(SEATS.reduce((sum, at) => sum + payments[at], 0)).toBe(0);
    expect(payments[each.winner]).toBeGreaterThanOrEqual(0);
  });
  fc.assert(property, { seed: 5, numRuns: 500 });
});

const CARD_TEXT = JSON.stringify({
  format: 'windrow.card',
  version: 1,
  title: 'Two lines',
  season: '2026',
  sections: [
    {
      name: 'Stairs',
      lines: [
        { id: 's1', pattern: 'FF 1111a 2222a 3333a', slide: 1, points: 30 },
        { id: 'p1', pattern: '11a 22a 33a 44a 55a 66a 77a', points: 50, concealed: true },
      ],
    },
  ],
});
const { card } = expectValue(readCardFile(CARD_TEXT));

describe('payments from a logged result', () => {
  const won: EndedEvent = { type: 'ended', result: 'won', winner: 'South', by: 'discard', from: 'West', lineId: 's1' };
  const ask = (event: EndedEvent | null, change: Partial<PointRules> = {}): unknown => {
    const result = paymentsOf(event, card, { ...DEFAULT_POINT_RULES, ...change });
    return result.ok ? result.value : result.problem.code;
  };
  test("points come from the card's line", () => {
    expect(ask(won)).toEqual(pay(-30, 120, -60, -30));
  });
  test('points told at the table go before', () => {
    expect(ask({ ...won, points: 20 })).toEqual(pay(-20, 80, -40, -20));
  });
  test('singles and pairs on the card earn no doubling', () => {
    expect(ask({ ...won, lineId: 'p1', jokerless: true })).toEqual(pay(-50, 200, -100, -50));
  });
  test('they hold no joker, whether or not somebody said so: a table that doubles these too pays double', () => {
    const doubled = { jokerlessAlsoPairs: true };
    expect(ask({ ...won, lineId: 'p1' }, doubled)).toEqual(pay(-100, 400, -200, -100));
    expect(ask({ ...won, lineId: 'p1', jokerless: false }, doubled)).toEqual(pay(-50, 200, -100, -50));
    expect(ask(won, doubled)).toEqual(pay(-30, 120, -60, -30));
  });
  test('a wall game pays nothing', () => {
    expect(ask({ type: 'ended', result: 'wall' })).toEqual(NO_PAYMENT);
  });
  test.each([
    ['no result', null, 'no-result'],
    ['no hand', { ...won, lineId: 'gone' }, 'no-points'],
    [
      'no discarder',
      { type: 'ended', result: 'won', winner: 'South', by: 'discard', lineId: 's1' } as const,
      'no-discarder',
    ],
    ['no way of winning', { type: 'ended', result: 'won', winner: 'South', lineId: 's1' } as const, 'no-result'],
  ])('with %s the problem is named', (_, event, code) => {
    expect(ask(event)).toBe(code);
  });
  test('a fixed stake needs no hand', () => {
    const { lineId: _, ...without } = won;
    expect(ask(without, { scheme: 'fixed', stake: 5 })).toEqual(pay(-5, 20, -10, -5));
  });
});

describe('an evening of several games', () => {
  test('East passes to the right after every game', () => {
    const seats: Seat[] = ['East'];
    for (let game = 0; game < 4; game += 1) seats.push(nextSeat(seats.at(-1) as Seat));
    expect(seats).toEqual(['East', 'North', 'West', 'South', 'East']);
  });
  test('the players keep their chairs while East goes round', () => {
    expect(SEATS.map((seat) => chairOf(seat, 'East'))).toEqual(['you', 'right', 'across', 'left']);
    expect(chairOf('East', 'North')).toBe('right');
  });
  test('running totals, worked by hand', () => {
    const rows = eveningSheet([
      { id: 'a', seat: 'East', payments: pay(-25, 100, -50, -25) },
      { id: 'b', seat: 'North', payments: pay(180, -60, -60, -60) },
      { id: 'c', seat: null, payments: null },
      { id: 'd', seat: 'West', payments: NO_PAYMENT },
    ]);
    expect(rows.map(({ gains }) => gains)).toEqual([
      { you: -25, right: 100, across: -50, left: -25 },
      { you: -60, right: 180, across: -60, left: -60 },
      null,
      { you: 0, right: 0, across: 0, left: 0 },
    ]);
    expect(rows.at(-1)?.totals).toEqual({ you: -85, right: 280, across: -110, left: -85 });
  });
});
