import * as v from 'valibot';
import { expect, test } from 'vitest';
import { GAME_FILE_LIMITS } from '../../core/game/file/read-game-file.ts';
import { readCollection } from '../../core/journal/collection.ts';
import { FINDINGS } from '../../core/journal/findings.ts';
import { gameRecord } from '../main/support/desks.ts';

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

test('a file with everything may nest two deeper than a game file, which its games may use up, and no more', () => {
  const nested = (depth: number): unknown => (depth === 0 ? 0 : { in: nested(depth - 1) });
  const file = (depth: number): string => {
    // A game in the list of the file: its card lies three levels down.
    const game = gameRecord('g-1', { card: nested(depth - 3) });
    return JSON.stringify({ kind: 'windrow.collection', schemaVersion: 1, cards: [], games: [game] });
  };
  const deepest = GAME_FILE_LIMITS.depth + 2;
  expect(readCollection(file(deepest))).toMatchObject({ ok: true, value: { games: [{ id: 'g-1' }], problems: [] } });
  expect(readCollection(file(deepest + 1))).toMatchObject({ ok: false, problem: { code: 'too-deep' } });
});

test('a file with more than 300,000,000 letters is not looked at', () => {
  expect(readCollection('x'.repeat(300_000_001))).toMatchObject({ ok: false, problem: { code: 'too-large' } });
});
