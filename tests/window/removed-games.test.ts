import { expect, it } from 'vitest';
import { type JournalGame, type RemovedGame, rowsWith } from '../../renderer/places/journal/journal-game.ts';

const game = (id: string): JournalGame => ({ id }) as JournalGame;
const games = (ids: string): JournalGame[] => [...ids].map(game);
const removed = (id: string, after: string | null): RemovedGame => ({ game: game(id), after });
/** The rows as letters, capital where a game was deleted. */
const rows = (shown: string, gone: readonly RemovedGame[]): string =>
  rowsWith(games(shown), gone)
    .map(({ game: { id }, isRemoved }) => (isRemoved ? id.toUpperCase() : id))
    .join('');

it('CR-O7: a deleted game keeps its place in the list, at the top, between others and at the end', () => {
  expect(rows('abc', [])).toBe('abc');
  expect(rows('bc', [removed('a', null)])).toBe('Abc');
  expect(rows('ac', [removed('b', 'a')])).toBe('aBc');
  expect(rows('ab', [removed('c', 'b')])).toBe('abC');
  expect(rows('', [removed('a', null)])).toBe('A');
});

it('neighbours deleted one after the other stay in order, whichever was first', () => {
  expect(rows('ad', [removed('b', 'a'), removed('c', 'b')])).toBe('aBCd');
  expect(rows('ad', [removed('c', 'b'), removed('b', 'a')])).toBe('aBCd');
  expect(rows('d', [removed('a', null), removed('b', 'a'), removed('c', 'b')])).toBe('ABCd');
});

it('where the row before is not shown now, the place of the deleted game is not either', () => {
  expect(rows('xy', [removed('b', 'a'), removed('c', 'b')])).toBe('xy');
});
