import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomFromSeed, shuffle } from '../../core/base/random.ts';
import { writeGameFile } from '../../core/game/file/write-game-file.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { editedAt, mergeGames } from '../../core/journal/merge.ts';

const BASE: GameRecord = {
  kind: 'windrow.game',
  schemaVersion: 1,
  appVersion: '0.1.0',
  id: 'a',
  startedAt: '2026-11-19T19:00:00Z',
  zone: 'America/Chicago',
  place: '',
  tags: [],
  demo: false,
  card: {},
  events: [],
};

/** A version of a game without what a copy changes. */
const content = (game: GameRecord): string => JSON.stringify({ ...game, id: '', copyOf: '' });
const byId = (games: readonly GameRecord[]): string => games.map(writeGameFile).toSorted().join('');

const version = fc.record({
  id: fc.constantFrom('a', 'b', 'c'),
  place: fc.constantFrom('library', 'kitchen', 'porch', 'club'),
  editedAt: fc.constantFrom('2026-11-20T08:00:00Z', '2026-11-20T08:00:00.5Z', '2026-11-21T08:00:00Z'),
});
const store = fc
  .uniqueArray(version, { selector: ({ id }) => id })
  .map((games) => games.map((each) => ({ ...BASE, ...each })));
const stores = fc.array(store, { minLength: 2, maxLength: 5 });

function mergeAll(all: readonly (readonly GameRecord[])[]): readonly GameRecord[] {
  return all.reduce((sum, each) => mergeGames(sum, each).games, [] as readonly GameRecord[]);
}

test('CR-F4: in 1,000 random merge orders no version is lost and all orders agree', () => {
  const property = fc.property(stores, fc.nat(), (all, seed) => {
    const merged = mergeAll(all);
    const other = mergeAll(shuffle([...all], randomFromSeed(seed)));
    expect(byId(other)).toBe(byId(merged));
    const kept = new Set(merged.map(content));
    for (const game of all.flat()) expect(kept.has(content(game))).toBe(true);
    expect(new Set(merged.map(({ id }) => id)).size).toBe(merged.length);
  });
  fc.assert(property, { seed: 23, numRuns: 1_000 });
});

test('the newest edit keeps the id', () => {
  const property = fc.property(stores, (all) => {
    for (const game of mergeAll(all).filter(({ copyOf }) => copyOf === undefined)) {
      const newest = all
        .flat()
        .filter(({ id }) => id === game.id)
        .map((each) => Date.parse(editedAt(each)));
      expect(Date.parse(editedAt(game))).toBe(Math.max(...newest));
    }
  });
  fc.assert(property, { seed: 29, numRuns: 300 });
});

test('merging again changes nothing, even after a copy was edited', () => {
  const older = { ...BASE, place: 'porch', editedAt: '2026-11-20T08:00:00Z' };
  const newer = { ...BASE, place: 'club', editedAt: '2026-11-21T08:00:00Z' };
  const first = mergeGames([older], [newer]);
  expect([first.games.length, first.added, first.copied]).toEqual([2, 0, 1]);
  const again = mergeGames(first.games, [older, newer]);
  expect([byId(again.games) === byId(first.games), again.added, again.copied]).toEqual([true, 0, 0]);
  const edited = first.games.map((game) =>
    game.copyOf === 'a' ? { ...game, place: 'kitchen', editedAt: '2026-11-22T08:00:00Z' } : game,
  );
  const places = mergeGames(edited, [older]).games.map(({ place }) => place);
  expect(places.toSorted()).toEqual(['club', 'kitchen', 'porch']);
  expect(mergeGames(mergeGames(edited, [older]).games, [older]).copied).toBe(0);
});

test('a game that only the other side has is added', () => {
  const merged = mergeGames([BASE], [{ ...BASE, id: 'b' }]);
  expect([merged.games.map(({ id }) => id), merged.added, merged.copied]).toEqual([['a', 'b'], 1, 0]);
});

test('without an edit told, the last event counts, then the start', () => {
  expect(editedAt(BASE)).toBe('2026-11-19T19:00:00Z');
  expect(editedAt({ ...BASE, events: [{ type: 'noted', text: 'x', at: '2026-11-19T20:00:00Z' }] })).toBe(
    '2026-11-19T20:00:00Z',
  );
});

test('an event later than the edit told counts, as when a clock was set back', () => {
  const event = (at: string): GameRecord['events'][number] => ({ type: 'noted', text: 'x', at });
  const told = { ...BASE, editedAt: '2026-11-20T08:00:00Z' };
  expect(editedAt({ ...told, events: [event('2026-11-20T08:00:00.25Z')] })).toBe('2026-11-20T08:00:00.25Z');
  expect(editedAt({ ...told, events: [event('2026-11-20T07:59:59.75Z')] })).toBe('2026-11-20T08:00:00Z');
});
