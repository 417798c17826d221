import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { seatEvents } from '../../core/game/seat-log.ts';
import type { TableEvent } from '../../core/table/trace.ts';
import { JOKER, type Kind } from '../../core/tiles/kinds.ts';
import { parseTileList } from '../../core/tiles/text.ts';

const kinds = (text: string): Kind[] => expectValue(parseTileList(text));
const [BAM, DOT] = kinds('1b 2d') as [Kind, Kind];
const won: TableEvent = { type: 'won', seat: 1, way: 3 };
const dealt = (tiles: string, seat = 1): TableEvent => ({ type: 'dealt', seat, tiles: kinds(tiles) });

/** Whether the log of South, who wins, says that no joker was in the hand. */
const jokerless = (...events: TableEvent[]): unknown =>
  seatEvents([...events, won], 1, () => 's1').find(({ type }) => type === 'ended');

test.each<[string, boolean, TableEvent[]]>([
  ['none ever', true, [dealt('FF 1b'), dealt('JJ', 2)]],
  ['one dealt', false, [dealt('J FF')]],
  ['one dealt and thrown', true, [dealt('J FF'), { type: 'discarded', seat: 1, tile: JOKER }]],
  ['one thrown by another', false, [dealt('J FF'), { type: 'discarded', seat: 2, tile: JOKER }]],
  ['two dealt, one thrown', false, [dealt('JJ FF'), { type: 'discarded', seat: 1, tile: JOKER }]],
  ['another tile thrown', false, [dealt('J FF'), { type: 'discarded', seat: 1, tile: BAM }]],
  ['one drawn', false, [dealt('FF'), { type: 'drew', seat: 1, tile: JOKER }]],
  ['one drawn by another', true, [dealt('FF'), { type: 'drew', seat: 0, tile: JOKER }]],
  ['one swapped out of its exposure', true, [dealt('J FF'), { type: 'swapped', seat: 2, owner: 1, tile: DOT }]],
  ['one swapped in', false, [dealt('FF'), { type: 'swapped', seat: 1, owner: 2, tile: DOT }]],
  ['one swapped out of an exposure of its own', false, [dealt('J'), { type: 'swapped', seat: 1, owner: 1, tile: DOT }]],
])('a hand is told to be without jokers by what its seat got and gave: %s', (_, without, events) => {
  expect(jokerless(...events)).toEqual({
    type: 'ended',
    result: 'won',
    winner: 'South',
    by: 'draw',
    lineId: 's1',
    jokerless: without,
  });
});
