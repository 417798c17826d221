import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { handLevel } from '../../core/chance/card-chance.ts';
import { DEMO_FITS } from '../../core/chance/demo-fit.ts';
import { SEAT_COUNT } from '../../core/table/table.ts';
import { calibrationCard } from './cards.ts';
import { ALARM, byTenths, OF_A_CARD, OF_A_TENTH, saidOf, times, withHeld } from './held.ts';
import { BASE, isPlainMissing } from './hands.ts';
import type { Case } from './isotonic.ts';
import { eventsOf, fitOf, keptRacks, numbersOf, playedAgain } from './kept.ts';
import { misfitOf } from './misfit.ts';
import { casesUnder } from './shape.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const kept = keptRacks(ROOT);

const named = kept.cards.map((card) => ({ ...card, name: `${card.title}, ${card.kind} table` }));
const AGAIN = 'Make them anew by npm run calibrate -- --keep, if the games were meant to change.';
const IS_WRITER = process.versions.node.startsWith('20.');

describe('the racks that are kept', () => {
  test('are many, of thirteen cards at two kinds of table, and say how they were made', () => {
    expect(kept.made).toMatch(/^npm run calibrate -- --keep, 20\d\d-\d\d-\d\d, Node 20\.\d+\.\d+$/);
    expect(kept.cards).toHaveLength(26);
    for (const { racks } of kept.cards) expect(racks).toHaveLength(SEAT_COUNT * kept.deals);
    expect(kept.cards.length * SEAT_COUNT * kept.deals).toBeGreaterThan(60_000);
  });

  // Other versions of Node round otherwise in the last place, which turns a few of the players' decisions.
  test('come out so when their deals are played again, as far as a sample shows', () => {
    const random = randomFromSeed(37);
    const differing = named.flatMap((card): string[] => {
      const first = random.below(kept.deals);
      const again = playedAgain(ROOT, card, { seed: kept.seed, first, deals: 1 });
      const before = card.racks.slice(SEAT_COUNT * first, SEAT_COUNT * (first + 1));
      return again
        .map((rack, seat) => ({ rack: numbersOf(rack), was: numbersOf(before[seat]!) }))
        .filter(({ rack, was }) => rack.join() !== was.join())
        .map(() => `${card.name}, deal ${first}`);
    });
    expect(differing.length, `${differing.join('; ')}. ${AGAIN}`).toBeLessThanOrEqual(IS_WRITER ? 0 : 5);
  });

  test.runIf(IS_WRITER)('were played by the players of now, event by event', () => {
    expect(kept.events, AGAIN).toBe(eventsOf(ROOT, kept.seed));
  });

  test('have the fits and levels that cards have now', () => {
    const levelOf = (title: string, kind: string): number =>
      kept.cards.find((card) => card.title === title && card.kind === kind)?.level ?? Number.NaN;
    for (const kind of ['quick', 'club'] as const) {
      const shipped = handLevel(DEMO_FITS.find((fit) => fit.kind === kind)!);
      expect(levelOf('Lakeside demo card', kind), AGAIN).toBeCloseTo(shipped, IS_WRITER ? 3 : 1);
    }
    const [narrow] = kept.cards.filter(({ title, kind }) => title === 'Narrow stair' && kind === 'quick');
    const now = fitOf(calibrationCard('narrow', ROOT), 'quick');
    if (IS_WRITER) expect(narrow?.fit, AGAIN).toEqual(now);
    expect(narrow?.level, AGAIN).toBeCloseTo(handLevel(now), 1);
  });
});

describe('reach against the racks that are kept, none of them fitted to', () => {
  const cards = kept.cards.map(saidOf);

  test('MD-C1. as many win as reach says, by tenths of the racks of all cards together', () => {
    expect(byTenths(cards.flat()).tail).toBeGreaterThan(ALARM);
  });

  test.each([0.8, 0.9, 0.94, 1.1, 1.2, 1.3])('a reach %f times as large is noticed', (factor) => {
    expect(byTenths(times(factor, cards.flat())).tail).toBeLessThan(ALARM);
  });

  test('as many win as reach says, card by card', () => {
    expect(misfitOf(cards, OF_A_CARD).tail).toBeGreaterThan(ALARM);
  });

  test.each([
    ['a tile of a single or pair', true],
    ['no such tile', false],
  ])('MD-C12. of hands that are missing %s as many win as reach says, more than the base model does', (_, isPlain) => {
    const own = kept.cards.map((card) => {
      return { ...card, racks: card.racks.filter((rack) => rack.best && isPlainMissing(rack) === isPlain) };
    });
    const base = own.flatMap(({ racks }) => casesUnder(BASE, racks));
    expect(base.length).toBeGreaterThan(15_000);
    expect(misfitOf([own.flatMap(saidOf)], OF_A_TENTH).tail).toBeGreaterThan(ALARM);
    expect(misfitOf([base], OF_A_TENTH).tail).toBeLessThan(ALARM);
    expect(base.filter(({ won }) => won).length).toBeGreaterThan(base.reduce((sum, each) => sum + each.predicted, 0));
  });

  test('a reach that leaves out the level of the card is noticed', () => {
    const without = kept.cards.map((card) => saidOf({ ...card, level: 0 }));
    expect(misfitOf(without, OF_A_CARD).tail).toBeLessThan(ALARM);
  });
});

test('the page says what these figures are', () => {
  const page = readFileSync(resolve(ROOT, 'core/reading/CALIBRATION.md'), 'utf8');
  expect(withHeld(page, kept)).toBe(page);
});

test('the figure follows its law where all is said truly, and where what is said is off by what is allowed', () => {
  const random = randomFromSeed(38);
  const TRIALS = 300;
  const tries = (model: number): number[] =>
    Array.from({ length: TRIALS }, () => {
      const groups = Array.from({ length: 10 }, (_, group) => {
        // Of nine values of one sum of squares, so that the error has the standard deviation `model`.
        const off = (model * (random.below(9) - 4)) / Math.sqrt(60 / 9);
        return Array.from({ length: 200 }, (): Case => {
          const predicted = 0.04 + 0.05 * group + 0.04 * random.fraction();
          return { predicted, won: random.fraction() < predicted + off };
        });
      });
      return misfitOf(groups, { model, spread: 1 }).statistic;
    });
  // The mean of the law is 10, its standard deviation √20: the mean of 300 is within 5 standard errors.
  const mean = (list: readonly number[]): number => list.reduce((sum, each) => sum + each, 0) / list.length;
  for (const model of [0, 0.008]) expect(Math.abs(mean(tries(model)) - 10)).toBeLessThan(5 * Math.sqrt(20 / TRIALS));
});
