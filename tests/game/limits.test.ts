import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { CARD_FILE_LIMITS } from '../../core/card/read-document.ts';
import { openGame, readEvent, readGameFile } from '../../core/game/file/read-game-file.ts';
import { DEFAULT_POINT_RULES, type PointRules } from '../../core/game/point-rules.ts';
import type { GameRecord } from '../../core/game/record.ts';

const GOLDEN: GameRecord = expectValue(
  readGameFile(readFileSync(new URL('../golden/0.1.0/game.json', import.meta.url), 'utf8')),
).record;
const AT = '2026-11-25T18:00:00Z';
const letters = (count: number): string => 'x'.repeat(count);

test.each<[string, number, (tiles: string) => Record<string, unknown>]>([
  ['the tiles of a deal', 100, (tiles) => ({ type: 'dealt', seat: 'East', tiles })],
  ['the tiles of a pass', 100, (tiles) => ({ type: 'gave', step: 'right', tiles })],
  ['a tile drawn', 100, (tile) => ({ type: 'drew', tile })],
  ['the line of a win', 100, (lineId) => ({ type: 'ended', result: 'won', winner: 'East', lineId })],
  ['a note', 10_000, (text) => ({ type: 'noted', text })],
])('%s may have %i letters and no more', (_, most, eventOf) => {
  expect(readEvent({ ...eventOf(letters(most)), at: AT }).ok).toBe(true);
  expect(readEvent({ ...eventOf(letters(most + 1)), at: AT }).ok).toBe(false);
});

test.each([
  [-1, false],
  [0, true],
  [0.5, true],
  [1_000_000, true],
  [1_000_001, false],
])('%d points of a win are in order: %s', (points, isRight) => {
  const won = { type: 'ended', result: 'won', winner: 'East', points, at: AT };
  expect(readEvent(won).ok).toBe(isRight);
  const pays = (rules: Partial<PointRules>): boolean =>
    openGame({ ...GOLDEN, payment: { ...DEFAULT_POINT_RULES, ...rules } }).ok;
  for (const rule of ['stake', 'discarderPays', 'othersPay', 'drawPays', 'jokerlessTimes', 'limit'] as const) {
    expect(pays({ [rule]: points }), rule).toBe(isRight);
  }
});

test.each<[string, number, (words: string) => Partial<GameRecord>]>([
  ['the place', 200, (place) => ({ place })],
  ['a tag', 60, (tag) => ({ tags: [tag] })],
  ['how the rack lies', 200, (arrangement) => ({ arrangement })],
  ['the evening', 64, (evening) => ({ evening })],
  ["a player's name", 60, (North) => ({ players: { North } })],
  ['the version of the program', 40, (appVersion) => ({ appVersion })],
  ['the time zone', 60, (zone) => ({ zone })],
  ['the id', 64, (id) => ({ id })],
])('%s may have %i letters and no more', (_, most, fieldOf) => {
  expect(openGame({ ...GOLDEN, ...fieldOf(letters(most)) }).ok).toBe(true);
  expect(openGame({ ...GOLDEN, ...fieldOf(letters(most + 1)) }).ok).toBe(false);
});

test('a game may have 50 tags and 5,000 events, and no more', () => {
  const tags = (count: number): string[] => Array.from({ length: count }, (_, number) => `tag ${number}`);
  expect(openGame({ ...GOLDEN, tags: tags(50) }).ok).toBe(true);
  expect(openGame({ ...GOLDEN, tags: tags(51) }).ok).toBe(false);
  const notes = (count: number): unknown[] =>
    Array.from({ length: count }, () => ({ type: 'noted', text: 'a', at: AT }));
  expect(openGame({ ...GOLDEN, events: notes(5000) })).toMatchObject({ ok: true, value: { damage: null } });
  expect(openGame({ ...GOLDEN, events: notes(5001) }).ok).toBe(false);
});

test('a game file may have twice the letters of a card file, and no more', () => {
  const text = JSON.stringify(GOLDEN);
  expect(readGameFile(text.padEnd(8_000_000)).ok).toBe(true);
  expect(readGameFile(text.padEnd(8_000_001))).toMatchObject({ ok: false, problem: { code: 'too-large' } });
});

test('a game file may nest one deeper than a card file, and no more', () => {
  const nested = (depth: number): unknown => (depth === 0 ? 0 : { in: nested(depth - 1) });
  // The game itself is one object, its card another.
  const withCard = (depth: number): string => JSON.stringify({ ...GOLDEN, card: nested(depth - 1) });
  expect(readGameFile(withCard(CARD_FILE_LIMITS.depth + 1)).ok).toBe(true);
  expect(readGameFile(withCard(CARD_FILE_LIMITS.depth + 2))).toMatchObject({
    ok: false,
    problem: { code: 'too-deep' },
  });
});

test('where nobody chose otherwise a hand pays its points, and double to who drew or was thrown it', () => {
  expect(DEFAULT_POINT_RULES).toEqual({
    scheme: 'hand',
    stake: 25,
    discarderPays: 2,
    othersPay: 1,
    drawPays: 2,
    jokerlessTimes: 2,
    jokerlessAlsoPairs: false,
    limit: null,
  });
});
