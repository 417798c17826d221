import * as v from 'valibot';
import { expect, test } from 'vitest';
import { FINDINGS } from '../../core/journal/findings.ts';

const ROW = { id: 'g-1', key: 'k', figures: { aways: [], aimed: null }, choices: null };
const letters = (count: number): string => 'x'.repeat(count);
const many = <Value>(length: number, value: Value): Value[] => Array.from({ length }, () => value);
const CHOICE = { kind: 'pass', cost: 0, now: 0, forced: false };

test('findings are in order as they stand here', () => {
  expect(v.is(FINDINGS, ROW)).toBe(true);
});

test.each<[string, number, (count: number) => object]>([
  ['letters of the id', 80, (count) => ({ id: letters(count) })],
  ['letters of the key', 64, (count) => ({ key: letters(count) })],
  ['moments', 20, (count) => ({ figures: { aways: many(count, { moment: 'deal', away: 1 }), aimed: null } })],
  ['letters of the section aimed at', 200, (count) => ({ figures: { aways: [], aimed: letters(count) } })],
  ['choices', 5000, (count) => ({ choices: many(count, CHOICE) })],
])('findings may have, as %s, %i and no more', (_, most, changeOf) => {
  expect(v.is(FINDINGS, { ...ROW, ...changeOf(most) })).toBe(true);
  expect(v.is(FINDINGS, { ...ROW, ...changeOf(most + 1) })).toBe(false);
});
